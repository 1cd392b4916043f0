package plain

import "tuckline/sim/internal/plan"

// need is what tells whether somebody has to carry at a hand magazine. Nobody runs for a pause of a part of a cycle.
type need struct {
	// cycle is one cycle at set speed of the station behind, of several the longest.
	cycle plan.Micros
	timer int
	// lacks is since when pieces have been lacking behind it, Never if they are not; taken is when pieces went on last.
	lacks, taken plan.Micros
	// nothingCame: no piece has come straight since a load was asked for. goesOn: whoever carried it out goes on.
	nothingCame, goesOn bool
}

func (n *need) reset() { n.lacks, n.taken, n.nothingCame, n.goesOn = plan.Never, 0, false, false }

// lookAtHands asks for somebody to carry where that is needed; it says whether it did.
func (e *Engine) lookAtHands() bool {
	any := false
	for _, l := range e.hands {
		any = e.lookAtHand(l) || any
	}
	return any
}

// lookAtHand asks for somebody to carry out of a hand magazine when pieces have been lacking for a cycle, or into it
// when nothing has gone on for a cycle and a load waits; else it waits until that may be so.
func (e *Engine) lookAtHand(l *link) bool {
	st := l.store
	due, out := plan.Never, false
	switch {
	case !e.lacksPieces(l):
		st.lacks = plan.Never
	case st.lacks == plan.Never:
		st.lacks = e.now
	}
	if !st.hand.open && e.hours.works() && !(l.order != nil && l.order.phase == emptying) {
		due, out = e.carriesAt(l)
	}
	asks := due <= e.now
	if asks {
		st.hand = hand{open: true, out: out}
		st.nothingCame, st.goesOn = true, false
		e.ask(st.plan.Hand)
		due = plan.Never
	}
	if e.cal.next[st.need.timer] != due {
		e.cal.set(st.need.timer, due)
	}
	return asks
}

// carriesAt is when somebody has to carry, and whether out of a hand magazine or into it.
func (e *Engine) carriesAt(l *link) (due plan.Micros, out bool) {
	st := l.store
	due = plan.Never
	switch {
	case st.stored-st.atHand <= st.keeps:
	case st.lacks != plan.Never:
		due, out = st.lacks+st.cycle, true
	case st.goesOn && e.needsAnother(l):
		return e.now, true
	}
	if due > e.now && l.plan.Capacity-st.plan.Direct > st.stored && e.stands(l) && e.loadWaits(l) {
		if in := st.taken + st.cycle; in < due {
			return in, false
		}
	}
	return due, out
}

// lacksPieces says that a station behind a link waits for pieces, and nothing else keeps them from it. A pocket that runs
// through empty waits too.
func (e *Engine) lacksPieces(l *link) bool {
	for _, k := range l.plan.Takers {
		s := e.nodes[k].station
		if e.withStore(l) < e.takes(k, l) && (e.ready(k) && !e.heldAfter(s) || s != nil && s.pocket) {
			return e.someWait(l)
		}
	}
	return false
}

// heldAfter says that a start level keeps a station from the next instant on: it has just begun to lack input.
func (e *Engine) heldAfter(s *station) bool {
	return s != nil && s.start != nil && s.lacked == e.now && !s.startable && !e.startReached(s)
}

// someWait says that one of the stations behind is up and has nothing to work on.
func (e *Engine) someWait(l *link) bool {
	for _, i := range l.store.plan.Exits {
		if s := &e.stations[i]; e.up(s) && (s.phase == idle || s.pocket) {
			return true
		}
	}
	return false
}

// needsAnother says that what lies before the station behind will soon be gone: nothing comes, and a station behind is up.
func (e *Engine) needsAnother(l *link) bool {
	if e.withStore(l) >= l.store.plan.Load+l.plan.Takes {
		return false
	}
	for _, i := range l.store.plan.Exits {
		if e.up(&e.stations[i]) {
			return true
		}
	}
	return false
}

// stands says that no station behind is at work.
func (e *Engine) stands(l *link) bool {
	for _, i := range l.store.plan.Exits {
		if s := &e.stations[i]; s.phase == working && e.up(s) {
			return false
		}
	}
	return true
}

// loadWaits says that a whole load waits before a hand magazine, or less, if no more can wait there because the feeder is
// blocked, or if the station behind does not start until there is more in it.
func (e *Engine) loadWaits(l *link) bool {
	pieces, blocked := e.waitBefore(l)
	return pieces >= l.store.plan.Load || (blocked || e.heldByStart(l)) && e.someBefore(l)
}

// someBefore says that there are pieces right before a link: at the end of a belt or in a store, or held by a station with
// nothing on its way between.
func (e *Engine) someBefore(l *link) bool {
	for _, k := range l.plan.Feeders {
		n := &e.nodes[k]
		switch s := n.station; {
		case s != nil && s.phase == holding:
			return true
		case s == nil && (e.thereAtLast(n.link) > 0 || n.link.moving.size == 0 && e.someBefore(n.link)):
			return true
		}
	}
	return false
}

// heldByStart says that a station waits until a link reaches its start level.
func (e *Engine) heldByStart(l *link) bool {
	for _, i := range l.store.plan.Exits {
		if s := &e.stations[i]; s.start == l && s.phase == idle && !s.startable && l.arrived < s.plan.Start {
			return true
		}
	}
	return false
}

// waitBefore counts the pieces that wait before a link, on belts and buffers, and says whether a station that puts into
// them is blocked.
func (e *Engine) waitBefore(l *link) (pieces int64, blocked bool) {
	for _, k := range l.plan.Feeders {
		n := &e.nodes[k]
		if s := n.station; s != nil {
			blocked = blocked || s.phase == holding || s.since != plan.Never
			continue
		}
		more, stopped := e.waitBefore(n.link)
		pieces, blocked = pieces+more+max(0, e.there(n.link)), blocked || stopped
	}
	return pieces, blocked
}
