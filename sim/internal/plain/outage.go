package plain

import "tuckline/sim/internal/plan"

// hours is where a replication stands in the calendar of working time.
type hours struct {
	span int
	line plan.LineTime
	// since is when the lines stopped working, or began to; mark is up to where scheduled time is counted.
	since, mark plan.Micros
	// off is the time up to mark in which the lines were off shift.
	off plan.Micros
	// lifted says that an outage at the end of the window is left out of account.
	lifted bool
	// queued is, by station, since when it had waited for room before its cycle when an outage began; Never if it had not.
	queued []plan.Micros
	shifts
}

// works says that the calendar lets the lines work.
func (h *hours) works() bool { return h.line == plan.LineWorks }

// resetHours begins with the first span of the calendar.
func (e *Engine) resetHours() {
	e.hours = hours{shifts: shifts{border: plan.Never}, queued: e.hours.queued[:0]}
	if len(e.plan.Calendar) == 0 {
		return
	}
	for range e.stations {
		e.hours.queued = append(e.hours.queued, plan.Never)
	}
	first := &e.plan.Calendar[0]
	e.hours.line = first.Line
	e.cal.set(e.timers.span, first.Lasts)
	if !e.hours.works() {
		for i := range e.stations {
			e.stations[i].open = 1
		}
	}
}

// nextSpan follows the calendar to its next span: lines that may work again go on, others are interrupted, people come and go.
func (e *Engine) nextSpan() {
	e.clockHours()
	h := &e.hours
	h.span = (h.span + 1) % len(e.plan.Calendar)
	span := &e.plan.Calendar[h.span]
	next := plan.Never
	if span.Lasts < plan.Never-e.now {
		next = e.now + span.Lasts
	}
	e.cal.set(e.timers.span, next)
	before := h.line
	h.line = span.Line
	switch {
	case before == span.Line:
	case before == plan.LineWorks:
		h.since = e.now
		e.outageBegins()
	case span.Line == plan.LineWorks:
		e.outageEnds()
		h.since = e.now
	default: // from one outage to another
		for i := range e.stations {
			e.touched.add(i)
		}
	}
	for i := range e.crews {
		c := &e.crews[i]
		e.changeDuty(c, &c.plan.Duties[h.span])
	}
}

// outageBegins stops all stations: cycles under way are interrupted.
func (e *Engine) outageBegins() {
	for i := range e.stations {
		s := &e.stations[i]
		e.interrupt(s)
		e.hours.queued[i] = plan.Never
		if s.phase == idle || s.phase == loaded {
			e.hours.queued[i] = s.since
		}
		s.open++ // counted with the stops: whoever asks whether a station is up need not ask twice
		e.touched.add(i)
		e.wake(s.node)
	}
}

// outageEnds lets all stations go on that are not stopped otherwise.
func (e *Engine) outageEnds() {
	for i := range e.stations {
		s := &e.stations[i]
		s.open--
		e.touched.add(i)
		e.wake(s.node)
		if s.phase != holding && e.up(s) {
			s.since = e.hours.queued[i] // nobody has overtaken it
		}
		e.goOn(s)
	}
	for _, l := range e.hands { // nobody has been waiting for pieces meanwhile
		if n := &l.store.need; n.taken < e.hours.since {
			n.taken += e.now - e.hours.since
		} else {
			n.taken = e.now
		}
	}
}

// liftOutage lets the stations be looked at as if they might work: who waits for whom does not depend on the hour.
func (e *Engine) liftOutage() {
	if e.hours.works() {
		return
	}
	for i := range e.stations {
		e.stations[i].open--
	}
	e.hours.line, e.hours.lifted = plan.LineWorks, true
}

// leavesNext says that pieces leave a node as soon as an outage is over: they wait for a taker that it stops. A store beside
// the line gives back then what that taker lacks.
func (e *Engine) leavesNext(n *node) bool {
	if n.station == nil {
		may, _ := e.mayPut(n, 0, 1, n.link.since, 1)
		return may && e.withStore(n.link) > 0
	}
	s := n.station
	if s.phase != holding {
		return false
	}
	if s.reserved > 0 {
		if s.next.store == nil {
			return true
		}
		may, _ := e.lets(s.next, s.out, s.reserved)
		return may
	}
	for o := range n.outs {
		if may, _ := e.mayPut(n, o, s.out, s.since, s.released); may {
			return true
		}
	}
	return false
}

// clockHours adds the scheduled time up to now to the record.
func (e *Engine) clockHours() {
	if e.hours.line != plan.LineOff {
		e.rec.Scheduled += e.now - e.hours.mark
	}
	e.hours.off = e.offShift()
	e.hours.mark = e.now
}

// offShift is the time up to now in which the lines were off shift.
func (e *Engine) offShift() plan.Micros {
	if e.hours.line != plan.LineOff {
		return e.hours.off
	}
	return e.hours.off + e.now - e.hours.mark
}

// hourDue is when the calendar changes next, or somebody is back from a late break: Never without a calendar.
func (e *Engine) hourDue() plan.Micros {
	due := plan.Never
	for timer := e.timers.span; timer < e.timers.count; timer++ {
		due = min(due, e.cal.next[timer])
	}
	return due
}

// passHour follows such a change when nothing moves any more.
func (e *Engine) passHour(t plan.Micros) {
	e.now = t
	for timer := e.timers.rest; timer < e.timers.count; timer++ {
		if e.cal.next[timer] == t {
			e.restDue(timer)
		}
	}
	if e.timers.span < e.timers.rest && e.cal.next[e.timers.span] == t {
		e.nextSpan()
	}
	e.settleClosely()
}
