package sim

import (
	"cmp"
	"fmt"
	"slices"

	"tuckline/sim/internal/plan"
)

// usualPriority is the priority of a stop that names none.
const usualPriority = 5

// Compile checks a line and prepares it for running. The error is Problems: all
// faults, not the first.
func Compile(line Line) (*Model, error) {
	c := &compiler{line: &line, nodes: map[string]int{}, links: map[string]int{}}
	c.check()
	if len(c.problems) == 0 {
		c.couple()
	}
	if len(c.problems) == 0 {
		c.connect()
	}
	if len(c.problems) == 0 {
		c.order()
	}
	if len(c.problems) > 0 {
		return nil, c.problems
	}
	c.sizes()
	c.checkAssembly()
	c.checkStores()
	if len(c.problems) > 0 {
		return nil, c.problems
	}
	c.stations()
	c.tasks()
	c.levels()
	c.groups()
	c.calendar()
	c.crews()
	c.makeLinks()
	c.orders()
	if len(c.problems) > 0 {
		return nil, c.problems
	}
	return &Model{plan: c.plan, places: c.places, line: line}, nil
}

// compiler turns names into indices.
type compiler struct {
	line     *Line
	problems Problems
	plan     plan.Plan
	places   []Place
	// units are the stations that the engine knows: one as written, or several coupled ones.
	units []unit
	// links and nodes give the index by name: of links, and of units for stations, members included.
	links, nodes map[string]int
	// into are the links that a unit or buffer puts into, by its name.
	into map[string][]int
	// from are the links that a unit takes from.
	from [][]int
	// feeders and takers are names, by link.
	feeders, takers [][]string
}

func (c *compiler) fault(path, format string, args ...any) {
	c.problems = append(c.problems, Problem{Path: path, Text: fmt.Sprintf(format, args...)})
}

// connect finds out who feeds which link and who takes from it.
func (c *compiler) connect() {
	c.into, c.from = map[string][]int{}, make([][]int, len(c.units))
	for i := range c.line.Buffers {
		b := &c.line.Buffers[i]
		c.addLink(Place{Name: b.Name, Capacity: b.Holds, Transit: b.Transit, Conveyor: b.Conveyor})
	}
	for i := range c.line.Buffers {
		b := &c.line.Buffers[i]
		if len(b.From) == 0 {
			c.fault(b.Name, "nothing feeds it; name its feeder with from")
		}
		for _, feeder := range b.From {
			c.feed(i, feeder, b.Name)
		}
	}
	for i := range c.units {
		if u := &c.units[i]; u.From != "" {
			c.takeFrom(i, u.From, u.Takes)
			for _, in := range u.Also {
				c.takeFrom(i, in.From, in.Takes)
			}
		}
	}
	c.sends()
	for i := range c.line.Buffers {
		if len(c.takers[i]) == 0 {
			c.fault(c.line.Buffers[i].Name, "nothing takes from it; a buffer stands between stations")
		}
	}
}

func (c *compiler) addLink(p Place) int {
	i := len(c.places)
	c.places = append(c.places, p)
	c.feeders, c.takers = append(c.feeders, nil), append(c.takers, nil)
	c.links[p.Name] = i
	return i
}

// feed lets a station or a buffer put its pieces into link i.
func (c *compiler) feed(i int, feeder, at string) {
	from, isBuffer := c.links[feeder]
	if !isBuffer {
		unit, isStation := c.nodes[feeder]
		if !isStation {
			c.fault(at+".from", "there is no station, conveyor or buffer %q in the line", feeder)
			return
		}
		if last := c.units[unit].last(); last != feeder {
			c.fault(at+".from", "%q is coupled to what follows it; take from %q, the last of the unit", feeder, last)
			return
		}
		feeder = c.units[unit].Name
	}
	if slices.Contains(c.feeders[i], feeder) {
		c.fault(at+".from", "%q is named twice", feeder)
		return
	}
	if already := c.into[feeder]; len(already) > 0 && !c.maySplit(feeder) {
		c.fault(at+".from", "%q already feeds %q; to send its pieces to several places it needs sends, with a rule", feeder, c.places[already[0]].Name)
		return
	}
	c.into[feeder] = append(c.into[feeder], i)
	c.feeders[i] = append(c.feeders[i], feeder)
	if isBuffer {
		c.takers[from] = append(c.takers[from], c.places[i].Name)
	}
}

// takeFrom lets a unit take from a buffer, or by hand-over from a station.
func (c *compiler) takeFrom(unit int, from string, takes int64) {
	u := &c.units[unit]
	if i, isBuffer := c.links[from]; isBuffer {
		switch {
		case len(c.takers[i]) > 0 && (c.isBufferName(c.takers[i][0]) || takes > 1) && c.standsBefore(i):
			c.fault(u.Name+".from", "%q does not accumulate, so that several stations can only take single pieces from it; put a buffer behind it", from)
			return
		case len(c.takers[i]) > 0 && c.isBufferName(c.takers[i][0]):
			c.fault(u.Name+".from", "%q passes its pieces on to %q; take from there", from, c.takers[i][0])
			return
		case slices.Contains(c.takers[i], u.Name):
			c.fault(u.Name+".from", "%q is named twice", from)
			return
		}
		if place, put := c.collate(i, unit, takes); put {
			i = c.links[place]
		}
		c.from[unit] = append(c.from[unit], i)
		c.takers[i] = append(c.takers[i], u.Name)
		return
	}
	if _, isStation := c.nodes[from]; !isStation {
		c.fault(u.Name+".from", "there is no station, conveyor or buffer %q in the line", from)
		return
	}
	name := from + " to " + u.Name
	if _, taken := c.links[name]; taken {
		c.fault(u.Name, "the hand-over before it would be called %q, which is already a name", name)
		return
	}
	i := c.addLink(Place{Name: name, HandOver: true})
	c.feed(i, from, u.Name)
	c.from[unit] = append(c.from[unit], i)
	c.takers[i] = append(c.takers[i], u.Name)
}

func (c *compiler) isBufferName(name string) bool {
	_, yes := c.links[name]
	return yes
}

// order puts all that moves pieces into the order of moves: longest way to a sink last,
// ties by name.
func (c *compiler) order() {
	names := c.movers()
	far := map[string]int{}
	for _, name := range names {
		if c.distance(name, far, 0) < 0 {
			c.fault(name, "it feeds itself: its pieces come back to it; the pieces of a line go one way")
			return
		}
	}
	byName := slices.Clone(names)
	slices.Sort(byName)
	slices.SortFunc(names, func(a, b string) int {
		return cmp.Or(cmp.Compare(far[a], far[b]), cmp.Compare(a, b))
	})
	for _, name := range names {
		node := plan.Node{Station: plan.None, Link: plan.None}
		node.Rank, _ = slices.BinarySearch(byName, name)
		for _, l := range c.into[name] {
			node.Outs = append(node.Outs, plan.Out{Link: l})
		}
		if i, isStation := c.nodes[name]; isStation {
			node.Station = len(c.plan.Stations)
			node.Rule = plan.Rule(c.units[i].Sends.Rule)
			c.plan.Stations = append(c.plan.Stations, plan.Station{Name: name, Node: len(c.plan.Nodes)})
		} else {
			node.Link = c.links[name]
		}
		c.plan.Nodes = append(c.plan.Nodes, node)
	}
}

// movers are the stations, and the buffers that pass their pieces on to another.
func (c *compiler) movers() []string {
	var names []string
	for i := range c.units {
		names = append(names, c.units[i].Name)
	}
	for i := range c.line.Buffers {
		if name := c.line.Buffers[i].Name; c.passesOn(name) {
			names = append(names, name)
		}
	}
	return names
}

func (c *compiler) passesOn(buffer string) bool {
	return len(c.into[buffer]) > 0
}

// distance is the longest way to a sink, in nodes; negative if the way leads back.
func (c *compiler) distance(name string, far map[string]int, depth int) int {
	if d, known := far[name]; known {
		return d
	}
	if depth > len(c.units)+len(c.places) {
		return -1
	}
	longest := 0
	for _, out := range c.into[name] {
		for _, taker := range c.takers[out] {
			d := c.distance(taker, far, depth+1)
			if d < 0 {
				return -1
			}
			longest = max(longest, d+1)
		}
	}
	far[name] = longest
	return longest
}

// nodeOf is the node of a station or of a buffer that passes pieces on.
func (c *compiler) nodeOf(name string) int {
	for k := range c.plan.Nodes {
		n := &c.plan.Nodes[k]
		if n.Station >= 0 && c.plan.Stations[n.Station].Name == name || n.Link >= 0 && c.places[n.Link].Name == name {
			return k
		}
	}
	return plan.None
}
