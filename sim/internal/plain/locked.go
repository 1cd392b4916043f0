package plain

import (
	"slices"
	"sort"

	"tuckline/sim/internal/plan"
)

// lookForEnd is called when no station is at work: the line may be locked, or have
// used up its input.
func (e *Engine) lookForEnd() {
	switch {
	case e.rec.End != plan.HorizonReached: // known already
	case e.anyoneStopped():
		return // a stop that ends may move somebody
	case e.locked():
		e.lock()
		e.rec.EndedAt = e.lockedSince()
	case e.plan.Orders == nil && e.usedUp():
		e.rec.End, e.rec.EndedAt = plan.InputUsedUp, e.now
	default:
		return
	}
	if e.openTasks == 0 { // what crews do is done
		e.runOut()
	}
}

// runOut lets the rest of the window pass: nothing moves any more. Only the calendar of working time goes on.
func (e *Engine) runOut() {
	for !e.ended {
		if t := e.hourDue(); t < e.edge {
			e.passHour(t)
		} else {
			e.cross()
		}
	}
}

// finish ends a replication at its horizon.
func (e *Engine) finish() {
	e.ended = true
	for i := range e.stations {
		if s := &e.stations[i]; len(s.plan.Members) > 1 {
			e.tellApart(s)
		}
	}
	if e.because != nil {
		e.because.finish(e)
	}
	if e.trace != nil {
		for id := range e.spells {
			if e.spells[id].open {
				e.traceStop(&e.spells[id])
			}
		}
	}
	if e.rec.End != plan.HorizonReached {
		return
	}
	e.rec.EndedAt = e.t1
	// What is due at the horizon has not happened: the line stands as just before, with gates closed that open now.
	e.now--
	defer func() { e.now++ }()
	e.liftOutage()
	if e.locked() {
		e.lock()
		e.rec.EndedAt = e.lockedSince()
	}
}

// anyoneStopped says that a stop is open anywhere, of a store too.
func (e *Engine) anyoneStopped() bool {
	for i := range e.stations {
		if e.stations[i].open > 0 {
			return true
		}
	}
	return e.shutStores > 0
}

// lock notes the stations of the locked set.
func (e *Engine) lock() {
	e.rec.End = plan.Deadlock
	for k := range e.nodes {
		if s := e.nodes[k].station; s != nil && e.stuck.has(k) {
			for _, m := range s.plan.Members {
				e.rec.Locked = append(e.rec.Locked, m.Name)
			}
		}
	}
	sort.Strings(e.rec.Locked)
}

// lockedSince is when the last station of the locked set began to wait.
func (e *Engine) lockedSince() plan.Micros {
	since := plan.Micros(0)
	for i := range e.stations {
		s := &e.stations[i]
		if slices.Contains(e.rec.Locked, s.plan.Members[0].Name) {
			since = max(since, s.entered)
		}
	}
	return since
}

// locked finds the largest set of nodes each of which waits only for members of
// the set, whatever stops of the calendar are still to come, and says whether a station is in it.
func (e *Engine) locked() bool {
	clear(e.stuck)
	for k := range e.nodes {
		if e.waits(k) && !(e.hours.lifted && e.leavesNext(&e.nodes[k])) {
			e.stuck.add(k)
		}
	}
	for again := true; again; {
		again = false
		for k := range e.nodes {
			if e.stuck.has(k) && !e.onlyFor(k, e.stuck) {
				e.stuck.remove(k)
				again = true
			}
		}
	}
	for k := range e.nodes {
		if e.stuck.has(k) && e.nodes[k].station != nil {
			return true
		}
	}
	return false
}

// waits says that a node waits for a neighbour: for input, or for room. A station
// that is stopped waits for the end of its stop.
func (e *Engine) waits(k int) bool {
	n := &e.nodes[k]
	s := n.station
	switch {
	case s == nil:
		return !n.link.onItsWay() && !e.comes(n.link)
	case !e.up(s) || s.phase == working || e.scrapComes(s):
		return false
	case s.phase == holding:
		return true
	}
	return e.lacks(n) || s.since != plan.Never
}

// lacks says that a node lacks some of its input.
func (e *Engine) lacks(n *node) bool {
	for i := range n.inputs() {
		if e.lacking(n, i) != nil {
			return true
		}
	}
	return false
}

// inputs is the number of links that a node takes from.
func (n *node) inputs() int {
	switch {
	case n.station == nil:
		return 1
	case n.station.in == nil:
		return 0
	}
	return 1 + len(n.station.also)
}

// input is the i-th link that a station takes from, and what it takes there.
func (s *station) input(i int) input {
	if i > 0 {
		return s.also[i-1]
	}
	return input{link: s.in, takes: s.plan.Takes}
}

// lacking is the i-th link that a node takes from if it lacks something of it, else nil.
func (e *Engine) lacking(n *node, i int) *link {
	s := n.station
	if s == nil {
		if e.thereAtLast(n.link) <= 0 {
			return n.link
		}
		return nil
	}
	in := s.input(i)
	if s.phase == idle && (e.thereAtLast(in.link) < in.takes || in.link == s.start && in.link.arrived < s.plan.Start && !e.mayStart(s)) {
		return in.link
	}
	return nil
}

// onlyFor says that all whom a node waits for are in the set: all who could bring
// an input that it lacks, and for room all who could make it.
func (e *Engine) onlyFor(k int, stuck set) bool {
	n := &e.nodes[k]
	if !e.lacks(n) {
		return len(n.outs) > 0 && e.noMoreRoom(n, stuck)
	}
	if e.isBrought(n) {
		return false
	}
	all := true
	for i := range n.inputs() {
		l := e.lacking(n, i)
		if l == nil {
			continue
		}
		if l.onItsWay() || e.comes(l) || !allIn(l.plan.Feeders, stuck) {
			all = false
		} else if !e.atTheDoor(l) {
			return true // nobody has anything for it
		}
	}
	// Pieces at the door pass straight through as soon as the other inputs are there, and room.
	return all && (e.hasRoom(n) || e.noMoreRoom(n, stuck))
}

// isBrought says that a station waits for pieces that lie beside the line and will be given back or carried.
func (e *Engine) isBrought(n *node) bool {
	if n.station == nil || n.station.phase != idle {
		return false
	}
	for i := range n.inputs() {
		in := n.station.input(i)
		if e.withStore(in.link) < in.takes && in.takes <= e.thereAtLast(in.link) && e.comes(in.link) {
			return true
		}
	}
	return false
}

// atTheDoor says that a feeder of a link holds finished pieces.
func (e *Engine) atTheDoor(l *link) bool {
	for _, k := range l.plan.Feeders {
		n := &e.nodes[k]
		if n.station != nil && n.station.phase == holding ||
			n.station == nil && (e.thereAtLast(n.link) > 0 || e.atTheDoor(n.link)) {
			return true
		}
	}
	return false
}

// noMoreRoom says that nobody outside the set will make room for a node on any way that it may
// take, nor lower a level that stops it.
func (e *Engine) noMoreRoom(n *node, stuck set) bool {
	for o := range n.outs {
		if len(n.outs) > 1 && e.plan.Nodes[n.index].Rule == plan.InTurn && o != n.turn {
			continue
		}
		if !e.noRoomOn(n.outs[o].plan, stuck) {
			return false
		}
	}
	return true
}

func (e *Engine) noRoomOn(out *plan.Out, stuck set) bool {
	if !e.noRoom(out.Link, stuck) {
		return false
	}
	for _, s := range out.Stops {
		if !e.noRoom(s.Link, stuck) {
			return false
		}
	}
	for _, l := range out.Sensors {
		if !e.noRoom(l, stuck) {
			return false
		}
	}
	for _, r := range out.Restarts {
		if slices.ContainsFunc(r.Links, func(l int) bool { return !e.noRoom(l, stuck) }) {
			return false
		}
	}
	return true
}

// hasRoom says that a node without input lacks nothing but input. If it lacks room too, a
// piece that waits before it passes straight through as soon as there is room.
func (e *Engine) hasRoom(n *node) bool {
	if len(n.outs) == 0 || n.station != nil && !n.station.plan.BlocksBefore {
		return true
	}
	return e.ready(n.index)
}

// noRoom says that nobody outside the set will take from a link, nor will what is
// in transit there move anybody.
func (e *Engine) noRoom(l int, stuck set) bool {
	return !e.links[l].onItsWay() && !e.comes(&e.links[l]) && allIn(e.links[l].plan.Takers, stuck)
}

func allIn(nodes []int, stuck set) bool {
	for _, k := range nodes {
		if !stuck.has(k) {
			return false
		}
	}
	return true
}
