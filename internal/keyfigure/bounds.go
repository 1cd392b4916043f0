package keyfigure

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/graph/network"
	"gonum.org/v1/gonum/graph/simple"

	"tuckline/sim"
)

// newBounds derives the two ends between which the long-run output lies.
func newBounds(f *flow, stations []Station, c *counting) Bounds {
	b := Bounds{Buffered: slices.ContainsFunc(f.line.Buffers, func(x sim.Buffer) bool { return x.Holds != 0 })}
	b.rigid(stations)
	b.AtSet = f.greatest(c, func(i int) float64 { return stations[i].Set.Answer })
	atMost := func(i int) float64 { return stations[i].AtMost.Answer }
	b.Unlimited = f.greatest(c, atMost)
	var narrow []int
	for i := range stations {
		less := func(k int) float64 {
			if k == i {
				return 0.99 * atMost(k)
			}
			return atMost(k)
		}
		if b.Unlimited > 0 && f.greatest(c, less) < b.Unlimited*(1-1e-6) {
			narrow = append(narrow, i)
			b.Constraint = append(b.Constraint, stations[i].Name)
		}
	}
	b.together = f.apart(narrow, narrow)
	return b
}

// greatest is the greatest flow in answer pieces per minute that the stations
// let through to all counts together and on behind them, with buffers without
// limit between them; in a line without branches that is the smallest of their
// rates. What reaches no count takes no part.
// Source: maximum flow through nodes with a capacity each.
func (f *flow) greatest(c *counting, rate func(int) float64) float64 {
	const from, to = 0, 1
	in := func(node int) int64 { return int64(2 + 2*node) }
	out := func(node int) int64 { return int64(3 + 2*node) }
	n, sum := len(f.line.Stations), 1.0
	for i := range n {
		sum += rate(i)
	}
	// In whole numbers that a float holds, so that the order of the search cannot show in the last digit.
	_, exponent := math.Frexp(sum)
	scale := math.Ldexp(1, exactBits-exponent)
	wide := math.Round(sum * scale)
	g := simple.NewWeightedDirectedGraph(0, 0)
	for id := range int64(2 + 2*len(f.before)) {
		g.AddNode(simple.Node(id)) // all of them: the search counts on numbers without gaps
	}
	edge := func(a, b int64, width float64) {
		g.SetWeightedEdge(simple.WeightedEdge{F: simple.Node(a), T: simple.Node(b), W: width})
	}
	for node := range f.before {
		if !c.to[node] && !c.from[node] {
			continue
		}
		width := wide
		if node < n {
			width = math.Round(rate(node) * scale)
		}
		edge(in(node), out(node), width)
		if len(f.before[node]) == 0 && node < n && c.to[node] {
			edge(from, in(node), wide)
		}
		for _, next := range f.after[node] {
			if c.to[next] || c.from[next] {
				edge(out(node), in(next), wide)
			}
		}
		if len(f.after[node]) == 0 {
			edge(out(node), to, wide)
		}
	}
	return network.MaxFlowDinic(g, simple.Node(from), simple.Node(to), -1) / scale
}

// exactBits leaves room for sums in the 53 bits of a float.
const exactBits = 50

// apart says that no pieces get from a station of one side to one of the other.
func (f *flow) apart(one, other []int) bool {
	for _, i := range one {
		before, after := make([]bool, len(f.before)), make([]bool, len(f.before))
		mark(before, i, f.before)
		mark(after, i, f.after)
		for _, k := range other {
			if k != i && (before[k] || after[k]) {
				return false
			}
		}
	}
	return true
}

// rigid derives the output of the line without any buffer, all stations tied
// to one speed: 1/(1 + sum of down shares). Source: bufferless chain with
// operation-dependent stops (Buzacott 1967; from memory). A station with only
// part of the flow beside others makes fewer cycles a piece, and its stops stop
// only that part.
func (b *Bounds) rigid(stations []Station) {
	down, calendar := 0.0, 1.0
	for i := range stations {
		s := &stations[i]
		cycles := s.cycles
		if cycles == 0 || s.Set.Cycles <= 0 {
			continue
		}
		if rate := 1 / (s.meanCycle(s.Set) * cycles); b.Tied == 0 || rate < b.Tied {
			b.Tied = rate
		}
		part := min(1, cycles*float64(s.Gives)*s.PerPiece*s.Yield)
		down += part * cycles * (s.downPerCycle + s.downPerRun*s.meanCycle(s.Set))
		calendar *= 1 - part*(1-s.calendar)
	}
	b.RigidEfficiency = calendar / (1 + down*b.Tied)
	b.Rigid = b.Tied * b.RigidEfficiency
}
