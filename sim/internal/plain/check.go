package plain

import "tuckline/sim/internal/plan"

// calendarCheck is an in-process test whose clock is the calendar.
type calendarCheck struct{ station, check int }

// takeSamples lets the checks of a station take of the good pieces of a cycle, and asks for the
// tests of those that are complete.
func (e *Engine) takeSamples(s *station, good int64) int64 {
	good = s.machine.Sample(good)
	for i := range s.plan.Checks {
		p := &s.plan.Checks[i]
		taken, complete := s.machine.Sampled(i)
		e.rec.Stations[s.plan.Members[p.Member].Declared].Sampled += taken
		if e.ages != nil && taken > 0 {
			e.ages.samples(s, i)
		}
		if complete {
			e.ask(p.Task)
		}
	}
	return good
}

// tested says that a test is over.
func (e *Engine) tested(t *task) {
	s := &e.stations[t.plan.Station]
	rec := &e.rec.Stations[t.plan.Cause.Declared].Checks[t.plan.Cause.Index]
	rec.Count++
	if e.ages != nil {
		e.ages.tested(e, t.plan.Station, t.plan.Item, rec)
	}
	if s.machine.Tested(t.plan.Item, s.phase == working) {
		e.checkDue(t.plan.Station, t.plan.Item)
	}
}

// checkDue begins a test of the calendar, unless one is under way: then it begins when that is over.
func (e *Engine) checkDue(station, check int) {
	s := &e.stations[station]
	timer := e.timers.checkOf(station, check)
	e.cal.set(timer, plan.Never)
	if s.machine.CheckDue(check, s.phase == working) {
		e.cal.set(timer, e.now+s.machine.CheckAge(check))
	}
}

// checkOf is the timer of a check of the calendar.
func (t *timers) checkOf(station, check int) int {
	for j := range t.checks {
		if t.checks[j].station == station && t.checks[j].check == check {
			return t.check + j
		}
	}
	return none
}

func (e *Engine) resetChecks() {
	for j, c := range e.timers.checks {
		e.cal.set(e.timers.check+j, e.stations[c.station].machine.CheckAge(c.check))
	}
}
