package plain

import "tuckline/sim/internal/plan"

// lastParts settles what becomes of an input that is not complete and will not be, from the head of the line to its end, up to
// the first station that works a cycle with it. It says whether anything may move again.
func (e *Engine) lastParts(l *orderLine) bool {
	for i := range l.plan.Flow {
		f := &l.plan.Flow[i]
		s := &e.stations[f.Station]
		if s.in == nil || !s.in.fed || s.phase != idle || s.lastPart > 0 || s.in.arrived == 0 || s.in.arrived >= s.plan.Takes || e.keptOut(s) {
			continue
		}
		switch {
		case !f.Closes:
			e.rejectPart(s)
		case e.partnersComplete(s):
			s.lastPart = s.in.arrived
			e.wake(s.node)
			return true
		}
	}
	return false
}

// keptOut says that what lies before a station is to be taken out by hand.
func (e *Engine) keptOut(s *station) bool {
	st := s.in.store
	return e.takenOut(s.in) && (st != nil && st.keeps > 0 || s.start == s.in && !s.startable)
}

// partnersComplete says that a station has what it needs of its other inputs that come from the order.
func (e *Engine) partnersComplete(s *station) bool {
	for i := range s.also {
		if in := &s.also[i]; in.link.fed && e.thereAtLast(in.link) < in.takes {
			return false
		}
	}
	return true
}

// rejectPart takes an input out that is not complete.
func (e *Engine) rejectPart(s *station) {
	n := s.in.arrived
	s.rec.PartRejected += n
	e.take(s.in, n)
	if e.ages != nil {
		e.ages.clear()
	}
}

// startPart starts a cycle with the input that there is, if nothing but that is missing; it says whether the station has
// started or waits for room. Others that take from the same place may have taken it meanwhile, or more may have come.
func (e *Engine) startPart(s *station) bool {
	if s.in.arrived == 0 || s.in.arrived >= s.plan.Takes {
		s.lastPart = 0
		return false
	}
	for i := range s.also {
		if !e.canTake(s, s.also[i].link, s.also[i].takes) {
			return false
		}
	}
	if s.plan.BlocksBefore && !e.reserve(s) {
		return true
	}
	level, n := s.in.level, s.in.arrived
	s.lastPart, s.short = 0, s.plan.Takes-n
	s.inARow = 0
	e.readDelays(s)
	e.take(s.in, n)
	for i := range s.also {
		e.take(s.also[i].link, s.also[i].takes)
	}
	s.rec.Taken += n
	s.rec.PartShort += s.short
	e.took(s)
	s.lacked, s.startable, s.waited = plan.Never, false, false
	e.begin(s, level)
	s.machine.Careful()
	return true
}
