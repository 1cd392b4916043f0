package plain

import (
	"slices"
	"sort"

	"tuckline/sim/internal/plan"
)

// lookForEnd is called when no station is at work: the line may be locked, or have
// used up its input.
func (e *Engine) lookForEnd() {
	locked := e.locked()
	switch {
	case len(locked) > 0:
		e.lock(locked)
	case e.usedUp():
		e.rec.End = plan.InputUsedUp
	default:
		return
	}
	e.rec.EndedAt = e.now
	e.runOut()
}

// runOut lets the rest of the window pass: nothing moves any more.
func (e *Engine) runOut() {
	if e.rec.End == plan.Deadlock {
		e.rec.EndedAt = e.lockedSince()
	}
	for !e.ended {
		e.cross()
	}
}

// finish ends a replication at its horizon.
func (e *Engine) finish() {
	e.ended = true
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
	if locked := e.locked(); len(locked) > 0 {
		e.lock(locked)
		e.rec.EndedAt = e.lockedSince()
	}
}

func (e *Engine) lock(nodes []int) {
	e.rec.End = plan.Deadlock
	for _, k := range nodes {
		if i := e.plan.Nodes[k].Station; i >= 0 {
			e.rec.Locked = append(e.rec.Locked, e.plan.Stations[i].Name)
		}
	}
	sort.Strings(e.rec.Locked)
}

// lockedSince is when the last station of the locked set began to wait.
func (e *Engine) lockedSince() plan.Micros {
	since := plan.Micros(0)
	for i := range e.stations {
		s := &e.stations[i]
		if j := sort.SearchStrings(e.rec.Locked, s.plan.Name); j < len(e.rec.Locked) && e.rec.Locked[j] == s.plan.Name {
			since = max(since, s.entered)
		}
	}
	return since
}

// usedUp says that nothing will move any more because supply has come to its end.
func (e *Engine) usedUp() bool {
	exhausted := false
	for i := range e.stations {
		s := &e.stations[i]
		if s.open > 0 || s.phase != idle {
			return false
		}
		if s.plan.In == plan.None {
			if s.supply < 0 || s.supply >= s.plan.Takes {
				return false
			}
			exhausted = true
		}
	}
	for i := range e.links {
		if e.links[i].moving.size > 0 {
			return false
		}
	}
	return exhausted
}

// locked is the largest set of nodes each of which waits only for members of
// the set, whatever stops of the calendar are still to come.
func (e *Engine) locked() []int {
	stuck := newSet(len(e.plan.Nodes))
	for k := range e.plan.Nodes {
		if e.waits(k) {
			stuck.add(k)
		}
	}
	for again := true; again; {
		again = false
		for _, k := range stuck.members() {
			if !e.onlyFor(k, stuck) {
				stuck.remove(k)
				again = true
			}
		}
	}
	nodes := stuck.members()
	if !slices.ContainsFunc(nodes, func(k int) bool { return e.plan.Nodes[k].Station >= 0 }) {
		return nil
	}
	return nodes
}

// waits says that a node waits for a neighbour: for input, or for room. A station
// that is stopped waits for the end of its stop.
func (e *Engine) waits(k int) bool {
	node := &e.plan.Nodes[k]
	if node.Station < 0 {
		return e.links[node.Link].moving.size == 0
	}
	s := &e.stations[node.Station]
	switch {
	case !e.up(s) || s.phase == working:
		return false
	case s.phase == holding:
		return true
	case e.lacksInput(k):
		return s.plan.In != plan.None && e.links[s.plan.In].moving.size == 0
	}
	return s.since != plan.Never
}

func (e *Engine) lacksInput(k int) bool {
	node := &e.plan.Nodes[k]
	if node.Station < 0 {
		return e.links[node.Link].arrived == 0
	}
	s := &e.stations[node.Station]
	if s.phase != idle {
		return false
	}
	if s.plan.In == plan.None {
		return s.supply >= 0 && s.supply < s.plan.Takes
	}
	return e.links[s.plan.In].arrived < s.plan.Takes
}

// onlyFor says that all whom a node waits for are in the set.
func (e *Engine) onlyFor(k int, stuck set) bool {
	node := &e.plan.Nodes[k]
	if e.lacksInput(k) {
		in := node.Link
		if node.Station >= 0 {
			in = e.stations[node.Station].plan.In
		}
		return allIn(e.links[in].plan.Feeders, stuck) && (e.hasRoom(k) || e.noMoreRoom(node, stuck))
	}
	return e.noMoreRoom(node, stuck)
}

// noMoreRoom says that nobody outside the set will make room for a node, nor lower a level that
// stops it.
func (e *Engine) noMoreRoom(node *plan.Node, stuck set) bool {
	if !e.noRoom(node.Out, stuck) {
		return false
	}
	for _, s := range node.Stops {
		if !e.noRoom(s.Link, stuck) {
			return false
		}
	}
	for _, r := range node.Restarts {
		if slices.ContainsFunc(r.Links, func(l int) bool { return !e.noRoom(l, stuck) }) {
			return false
		}
	}
	return true
}

// hasRoom says that a node without input lacks nothing but input. If it lacks room too, a
// piece that waits before it passes straight through as soon as there is room.
func (e *Engine) hasRoom(k int) bool {
	node, s := &e.plan.Nodes[k], e.nodes[k].station
	if node.Out == plan.None || s != nil && !s.plan.BlocksBefore {
		return true
	}
	return e.ready(k)
}

// noRoom says that nobody outside the set will take from a link, nor will what is
// in transit there move anybody.
func (e *Engine) noRoom(l int, stuck set) bool {
	return l != plan.None && e.links[l].moving.size == 0 && allIn(e.links[l].plan.Takers, stuck)
}

func allIn(nodes []int, stuck set) bool {
	for _, k := range nodes {
		if !stuck.has(k) {
			return false
		}
	}
	return true
}
