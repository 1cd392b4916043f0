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
		c.connect()
	}
	if len(c.problems) == 0 {
		c.order()
	}
	if len(c.problems) > 0 {
		return nil, c.problems
	}
	c.stations()
	c.levels()
	c.groups()
	c.crews()
	c.capacities()
	if len(c.problems) > 0 {
		return nil, c.problems
	}
	return &Model{plan: c.plan, places: c.places, line: line}, nil
}

// compiler turns names into indices. While it works, a node is the index of a
// station of the line, or the number of stations plus the index of a buffer.
type compiler struct {
	line     *Line
	problems Problems
	plan     plan.Plan
	places   []Place
	// links and nodes give the index by name; of stations for nodes.
	links, nodes map[string]int
	// into is the link that a station or buffer puts into, from the link that a station takes from;
	// by name.
	into, from map[string]int
	// feeders and takers are names, by link.
	feeders, takers [][]string
}

func (c *compiler) fault(path, format string, args ...any) {
	c.problems = append(c.problems, Problem{Path: path, Text: fmt.Sprintf(format, args...)})
}

// connect finds out who feeds which link and who takes from it.
func (c *compiler) connect() {
	c.into, c.from = map[string]int{}, map[string]int{}
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
	for i := range c.line.Stations {
		if s := &c.line.Stations[i]; s.From != "" {
			c.takeFrom(s)
		}
	}
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
	_, isStation := c.nodes[feeder]
	from, isBuffer := c.links[feeder]
	switch {
	case !isStation && !isBuffer:
		c.fault(at+".from", "there is no station, conveyor or buffer %q in the line", feeder)
		return
	case slices.Contains(c.feeders[i], feeder):
		c.fault(at+".from", "%q is named twice", feeder)
		return
	}
	if other, has := c.into[feeder]; has {
		c.fault(at+".from", "%q already feeds %q; what it gives can go to one place only", feeder, c.places[other].Name)
		return
	}
	c.into[feeder] = i
	c.feeders[i] = append(c.feeders[i], feeder)
	if isBuffer {
		c.takers[from] = append(c.takers[from], c.places[i].Name)
	}
}

// takeFrom lets a station take from its buffer, or by hand-over from a station.
func (c *compiler) takeFrom(s *Station) {
	if i, isBuffer := c.links[s.From]; isBuffer {
		if len(c.takers[i]) > 0 && c.isBufferName(c.takers[i][0]) {
			c.fault(s.Name+".from", "%q passes its pieces on to %q; take from there", s.From, c.takers[i][0])
			return
		}
		c.from[s.Name] = i
		c.takers[i] = append(c.takers[i], s.Name)
		return
	}
	if _, isStation := c.nodes[s.From]; !isStation {
		c.fault(s.Name+".from", "there is no station, conveyor or buffer %q in the line", s.From)
		return
	}
	name := s.From + " to " + s.Name
	if _, taken := c.links[name]; taken {
		c.fault(s.Name, "the hand-over before it would be called %q, which is already a name", name)
		return
	}
	i := c.addLink(Place{Name: name, HandOver: true, Capacity: 0})
	c.feed(i, s.From, s.Name)
	c.from[s.Name] = i
	c.takers[i] = append(c.takers[i], s.Name)
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
		node := plan.Node{Station: plan.None, Link: plan.None, Out: plan.None}
		node.Rank, _ = slices.BinarySearch(byName, name)
		if out, has := c.into[name]; has {
			node.Out = out
		}
		if i, isStation := c.nodes[name]; isStation {
			node.Station = len(c.plan.Stations)
			c.plan.Stations = append(c.plan.Stations, plan.Station{Name: name, Declared: i, Node: len(c.plan.Nodes)})
		} else {
			node.Link = c.links[name]
		}
		c.plan.Nodes = append(c.plan.Nodes, node)
	}
}

// movers are the stations, and the buffers that pass their pieces on to another.
func (c *compiler) movers() []string {
	var names []string
	for i := range c.line.Stations {
		names = append(names, c.line.Stations[i].Name)
	}
	for i := range c.line.Buffers {
		if name := c.line.Buffers[i].Name; c.passesOn(name) {
			names = append(names, name)
		}
	}
	return names
}

func (c *compiler) passesOn(buffer string) bool {
	_, yes := c.into[buffer]
	return yes
}

// distance is the longest way to a sink, in nodes; negative if the way leads back.
func (c *compiler) distance(name string, far map[string]int, depth int) int {
	if d, known := far[name]; known {
		return d
	}
	if depth > len(c.nodes)+len(c.places) {
		return -1
	}
	longest := 0
	if out, has := c.into[name]; has {
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
