package plain

import "tuckline/sim/internal/plan"

// hours is where a replication stands in the calendar of working time.
type hours struct {
	span int
	line plan.LineTime
	// since is when the lines stopped working, or began to; mark is up to where scheduled time is counted.
	since, mark plan.Micros
	shifts
}

// works says that the calendar lets the lines work.
func (h *hours) works() bool { return h.line == plan.LineWorks }

// resetHours begins with the first span of the calendar.
func (e *Engine) resetHours() {
	e.hours = hours{shifts: shifts{border: plan.Never}}
	if len(e.plan.Calendar) == 0 {
		return
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
	e.hours.line = plan.LineWorks
}

// clockHours adds the scheduled time up to now to the record.
func (e *Engine) clockHours() {
	if e.hours.line != plan.LineOff {
		e.rec.Scheduled += e.now - e.hours.mark
	}
	e.hours.mark = e.now
}

// hoursChange says that the calendar changes before the end of the window.
func (e *Engine) hoursChange() bool {
	return len(e.plan.Calendar) > 0 && e.cal.next[e.timers.span] < e.t1
}
