package plain

import "tuckline/sim/internal/plan"

// free is the number of places that are neither taken nor reserved.
func (l *link) free() int64 { return l.plan.Capacity - l.level - l.reserved }

// mayPut says whether so many pieces of node k, which has waited since then, may
// enter its next link, and which taker they then pass straight through to.
func (e *Engine) mayPut(k int, pieces int64, since plan.Micros, released bool) (bool, int) {
	l := e.nodes[k].next
	if len(l.plan.Feeders) > 1 && !e.longestWaiting(l, k, since) {
		return false, plan.None
	}
	if e.stoppedByLevel(k) {
		return false, plan.None
	}
	if len(e.plan.Nodes[k].Restarts) > 0 && since < e.now && !released {
		e.watched = true
		return false, plan.None
	}
	if pieces <= l.free() {
		return true, plan.None
	}
	if l.plan.Transit > 0 {
		return false, plan.None
	}
	taker := e.through(l, pieces)
	return taker != plan.None, taker
}

// stoppedByLevel says that a stop level before the next station has been reached.
func (e *Engine) stoppedByLevel(k int) bool {
	for _, s := range e.plan.Nodes[k].Stops {
		if e.links[s.Link].level >= s.Level {
			return true
		}
	}
	return false
}

// through is the taker, first by name, that so many pieces pass straight
// through to: it is ready, lacks pieces, and after its take the rest fits.
func (e *Engine) through(l *link, pieces int64) int {
	for _, k := range l.plan.Takers {
		takes := e.takes(k)
		if l.arrived < takes && l.arrived+pieces >= takes && pieces-takes <= l.free() && e.ready(k) {
			return k
		}
	}
	return plan.None
}

// takes is what node k takes at once.
func (e *Engine) takes(k int) int64 {
	if s := e.nodes[k].station; s != nil {
		return s.plan.Takes
	}
	return 1
}

// ready says that node k would start if its input were there.
func (e *Engine) ready(k int) bool {
	s := e.nodes[k].station
	if s == nil {
		may, _ := e.mayPut(k, 1, e.now, true)
		return may
	}
	if s.phase != idle || s.own >= 0 || !e.up(s) || s.machine.UsedUp() >= 0 {
		return false
	}
	if !s.plan.BlocksBefore || s.next == nil || s.machine.KnownScrap() {
		return true
	}
	may, _ := e.mayPut(k, s.plan.Gives, min(s.since, e.now), s.released)
	return may && s.next.free() >= s.plan.Gives
}

// longestWaiting says whether of all feeders of a link that wait for room node k has
// waited longest, ties by name. A belt does not wait behind a station that a level holds back:
// the level may count its pieces.
func (e *Engine) longestWaiting(l *link, k int, since plan.Micros) bool {
	for _, other := range l.plan.Feeders {
		if other == k || e.nodes[k].station == nil && e.heldByLevel(other) {
			continue
		}
		waits := e.waitsSince(other)
		if waits < since || waits == since && e.plan.Nodes[other].Rank < e.plan.Nodes[k].Rank {
			return false
		}
	}
	return true
}

// heldByLevel says that a level, not room, keeps a waiting station back.
func (e *Engine) heldByLevel(k int) bool {
	s := e.nodes[k].station
	return s != nil && (e.stoppedByLevel(k) || len(e.plan.Nodes[k].Restarts) > 0 && s.since < e.now && !s.released)
}

// waitsSince is when node k began to wait for room, or Never.
func (e *Engine) waitsSince(k int) plan.Micros {
	n := &e.nodes[k]
	switch {
	case n.station == nil:
		return n.link.since
	case n.station.reserved == 0:
		return n.station.since
	}
	return plan.Never
}

// releaseByLevel lets stations go whose restart level has been reached after all
// moves of the instant; it says whether any was.
func (e *Engine) releaseByLevel() bool {
	e.watched = false
	any := false
	for i := range e.stations {
		s := &e.stations[i]
		if s.since < e.now && !s.released && e.restartReached(s) {
			s.released, any = true, true
			e.wake(s.node)
		}
	}
	return any
}

// restartReached says that a station has restart levels and all of them are reached.
func (e *Engine) restartReached(s *station) bool {
	restarts := e.plan.Nodes[s.node].Restarts
	for _, r := range restarts {
		total := int64(0)
		for _, l := range r.Links {
			total += e.links[l].level
		}
		if total > r.Level {
			return false
		}
	}
	return len(restarts) > 0
}

// take takes pieces out of a link.
func (e *Engine) take(l *link, pieces int64) {
	e.clock(l)
	l.level -= pieces
	l.arrived -= pieces
	l.rec.Out += pieces
	e.roomIn(l)
	if len(l.plan.Takers) > 1 {
		e.wakeTakers(l)
	}
}

// put lets pieces enter a link.
func (e *Engine) put(l *link, pieces int64) {
	e.clock(l)
	l.level += pieces
	l.rec.In += pieces
	if l.plan.Transit > 0 {
		l.moving.push(batch{at: e.now + l.plan.Transit, pieces: pieces})
		if l.moving.size == 1 {
			e.cal.set(l.timer, e.now+l.plan.Transit)
		}
	} else {
		l.arrived += pieces
		e.wakeTakers(l)
	}
	if len(l.plan.Feeders) > 1 {
		e.wakeFeeders(l)
	}
}

// arrive ends the transit of the first batch.
func (e *Engine) arrive(l *link) {
	e.clock(l)
	for l.moving.size > 0 && l.moving.first().at == e.now {
		l.arrived += l.moving.pop().pieces
	}
	next := plan.Never
	if l.moving.size > 0 {
		next = l.moving.first().at
	}
	e.cal.set(l.timer, next)
	e.wakeTakers(l)
}

// roomIn says that a link may have room: its feeders, and those that watch its
// level, look again.
func (e *Engine) roomIn(l *link) {
	e.wakeFeeders(l)
	for _, k := range l.plan.Watchers {
		e.wake(k)
	}
}

func (e *Engine) wakeFeeders(l *link) {
	for _, k := range l.plan.Feeders {
		e.wake(k)
	}
}

func (e *Engine) wakeTakers(l *link) {
	for _, k := range l.plan.Takers {
		e.wake(k)
	}
}

// wakeHolders lets feeders that hold finished pieces look whether they pass straight
// through, now that somebody lacks them; through an empty buffer those before it too.
func (e *Engine) wakeHolders(l *link) {
	for _, k := range l.plan.Feeders {
		switch n := &e.nodes[k]; {
		case n.station != nil && n.station.phase == holding, n.station == nil && n.link.arrived > 0:
			e.dirty.add(k)
		case n.station == nil:
			e.wakeHolders(n.link)
		}
	}
}
