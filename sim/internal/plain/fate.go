package plain

import "tuckline/sim/internal/plan"

// stationDue ends a cycle or a stop, or strikes a cycle under way.
func (e *Engine) stationDue(s *station) {
	if s.own >= 0 {
		e.stopDue(s.own)
		return
	}
	if s.machine.Quiet() {
		s.rec.Given += s.plan.Gives
		e.cycleOver(s, s.plan.Gives)
		return
	}
	if s.pocket {
		e.pocketOver(s)
		return
	}
	if cause := s.machine.Strike(); cause >= 0 {
		e.cal.set(s.index, plan.Never)
		s.rested = e.now
		e.strike(s, cause)
		return
	}
	e.settleFate(s)
}

// settleFate ends a cycle that is not quiet.
func (e *Engine) settleFate(s *station) {
	good, scrapped := s.machine.End()
	if scrapped {
		s.rec.ScrappedCycles++
		s.rec.Scrapped += s.plan.Gives
	} else {
		s.rec.Given += s.plan.Gives
		e.memberRejects(s)
		if len(s.returns) > 0 && good < s.plan.Gives {
			e.mayReturn(s)
		}
	}
	if len(s.plan.Checks) > 0 && good > 0 {
		good = e.takeSamples(s, good)
	}
	if e.because != nil && good < s.plan.Gives {
		e.because.missed(e, s, scrapped)
	}
	if s.order != nil {
		e.fateOf(s, good)
	}
	if good == 0 && s.reserved > 0 {
		e.unreserve(s)
	}
	e.cycleOver(s, good)
	if s.plan.Tasked {
		e.askRefills(s)
	}
}

// unreserve gives up the places that were reserved for the cycle.
func (e *Engine) unreserve(s *station) {
	e.clock(s.next)
	s.next.reserved -= s.reserved
	s.reserved = 0
	e.roomIn(s.next)
}

// cycleOver makes a station ready for what comes after a cycle with so many good pieces.
func (e *Engine) cycleOver(s *station, good int64) {
	e.cal.set(s.index, plan.Never)
	e.atWork--
	s.rec.Cycles++
	s.rested, s.phase = e.now, idle
	if good > 0 {
		s.phase, s.out = holding, good
		s.heldFrom, s.since, s.released = e.now, e.now, 0
	}
	e.busy[s.node] = false
	e.dirty.add(s.node)
}
