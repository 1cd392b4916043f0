package plain

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// choose picks the way that finished pieces take, by the rule of the station, and
// the taker that they pass straight through to; -1 if none is free.
func (e *Engine) choose(n *node, s *station) (o, taker int) {
	switch e.plan.Nodes[n.index].Rule {
	case plan.InTurn:
		if may, taker := e.mayPut(n, n.turn, s.out, s.since, s.released); may {
			o = n.turn
			n.turn = (n.turn + 1) % len(n.outs)
			return o, taker
		}
	case plan.FirstWithRoom:
		for o := range n.outs {
			if may, taker := e.mayPut(n, o, s.out, s.since, s.released); may {
				return o, taker
			}
		}
	case plan.FewestPieces:
		return e.fewest(n, s)
	}
	return -1, plan.None
}

// fewest picks, of the ways with room, the one with the fewest pieces.
func (e *Engine) fewest(n *node, s *station) (best, through int) {
	best, through = -1, plan.None
	var least int64
	for o := range n.outs {
		may, taker := e.mayPut(n, o, s.out, s.since, s.released)
		if pieces := e.piecesOn(n.outs[o].link); may && (best < 0 || pieces < least) {
			best, through, least = o, taker, pieces
		}
	}
	return best, through
}

// piecesOn counts the pieces of a link and those on the machines that take from it.
func (e *Engine) piecesOn(l *link) int64 {
	pieces := l.level
	for _, k := range l.plan.Takers {
		if s := e.nodes[k].station; s != nil && s.phase != idle {
			pieces += e.takes(k, l)
		}
	}
	return pieces
}

// goesFirst says whether of all feeders of a link that wait for room a node goes first: the one
// named first if it waits, else whose turn comes next where they take turns, else the one that has waited
// longest, ties by name. A belt does not wait behind a station that a level holds back:
// the level may count its pieces.
func (e *Engine) goesFirst(l *link, n *node, since plan.Micros) bool {
	for _, other := range l.plan.Feeders {
		if other == n.index {
			continue
		}
		waits := e.waitsSince(other, l)
		if waits == plan.Never || n.station == nil && e.heldByLevel(other, l) {
			continue
		}
		if e.before(l, other, n.index, waits, since) {
			return false
		}
	}
	return true
}

// before says that feeder a of a link, which has waited since then, goes before b.
func (e *Engine) before(l *link, a, b int, sinceA, sinceB plan.Micros) bool {
	switch {
	case a == l.plan.First || b == l.plan.First:
		return a == l.plan.First
	case l.plan.Alternate:
		return e.turnsUntil(l, a) < e.turnsUntil(l, b)
	case sinceA != sinceB:
		return sinceA < sinceB
	}
	return e.plan.Nodes[a].Rank < e.plan.Nodes[b].Rank
}

// turnsUntil is how many others have their turn before a feeder.
func (e *Engine) turnsUntil(l *link, k int) int {
	n := len(l.plan.Feeders)
	return (slices.Index(l.plan.Feeders, k) - l.turn + n) % n
}

// tookTurn gives the turn to the feeder after the one that has just put its pieces.
func (e *Engine) tookTurn(l *link, k int) {
	if l.plan.Alternate {
		l.turn = (slices.Index(l.plan.Feeders, k) + 1) % len(l.plan.Feeders)
	}
}

// heldByLevel says that a level, not room, keeps a waiting station back.
func (e *Engine) heldByLevel(k int, l *link) bool {
	n := &e.nodes[k]
	s := n.station
	if s == nil {
		return false
	}
	for o := range n.outs {
		out := &n.outs[o]
		if out.link == l && (e.stoppedByLevel(out) ||
			len(out.plan.Restarts) > 0 && s.since < e.now && s.released&(1<<o) == 0) {
			return true
		}
	}
	return false
}

// waitsSince is when node k began to wait for room in a link, or Never.
func (e *Engine) waitsSince(k int, l *link) plan.Micros {
	n := &e.nodes[k]
	s := n.station
	switch {
	case s == nil && e.there(n.link) <= 0:
		return plan.Never
	case s == nil:
		return n.link.since
	case s.reserved > 0:
		return plan.Never
	case len(n.outs) > 1 && e.plan.Nodes[k].Rule == plan.InTurn && n.outs[n.turn].link != l:
		return plan.Never
	}
	return s.since
}
