package sim

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// sizes resolves the capacities: the smallest number of places that cannot lock, where the
// program puts it (before empty pockets one stack more), and a refusal of less.
func (c *compiler) sizes() {
	for i := range c.places {
		p := &c.places[i]
		p.From, p.To = c.feedersOf(i), c.byTurn(c.takers[i])
		slices.Sort(p.From)
		least := c.leastCapacity(i)
		switch {
		case p.HandOver || p.Capacity == Smallest:
			p.Capacity = max(least, c.collating(i))
			if c.assembled(i) {
				p.Capacity = max(p.Capacity, c.without(i))
			}
			stacking := c.stacking(i)
			p.Stacks = stacking > p.Capacity
			p.Capacity = max(p.Capacity, stacking)
		case c.beside(i):
			p.Direct = c.direct(i)
			if p.Capacity != Unlimited {
				p.Capacity += p.Direct
			}
		case p.Capacity != Unlimited && p.Capacity < least:
			c.fault(p.Name+".holds", "%d places can lock the line: %s needs at least %d", p.Capacity, c.why(i), least)
		}
		if at, places := c.atStart(i), p.Capacity-p.Direct; p.Capacity != Unlimited && at > places {
			c.fault("run.at start."+p.Name, "%d pieces do not fit into %d places", at, places)
		}
	}
}

// feedersOf names the neighbours that feed a place: of a unit the last member.
func (c *compiler) feedersOf(link int) []string {
	names := slices.Clone(c.feeders[link])
	for i, name := range names {
		if u, isStation := c.nodes[name]; isStation {
			names[i] = c.units[u].last()
		}
	}
	return names
}

// atStart is the level of a buffer at time 0.
func (c *compiler) atStart(link int) int64 {
	if link >= len(c.line.Buffers) {
		return 0
	}
	return c.line.Buffers[link].AtStart
}

// without is the number of places that cannot lock even if no piece passes straight through.
func (c *compiler) without(link int) int64 {
	gives, takes := c.most(link)
	return gives + takes - 1 + c.keepsInLine(link)
}

// assembled says that a taker needs other input beside that of this place.
func (c *compiler) assembled(link int) bool {
	return slices.ContainsFunc(c.takers[link], func(name string) bool {
		i, isStation := c.nodes[name]
		return isStation && len(c.from[i]) > 1
	})
}

// checkAssembly refuses an assembling station with several inputs that rely on pieces passing
// straight through: each could wait for the other.
func (c *compiler) checkAssembly() {
	for i := range c.units {
		relies := ""
		for _, link := range c.from[i] {
			p := &c.places[link]
			if len(c.from[i]) < 2 || c.beside(link) || p.Capacity == Unlimited || p.Capacity >= c.without(link) {
				continue
			}
			if relies != "" {
				c.fault(p.Name+".holds", "%d places can lock the line: %q also takes from %q, and each may wait for the other; of the two one needs at least %d",
					p.Capacity, c.units[i].Name, relies, c.without(link))
			}
			relies = p.Name
		}
	}
}

// makeLinks writes the places as links of the plan.
func (c *compiler) makeLinks() {
	for i := range c.places {
		p := &c.places[i]
		link := plan.Link{
			Name: p.Name, Capacity: p.Capacity, Transit: p.Transit, AtStart: c.atStart(i), First: plan.None,
			Gives: c.gives(slices.Min(c.feeders[i])), Takes: c.leastTake(i) + c.keeps(i), // the first by name
			LastIn: i < len(c.line.Buffers) && c.line.Buffers[i].LastIn, Store: c.store(i),
		}
		link.TakenOut = i < len(c.line.Buffers) && c.line.Buffers[i].TakenOut
		if p.Capacity == Unlimited {
			link.Capacity = plan.NoLimit
		}
		feeders := slices.Clone(c.feeders[i])
		slices.Sort(feeders)
		for _, name := range feeders {
			link.Feeders = append(link.Feeders, c.nodeOf(name))
		}
		for _, name := range p.To {
			k := c.nodeOf(name)
			if c.isBufferName(name) { // the link itself passes its pieces on
				k = c.nodeOf(p.Name)
			}
			link.Takers = append(link.Takers, k)
		}
		if i < len(c.line.Buffers) {
			c.turns(&link, &c.line.Buffers[i])
		}
		c.plan.Links = append(c.plan.Links, link)
	}
	c.watch()
}

// gives is what a feeder puts at once; a buffer passes on one by one.
func (c *compiler) gives(name string) int64 {
	if i, isStation := c.nodes[name]; isStation {
		return c.units[i].Gives
	}
	return 1
}

// takes is what a taker takes at once from a link.
func (c *compiler) takes(name string, link int) int64 {
	i, isStation := c.nodes[name]
	if !isStation {
		return 1
	}
	if j := slices.Index(c.from[i], link); j > 0 {
		return c.units[i].Also[j-1].Takes
	}
	return c.units[i].Takes
}

func (c *compiler) leastTake(link int) int64 {
	least := c.takes(c.takers[link][0], link)
	for _, name := range c.takers[link] {
		least = min(least, c.takes(name, link))
	}
	return least
}

func (c *compiler) most(link int) (gives, takes int64) {
	for _, name := range c.feeders[link] {
		gives = max(gives, c.gives(name))
	}
	for _, name := range c.takers[link] {
		takes = max(takes, c.takes(name, link))
	}
	return gives, takes
}

// leastCapacity is the smallest number of places with which the line cannot lock:
// max(gives, takes) − 1, because the last piece passes straight through; where it
// cannot pass through (transit, or room that is reserved before the cycle)
// gives + takes − 1.
func (c *compiler) leastCapacity(link int) int64 {
	gives, takes := c.most(link)
	kept := c.keepsInLine(link)
	if c.places[link].Transit > 0 || c.reserves(link) {
		return gives + takes - 1 + kept
	}
	return max(gives, takes) - 1 + kept
}

// collating is what the program puts where several feeders reserve their room before the cycle:
// enough for all of them at once, or only one could run at a time.
func (c *compiler) collating(link int) int64 {
	_, takes := c.most(link)
	return takes - 1 + c.keepsInLine(link) + c.reserved(link)
}

func (c *compiler) reserves(link int) bool {
	return slices.ContainsFunc(c.feeders[link], func(name string) bool {
		i, isStation := c.nodes[name]
		return isStation && c.units[i].BlocksBefore
	})
}

func (c *compiler) why(link int) string {
	switch {
	case c.keeps(link) > 0:
		return "what is put in at once beside what always stays and a rest that is too small to take"
	case c.places[link].Transit > 0:
		return "what is put in at once beside a rest that is too small to take"
	case c.reserves(link):
		return "a feeder that reserves room before its cycle, beside a rest that is too small to take,"
	}
	return "a hand-over between these neighbours"
}

// levels resolves which levels stop and restart each station: those of every buffer
// up to the next station, belts before a buffer included in its count; and the
// level from which a starved station starts.
func (c *compiler) levels() {
	for k := range c.plan.Nodes {
		node := &c.plan.Nodes[k]
		if node.Station == plan.None {
			continue
		}
		for o := range node.Outs {
			out := &node.Outs[o]
			for l, has := out.Link, true; has && l < len(c.line.Buffers); l, has = c.next(l) {
				c.setLevels(out, l)
			}
		}
		c.setStart(&c.plan.Stations[node.Station])
	}
}

// next is the link into which a link passes its pieces on.
func (c *compiler) next(l int) (int, bool) {
	into := c.into[c.places[l].Name]
	if len(into) == 0 {
		return 0, false
	}
	return into[0], true
}

func (c *compiler) setLevels(out *plan.Out, l int) {
	b := &c.line.Buffers[l]
	c.checkLevels(l, b)
	if b.StopUpstream > 0 {
		out.Stops = append(out.Stops, plan.StopLevel{Link: l, Level: b.StopUpstream})
	}
	if b.Full.On {
		out.Sensors = append(out.Sensors, l)
	}
	if b.Restart.On {
		out.Restarts = append(out.Restarts, plan.RestartLevel{Links: c.before(l), Level: b.Restart.Level})
	}
}

// setStart finds the buffer with a start level right before a station.
func (c *compiler) setStart(st *plan.Station) {
	for _, in := range st.Ins {
		if in.Link >= len(c.line.Buffers) || !c.line.Buffers[in.Link].Start.On {
			continue
		}
		b := &c.line.Buffers[in.Link]
		path := b.Name + ".levels.start downstream"
		gives, _ := c.most(in.Link)
		switch {
		case st.StartLink != plan.None:
			c.fault(path, "%q already waits for the start level of %q", st.Name, c.places[st.StartLink].Name)
		case b.Start.Level < in.Takes:
			c.fault(path, "%d are taken at once; it is at least that", in.Takes)
		case b.Holds >= 0 && b.Start.Level > b.Holds-gives+1:
			c.fault(path, "the line can lock: at %d pieces the %d that are put at once find no place, so that the level stays below %d", b.Holds-gives+1, gives, b.Start.Level)
		case b.StopUpstream > 0 && b.Start.Level > b.StopUpstream:
			c.fault(path, "the line can lock: the feeders stop at %d pieces, which is less than %d", b.StopUpstream, b.Start.Level)
		case b.Restart.On && b.Start.Level > b.Restart.Level+1-c.keptBefore(in.Link)+b.Keeps:
			c.fault(path, "the line can lock: stopped feeders wait until at most %d pieces are left, but with fewer than %d nothing is taken; it is at most %d",
				b.Restart.Level, b.Start.Level, b.Restart.Level+1-c.keptBefore(in.Link)+b.Keeps)
		}
		st.StartLink, st.Start = in.Link, b.Start.Level
	}
}

// checkLevels refuses levels with which the line can lock.
func (c *compiler) checkLevels(l int, b *Buffer) {
	gives, takes := c.most(l)
	if b.StopUpstream > 0 && b.StopUpstream < takes {
		c.fault(b.Name+".levels.stop upstream", "the line can lock: at %d pieces the feeders stop, but %d are taken at once", b.StopUpstream, takes)
	} else if takes += b.Keeps; b.StopUpstream > 0 && b.StopUpstream < takes {
		c.fault(b.Name+".levels.stop upstream", "the line can lock: at %d pieces the feeders stop, but only with %d is anything taken, because %d always stay", b.StopUpstream, takes, b.Keeps)
	}
	if !b.Restart.On {
		return
	}
	path := b.Name + ".levels.restart upstream"
	switch kept, taken := c.keptBefore(l), takes-b.Keeps; {
	case b.Restart.Level < taken-1:
		c.fault(path, "the line can lock: %d pieces may stay because %d are taken at once; it needs at least %d", taken-1, taken, taken-1+kept)
	case b.Restart.Level < taken-1+kept:
		c.fault(path, "the line can lock: %d pieces may stay because %d are taken at once, and %d always stay; it needs at least %d", taken-1, taken, kept, taken-1+kept)
	}
	if places := c.placesBefore(l); b.Holds != Unlimited && b.Restart.Level > places-gives {
		c.fault(path, "%d pieces and the %d that are put at once do not fit into %d places; it is at most %d", b.Restart.Level, gives, places, places-gives)
	}
	if b.StopUpstream > 0 && b.Restart.Level >= b.StopUpstream {
		c.fault(path, "it must be lower than stop upstream, which is %d pieces", b.StopUpstream)
	}
}

// placesBefore is the number of places of a buffer and of all belts before it.
func (c *compiler) placesBefore(l int) int64 {
	total := int64(0)
	for _, i := range c.before(l) {
		if c.places[i].Capacity == Unlimited {
			return plan.NoLimit
		}
		total += c.places[i].Capacity
	}
	return total
}

// before is a link and all belts and buffers that pass their pieces on into it.
func (c *compiler) before(l int) []int {
	all := []int{l}
	for _, feeder := range c.feeders[l] {
		if i, isBuffer := c.links[feeder]; isBuffer {
			all = append(all, c.before(i)...)
		}
	}
	slices.Sort(all)
	return all
}

// watch enters every node whose levels read a link into the watchers of the link.
func (c *compiler) watch() {
	for k := range c.plan.Nodes {
		for l := range c.plan.Links {
			if readsLevel(&c.plan.Nodes[k], l) && !slices.Contains(c.plan.Links[l].Feeders, k) {
				c.plan.Links[l].Watchers = append(c.plan.Links[l].Watchers, k)
			}
		}
	}
}

func readsLevel(node *plan.Node, l int) bool {
	return slices.ContainsFunc(node.Outs, func(out plan.Out) bool {
		return slices.Contains(out.Sensors, l) || slices.ContainsFunc(out.Stops, func(s plan.StopLevel) bool { return s.Link == l }) ||
			slices.ContainsFunc(out.Restarts, func(r plan.RestartLevel) bool { return slices.Contains(r.Links, l) })
	})
}
