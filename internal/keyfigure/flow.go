package keyfigure

import "tuckline/sim"

// joint is a place of the flow in which all pieces are alike: buffers and
// conveyors that pass pieces on to each other, or a hand-over.
type joint struct {
	feeders, takers []int // stations
}

// flow is the way of the pieces: which joint each station takes from and gives into.
type flow struct {
	line    *sim.Line
	joints  []joint
	in, out []int // by station; in is -1 for supply from outside
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
		in := -1
		if len(f.before[i]) > 0 {
			in = at(f.before[i][0])
			f.joints[in].takers = append(f.joints[in].takers, i)
		}
		f.in = append(f.in, in)
	}
	return f
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

// upstream lists the stations that feed a buffer, through other buffers too;
// downstream those that take from it.
func (f *flow) upstream(node int) []int   { return f.reach(node, f.before) }
func (f *flow) downstream(node int) []int { return f.reach(node, f.after) }

func (f *flow) reach(node int, next [][]int) []int {
	var found []int
	seen := map[int]bool{node: true}
	for queue := []int{node}; len(queue) > 0; queue = queue[1:] {
		for _, other := range next[queue[0]] {
			switch {
			case seen[other]:
				continue
			case other < len(f.line.Stations):
				found = append(found, other)
			default:
				queue = append(queue, other)
			}
			seen[other] = true
		}
	}
	return found
}

// way is the order of the product: every node after all that feed it, and
// otherwise as declared.
func (f *flow) way() []int {
	var order []int
	seen := make([]bool, len(f.before))
	var visit func(int)
	visit = func(node int) {
		if seen[node] {
			return
		}
		seen[node] = true
		for _, from := range f.before[node] {
			visit(from)
		}
		order = append(order, node)
	}
	for node := range f.before {
		visit(node)
	}
	return order
}
