package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// joint is a place of the flow in which all pieces are alike: buffers and
// conveyors that pass pieces on to each other, or a hand-over.
type joint struct {
	feeders, takers []int // stations
	// turns are the takers of each branch into which one feeder puts pieces in turn, so that
	// every branch gets as many; nil where the flow divides by speeds.
	turns [][]int
}

// entrance is one of the places that a station takes from.
type entrance struct {
	joint int
	takes float64 // pieces a cycle
}

// flow is the way of the pieces: which joint each station takes from and gives into.
type flow struct {
	line    *sim.Line
	joints  []joint
	in, out []int // by station; in is -1 for supply from outside, the main one of an assembly
	// ins are all entrances of a station, the main one first.
	ins [][]entrance
	// places are the joints of the buffers.
	places []int
	// before and after have, for every node, the nodes next to it. Nodes are
	// the stations, then the buffers.
	before, after [][]int
}

// newFlow follows the names of a line. A name that nothing carries counts as supply.
func newFlow(line *sim.Line) *flow {
	f := &flow{line: line}
	f.link()
	root := f.roots()
	number := map[int]int{}
	at := func(node int) int {
		r := root(node)
		if _, known := number[r]; !known {
			number[r] = len(f.joints)
			f.joints = append(f.joints, joint{})
		}
		return number[r]
	}
	for i := range line.Stations {
		out := at(i)
		f.out = append(f.out, out)
		f.joints[out].feeders = append(f.joints[out].feeders, i)
	}
	for i := range line.Stations {
		f.enter(i, at)
	}
	for j := range line.Buffers {
		f.places = append(f.places, at(len(line.Stations)+j))
	}
	f.findTurns()
	return f
}

// enter finds the joints that a station takes from.
func (f *flow) enter(i int, at func(int) int) {
	var ins []entrance
	for k, node := range f.before[i] {
		in := entrance{joint: at(node), takes: f.takesOf(i, k)}
		ins = append(ins, in)
		if takers := &f.joints[in.joint].takers; !slices.Contains(*takers, i) {
			*takers = append(*takers, i)
		}
	}
	main := -1
	if len(ins) > 0 {
		main = ins[0].joint
	}
	f.in, f.ins = append(f.in, main), append(f.ins, ins)
}

// takesOf is what a cycle takes from the k-th of the places before a station.
func (f *flow) takesOf(station, k int) float64 {
	s := &f.line.Stations[station]
	name := f.name(f.before[station][k])
	if name != s.From {
		for _, in := range s.Also {
			if in.From == name {
				return float64(max(in.Takes, 1))
			}
		}
	}
	return float64(max(s.Takes, 1))
}

// takesFrom is what a cycle of a station takes from a joint.
func (f *flow) takesFrom(station, joint int) float64 {
	sum := 0.0
	for _, in := range f.ins[station] {
		if in.joint == joint {
			sum += in.takes
		}
	}
	return sum
}

// link finds the neighbours of every node.
func (f *flow) link() {
	n := len(f.line.Stations)
	node := map[string]int{}
	for i, s := range f.line.Stations {
		node[s.Name] = i
	}
	for j, b := range f.line.Buffers {
		node[b.Name] = n + j
	}
	f.before = make([][]int, n+len(f.line.Buffers))
	f.after = make([][]int, len(f.before))
	join := func(from string, to int) {
		if a, known := node[from]; known && a != to {
			f.before[to] = append(f.before[to], a)
			f.after[a] = append(f.after[a], to)
		}
	}
	for i, s := range f.line.Stations {
		join(s.From, i)
		for _, in := range s.Also {
			join(in.From, i)
		}
	}
	for j, b := range f.line.Buffers {
		for _, from := range b.From {
			join(from, n+j)
		}
	}
}

// roots joins the output side of every station with the buffers that it feeds,
// and buffers with buffers; nodes with the same root are one joint.
func (f *flow) roots() func(int) int {
	parent := make([]int, len(f.before))
	for i := range parent {
		parent[i] = i
	}
	find := func(i int) int {
		for parent[i] != i {
			i = parent[i]
		}
		return i
	}
	for j := len(f.line.Stations); j < len(parent); j++ {
		for _, from := range f.before[j] {
			parent[find(j)] = find(from)
		}
	}
	return find
}
