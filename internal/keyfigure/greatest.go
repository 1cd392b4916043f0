package keyfigure

import (
	"math"

	"gonum.org/v1/gonum/graph/network"
	"gonum.org/v1/gonum/graph/simple"
)

// gauge says what every station lets through.
type gauge struct {
	// rate is in answer pieces a minute, pieces are those that leave it a minute.
	rate, pieces func(station int) float64
	// worth is the number of answer pieces that one cycle is worth.
	worth func(station int) float64
}

// less is the same with one station slower by a hundredth.
func (g *gauge) less(slower int) *gauge {
	less := func(value func(int) float64) func(int) float64 {
		return func(i int) float64 {
			if i == slower {
				return 0.99 * value(i)
			}
			return value(i)
		}
	}
	return &gauge{rate: less(g.rate), pieces: less(g.pieces), worth: g.worth}
}

// greatest is the greatest flow in answer pieces per minute that the stations
// let through to all counts together and on behind them, with buffers without
// limit between them; in a line without branches that is the smallest of their
// rates. What reaches no count takes no part. A station that assembles needs the whole
// flow from each of its places, so that the least over the choices of one place each counts.
// Source: maximum flow through nodes with a capacity each.
func (f *flow) greatest(c *counting, g *gauge) float64 {
	least := math.Inf(1)
	for _, chosen := range f.choices() {
		n := &net{flow: f, c: c, g: g, chosen: chosen}
		n.findCaps()
		least = min(least, n.greatest(-1))
	}
	return least
}

// mostChoices keeps the search short: of more than these only one station chooses at a time,
// which bounds the flow less tightly.
const mostChoices = 64

// choices lists for every station which of its places counts, in all ways.
func (f *flow) choices() [][]int {
	all, ways := [][]int{make([]int, len(f.ins))}, 1
	for i := range f.ins {
		ways *= max(1, len(f.ins[i]))
		if ways > mostChoices {
			return f.singleChoices()
		}
		for _, chosen := range all[:len(all):len(all)] {
			for k := 1; k < len(f.ins[i]); k++ {
				all = append(all, with(chosen, i, k))
			}
		}
	}
	return all
}

func (f *flow) singleChoices() [][]int {
	first := make([]int, len(f.ins))
	all := [][]int{first}
	for i := range f.ins {
		for k := 1; k < len(f.ins[i]); k++ {
			all = append(all, with(first, i, k))
		}
	}
	return all
}

func with(chosen []int, i, k int) []int {
	next := append([]int(nil), chosen...)
	next[i] = k
	return next
}

// net is the graph of one search.
type net struct {
	*flow
	c *counting
	g *gauge
	// chosen is the place of each station that counts.
	chosen []int
	// caps is what a station that gives in turn gives at most into each node.
	caps map[[2]int]float64
}

// findCaps limits what stations give in turn into each of their branches, from the end of the
// line back to its beginning: none gets more than the one that can pass on the fewest pieces.
func (n *net) findCaps() {
	n.caps = map[[2]int]float64{}
	way := n.stationWay()
	for k := len(way) - 1; k >= 0; k-- {
		if n.inTurn(way[k]) {
			n.cap(way[k])
		}
	}
}

func (n *net) cap(station int) {
	branches := n.branches(station)
	most := n.g.pieces(station) / float64(len(branches))
	for _, node := range branches {
		if worth := n.worthAt(node, n.out[station]); worth > 0 {
			most = min(most, n.greatest(node)/worth)
		}
	}
	for _, node := range branches {
		n.caps[[2]int{station, node}] = most * n.worthAt(node, n.out[station])
	}
}

// worthAt is the number of answer pieces that one piece put into a node is worth, the mean of
// those behind it that count.
func (n *net) worthAt(node, joint int) float64 {
	return meanOver(n.takersBehind(node),
		func(k int) float64 {
			return ratio(n.g.pieces(k), float64(n.line.Stations[k].Gives)) * n.takesFrom(k, joint)
		},
		func(k int) (float64, bool) {
			worth := n.g.worth(k)
			return ratio(worth, n.takesFrom(k, joint)), worth > 0
		})
}

// exactBits leaves room for sums in the 53 bits of a float.
const exactBits = 50

// greatest is the flow from all sources, or from one node if it is not negative.
func (n *net) greatest(start int) float64 {
	const from, to = 0, 1
	in := func(node int) int64 { return int64(2 + 2*node) }
	out := func(node int) int64 { return int64(3 + 2*node) }
	stations, sum := len(n.line.Stations), 1.0
	for i := range stations {
		sum += n.g.rate(i)
	}
	// In whole numbers that a float holds, so that the order of the search cannot show in the last digit.
	_, exponent := math.Frexp(sum)
	scale := math.Ldexp(1, exactBits-exponent)
	wide := math.Round(sum * scale)
	g := simple.NewWeightedDirectedGraph(0, 0)
	for id := range int64(2 + 2*len(n.flow.before)) {
		g.AddNode(simple.Node(id)) // all of them: the search counts on numbers without gaps
	}
	edge := func(a, b int64, width float64) {
		g.SetWeightedEdge(simple.WeightedEdge{F: simple.Node(a), T: simple.Node(b), W: width})
	}
	for node := range n.flow.before {
		if !n.counts(node) {
			continue
		}
		width := wide
		if node < stations {
			width = math.Round(n.g.rate(node) * scale)
		}
		edge(in(node), out(node), width)
		if node == start || start < 0 && node < stations && len(n.flow.before[node]) == 0 && !n.onlyBehind(node) {
			edge(from, in(node), wide)
		}
		for _, next := range n.after[node] {
			if n.counts(next) && n.takes(next, node) {
				edge(out(node), in(next), n.width(node, next, wide, scale))
			}
		}
		if len(n.after[node]) == 0 {
			edge(out(node), to, wide)
		}
	}
	return network.MaxFlowDinic(g, simple.Node(from), simple.Node(to), -1) / scale
}

// counts says that pieces of a node reach a count, were counted, or are put together with such.
func (n *net) counts(node int) bool { return n.c.to[node] || n.c.from[node] || n.c.beside[node] }

// onlyBehind says that the pieces of a node were counted before they came there.
func (n *net) onlyBehind(node int) bool { return n.c.from[node] && !n.c.to[node] && !n.c.beside[node] }

// takes says that the flow from one node to the next is the one that was chosen there.
func (n *net) takes(next, node int) bool {
	return next >= len(n.chosen) || len(n.flow.before[next]) < 2 || n.flow.before[next][n.chosen[next]] == node
}

func (n *net) width(node, next int, wide, scale float64) float64 {
	if most, limited := n.caps[[2]int{node, next}]; limited {
		return math.Round(most * scale)
	}
	return wide
}
