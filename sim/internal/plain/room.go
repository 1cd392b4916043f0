package plain

import "tuckline/sim/internal/plan"

// free is the number of places that are neither taken nor reserved.
func (l *link) free() int64 { return l.plan.Capacity - l.level - l.reserved }

// mayPut says whether so many pieces of a node, which has waited since then, may
// enter its o-th link, and which taker they then pass straight through to. Released are
// the ways whose restart levels have let it go.
func (e *Engine) mayPut(n *node, o int, pieces int64, since plan.Micros, released uint64) (bool, int) {
	if !e.mayEnter(n, o, since, released) {
		return false, plan.None
	}
	l := n.outs[o].link
	if l.store != nil {
		return e.lets(l, pieces, 0)
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

// mayEnter says that a node goes first of all that put into its o-th link, and that no level and no sensor
// stops it.
func (e *Engine) mayEnter(n *node, o int, since plan.Micros, released uint64) bool {
	out := &n.outs[o]
	if len(out.link.plan.Feeders) > 1 && !e.goesFirst(out.link, n, since) || e.stoppedByLevel(out) {
		return false
	}
	return len(out.plan.Restarts) == 0 || since >= e.now || released&(1<<o) != 0
}

// mayReserve says that a station may have the places kept, before its cycle, for all that it gives. A
// gate need not be open until the cycle ends.
func (e *Engine) mayReserve(s *station, since plan.Micros) bool {
	next := s.next
	return e.mayEnter(&e.nodes[s.node], 0, since, s.released) &&
		next.free() >= s.plan.Gives && (next.store == nil || next.store.moves())
}

// stoppedByLevel says that a stop level before the next station has been reached.
func (e *Engine) stoppedByLevel(out *out) bool {
	for _, s := range out.plan.Stops {
		if e.links[s.Link].level >= s.Level {
			return true
		}
	}
	for _, l := range out.plan.Sensors {
		if e.links[l].store.stopped {
			return true
		}
	}
	return false
}

// through is the taker, first in turn, that so many pieces pass straight
// through to: it is ready, lacks nothing but pieces of this link, and after its take the rest fits.
func (e *Engine) through(l *link, pieces int64) int {
	there := e.there(l)
	for _, k := range l.plan.Takers {
		takes := e.takes(k, l)
		if there < takes && there+pieces >= takes && pieces-takes <= e.room(l) && e.otherInputs(k, l) && e.ready(k) {
			return k
		}
	}
	return plan.None
}

// takes is what node k takes from a link at once.
func (e *Engine) takes(k int, l *link) int64 {
	s := e.nodes[k].station
	switch {
	case s == nil:
		return 1
	case s.in == l:
		return s.plan.Takes
	}
	for i := range s.also {
		if s.also[i].link == l {
			return s.also[i].takes
		}
	}
	return 0
}

// otherInputs says that all that node k takes from other links than this is there.
func (e *Engine) otherInputs(k int, l *link) bool {
	s := e.nodes[k].station
	if s == nil || len(s.also) == 0 {
		return true
	}
	if s.in != l && e.withStore(s.in) < s.plan.Takes {
		return false
	}
	for i := range s.also {
		if in := &s.also[i]; in.link != l && e.withStore(in.link) < in.takes {
			return false
		}
	}
	return true
}

// ready says that node k would take its input if it were there.
func (e *Engine) ready(k int) bool {
	n := &e.nodes[k]
	s := n.station
	if s == nil {
		may, _ := e.mayPut(n, 0, 1, e.now, 1)
		return may
	}
	if s.phase != idle {
		return false
	}
	if s.plan.Loads && !e.up(s) {
		return e.mayStart(s)
	}
	if s.own >= 0 || !e.up(s) || s.machine.UsedUp() >= 0 || !e.mayStart(s) {
		return false
	}
	if !s.plan.BlocksBefore || s.plan.Loads || s.next == nil || s.machine.KnownScrap() {
		return true
	}
	return e.mayReserve(s, min(s.since, e.now))
}

// take takes pieces out of a link.
func (e *Engine) take(l *link, pieces int64) {
	e.clock(l)
	l.level -= pieces
	l.arrived -= pieces
	l.rec.Out += pieces
	e.roomIn(l)
	if l.special {
		e.tookSpecial(l, pieces)
	}
}

// put lets pieces enter a link.
func (e *Engine) put(l *link, pieces int64) {
	e.clock(l)
	l.level += pieces
	l.rec.In += pieces
	if l.plan.Transit > 0 {
		l.moving.push(batch{at: e.now + l.plan.Transit - l.stood, pieces: pieces})
		if l.moving.size == 1 {
			e.cal.set(l.timer, e.now+l.plan.Transit)
		}
	} else {
		l.arrived += pieces
		e.wakeTakers(l)
	}
	if l.special {
		e.putSpecial(l, pieces)
	}
}

// isSpecial says that several put into a link or take from it, or that it has rules.
func (l *link) isSpecial() bool {
	return len(l.plan.Feeders) > 1 || len(l.plan.Takers) > 1 || l.store != nil
}

// tookSpecial tells others of what was taken: other takers, and the rules of the link.
func (e *Engine) tookSpecial(l *link, pieces int64) {
	if e.ages != nil {
		e.ages.take(l, pieces)
	}
	if len(l.plan.Takers) > 1 {
		e.wakeTakers(l)
	}
	if l.store != nil {
		e.went(l, pieces)
	}
}

// putSpecial tells others of what was put: other feeders, and the rules of the link.
func (e *Engine) putSpecial(l *link, pieces int64) {
	if e.ages != nil {
		e.ages.put(l, pieces)
	}
	if len(l.plan.Feeders) > 1 {
		e.wakeFeeders(l)
	}
	if l.store != nil {
		e.came(l, pieces)
	}
}

// arrive ends the transit of the first batch.
func (e *Engine) arrive(l *link) {
	e.clock(l)
	before := l.arrived
	for l.moving.size > 0 && l.moving.first().at == e.now-l.stood {
		l.arrived += l.moving.pop().pieces
	}
	next := plan.Never
	if l.moving.size > 0 {
		next = l.moving.first().at + l.stood
	}
	e.cal.set(l.timer, next)
	if e.follows {
		e.reached(l, l.arrived-before)
	}
	if l.store != nil {
		e.arrivedAt(l)
	}
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
