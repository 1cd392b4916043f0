package keyfigure

import (
	"slices"

	"gonum.org/v1/gonum/graph/network"
	"gonum.org/v1/gonum/graph/simple"

	"tuckline/sim"
)

// newBounds derives the two ends between which the long-run output lies.
func newBounds(f *flow, stations []Station) Bounds {
	b := Bounds{Buffered: slices.ContainsFunc(f.line.Buffers, func(x sim.Buffer) bool { return x.Holds != 0 })}
	b.rigid(stations)
	b.Unlimited = f.greatest(stations, -1)
	for i := range stations {
		if b.Unlimited > 0 && f.greatest(stations, i) < b.Unlimited*(1-1e-6) {
			b.Constraint = append(b.Constraint, stations[i].Name)
		}
	}
	return b
}

// greatest is the greatest flow in answer pieces per minute that the stations
// let through with buffers without limit between them; in a line without
// branches that is the smallest of their rates. Station less, if any, is taken
// a little slower: if the flow then falls, the station is the constraint.
// Source: maximum flow through nodes with a capacity each.
func (f *flow) greatest(stations []Station, less int) float64 {
	const from, to = 0, 1
	in := func(node int) int64 { return int64(2 + 2*node) }
	out := func(node int) int64 { return int64(3 + 2*node) }
	wide := 1.0
	for i := range stations {
		wide += stations[i].AtMost.Answer
	}
	g := simple.NewWeightedDirectedGraph(0, 0)
	g.AddNode(simple.Node(from))
	g.AddNode(simple.Node(to))
	edge := func(a, b int64, width float64) {
		g.SetWeightedEdge(simple.WeightedEdge{F: simple.Node(a), T: simple.Node(b), W: width})
	}
	for node := range f.before {
		width := wide
		if node < len(stations) {
			width = stations[node].AtMost.Answer
			if node == less {
				width *= 0.99
			}
		}
		edge(in(node), out(node), width)
		if len(f.before[node]) == 0 && node < len(stations) {
			edge(from, in(node), wide)
		}
		for _, next := range f.after[node] {
			edge(out(node), in(next), wide)
		}
		if len(f.after[node]) == 0 {
			edge(out(node), to, wide)
		}
	}
	return network.MaxFlowDinic(g, simple.Node(from), simple.Node(to), -1)
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
		cycles := s.cyclesPerPiece()
		if cycles == 0 || s.Set.Cycles <= 0 {
			continue
		}
		if rate := 1 / (s.meanCycle(s.Set) * cycles); b.Tied == 0 || rate < b.Tied {
			b.Tied = rate
		}
		part := ratio(s.Flow*s.Yield, s.lineYield)
		down += part * cycles * (s.downPerCycle + s.downPerRun*s.meanCycle(s.Set))
		calendar *= 1 - part*(1-s.calendar)
	}
	b.RigidEfficiency = calendar / (1 + down*b.Tied)
	b.Rigid = b.Tied * b.RigidEfficiency
}
