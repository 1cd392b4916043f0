package sim

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// store is what a link does beside holding pieces, or nil.
func (c *compiler) store(i int) *plan.Store {
	if i >= len(c.line.Buffers) {
		return nil
	}
	b := &c.line.Buffers[i]
	s := plan.Store{
		Hand: plan.None, Returns: plan.Returns{Task: plan.None},
		Stands: b.Stands, In: b.In, Out: b.Out, Surplus: b.Surplus, Keeps: b.Keeps,
		Beside: b.Kind != InLine, Direct: c.places[i].Direct,
	}
	if b.Full.On {
		clear := clearOf(b)
		s.Full = plan.Sensor{At: b.Full.At, Delay: b.Full.Delay, Travel: b.Full.Travel}
		s.Clear = plan.Sensor{At: clear.At, Delay: clear.Delay, Travel: clear.Travel}
	}
	if s.Beside {
		s.Exits = c.exits(i)
	}
	if b.Kind == HandMagazine {
		c.hand(&s, i, b)
	}
	for _, j := range sortedStops(b) {
		s.Stops = append(s.Stops, c.storeStop(i, b, j))
	}
	if !s.Stands && !s.Beside && s.In == 0 && s.Out == 0 && s.Keeps == 0 && s.Full.At == 0 && len(s.Stops) == 0 {
		return nil
	}
	return &s
}

// exits are the stations that take from a link, over belts and buffers too.
func (c *compiler) exits(link int) []int {
	var all []int
	for _, name := range c.takers[link] {
		if i, isLink := c.links[name]; isLink {
			all = append(all, c.exits(i)...)
		} else {
			all = append(all, c.plan.Nodes[c.nodeOf(name)].Station)
		}
	}
	return all
}

// sortedStops are the stops of a store in the order of names.
func sortedStops(b *Buffer) []int {
	return sortedBy(len(b.Stops), func(j int) string { return b.Stops[j].Name })
}

// storeStop compiles a stop of a store: its end is a task.
func (c *compiler) storeStop(link int, b *Buffer, j int) plan.StoreStop {
	stop := &b.Stops[j]
	p := plan.Stop{
		Name: stop.Name, Class: uint8(stop.Class), Work: c.work(stop.Lasts, stop.Crew), Streams: b.Name,
		Clock: plan.CalendarClock, Every: stop.Every,
	}
	if stop.Clock == PieceClock {
		p.Clock, p.Every = plan.CycleClock, stop.Every.Scale(plan.Cycle)
	}
	if stop.RateFactor > 0 {
		p.Every = p.Every.Scale(1 / stop.RateFactor)
	}
	task := c.addTask(plan.Task{
		Kind: plan.StoreStopTask, Station: plan.None, Link: link, Item: slices.Index(sortedStops(b), j),
		Name: stop.Name, Rank: c.rank(b.Name), Work: p.Work, Streams: b.Name, Purpose: "lasts",
	})
	return plan.StoreStop{Stop: p, Task: task}
}

// StoreStopNames lists the stops of a buffer, by its place in the line, in the order of
// BufferRecord.Stops; StoreStopClasses lists their classes.
func (m *Model) StoreStopNames(buffer int) []string {
	b := &m.line.Buffers[buffer]
	var names []string
	for _, j := range sortedStops(b) {
		names = append(names, b.Stops[j].Name)
	}
	return names
}

// StoreStopClasses lists the classes of the stops of a buffer in the order of StoreStopNames.
func (m *Model) StoreStopClasses(buffer int) []Class {
	b := &m.line.Buffers[buffer]
	var classes []Class
	for _, j := range sortedStops(b) {
		classes = append(classes, b.Stops[j].Class)
	}
	return classes
}

// collate puts a collating place behind a belt that does not accumulate, where the station behind
// takes several pieces at once: on the belt they would never be together.
func (c *compiler) collate(belt, unit int, takes int64) (place string, ok bool) {
	if takes == 1 || !c.standsBefore(belt) {
		return "", false
	}
	b, u := &c.line.Buffers[belt], &c.units[unit]
	name := b.Name + " to " + u.Name
	if _, taken := c.links[name]; taken {
		c.fault(u.Name, "the collating place before it would be called %q, which is already a name", name)
		return "", false
	}
	if len(u.Steps) > 0 {
		c.fault(u.Name+".speed steps", "a station behind a belt that does not accumulate, which takes %d at once, has no level to read; put a buffer between", takes)
	}
	c.feed(c.addLink(Place{Name: name, HandOver: true}), b.Name, u.Name)
	return name, true
}

// checkStores refuses rules with which the line can lock.
func (c *compiler) checkStores() {
	for i := range c.line.Buffers {
		b := &c.line.Buffers[i]
		if _, takes := c.most(i); b.Full.On {
			c.checkSensorLevels(b, takes)
		}
		c.checkCarried(i, b)
	}
}

// checkSensorLevels refuses sensors with which the feeders could stay stopped while too little stands for a take.
func (c *compiler) checkSensorLevels(b *Buffer, takes int64) {
	least := takes + b.Keeps
	path := b.Name + ".sensors"
	if clear := clearOf(b); clear.At < least {
		word := ".full"
		if b.Clear.On {
			word = ".clear"
		}
		c.fault(path+word+".at", "the line can lock: %d pieces may stay because %d are taken at once, and they reach the sensor, which then never reports a clear belt; put it where at least %d stand before the exit", least-1, takes, least)
	}
	if most := min(clearOf(b).At, b.Full.At); b.Start.On && b.Start.Level > most {
		c.fault(b.Name+".levels.start downstream", "the line can lock: the sensors keep the feeders stopped while %d pieces stand, but with fewer than %d nothing is taken; it is at most %d", most, b.Start.Level, most)
	}
}

// direct is the number of places of the way past a store beside the line: as many as a hand-over has, and room for what
// comes at once beside a rest that is too small to take. What comes within a cycle of the station behind waits there for
// its next cycle and is not kept, also when that station is busy with what the store has given.
func (c *compiler) direct(link int) int64 {
	direct := max(c.leastCapacity(link), c.collating(link))
	if c.assembled(link) {
		direct = max(direct, c.without(link))
	}
	_, takes := c.most(link)
	return max(direct, c.atOnce(link)+takes-1)
}

// atOnce is the most that comes to a place in one instant: what a station gives, over belts and buffers too.
func (c *compiler) atOnce(link int) int64 {
	most := int64(1)
	for _, name := range c.feeders[link] {
		if i, isLink := c.links[name]; isLink {
			most = max(most, c.atOnce(i))
		} else {
			most = max(most, c.gives(name))
		}
	}
	return most
}

// beside says that a place is a store beside the line.
func (c *compiler) beside(link int) bool {
	return link < len(c.line.Buffers) && c.line.Buffers[link].Kind != InLine
}

// keeps is what stays in a place: it is not there to be taken.
func (c *compiler) keeps(link int) int64 {
	if link >= len(c.line.Buffers) {
		return 0
	}
	return c.line.Buffers[link].Keeps
}

// keptBefore is what stays in a place and in all that pass their pieces on into it.
func (c *compiler) keptBefore(link int) int64 {
	total := int64(0)
	for _, i := range c.before(link) {
		total += c.keeps(i)
	}
	return total
}

// keepsInLine is what stays where all pieces have to pass through.
func (c *compiler) keepsInLine(link int) int64 {
	if c.beside(link) {
		return 0
	}
	return c.keeps(link)
}

// standsBefore says that a place is a belt that does not accumulate.
func (c *compiler) standsBefore(link int) bool {
	return link < len(c.line.Buffers) && c.line.Buffers[link].Stands
}
