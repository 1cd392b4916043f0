package plain

import "tuckline/sim/internal/plan"

// shifts follows the whole shifts of the window. A shift lasts as long as spans of the calendar that follow each other
// belong to it. What comes out from its end on is its own until another begins: the piece that is done at the very end of the
// working time, too.
type shifts struct {
	// border is the next time at which a shift ends or begins, Never before the window; at is the span that begins then.
	border plan.Micros
	at     int
	// open says that the shift under way, or the last, is whole so far, over that its end has been reached; record has what it
	// began with.
	open, over bool
	record     plan.ShiftRecord
}

// findShift finds the span that is under way at the first edge of the window: a shift that begins just then is whole.
func (e *Engine) findShift() {
	spans := e.plan.Calendar
	if len(spans) == 0 {
		return
	}
	cycle := plan.Micros(0)
	for i := range spans {
		cycle += spans[i].Lasts
	}
	at, begin := 0, e.now/cycle*cycle
	for begin+spans[at].Lasts <= e.now {
		begin += spans[at].Lasts
		at++
	}
	before := (at + len(spans) - 1) % len(spans)
	if begin == e.now && (e.now == 0 || spans[before].Shift != spans[at].Shift) {
		e.hours.at = at
		e.shiftBegins()
		return
	}
	e.nextBorder(at, begin)
}

// crossBorder ends a shift, and begins the next.
func (e *Engine) crossBorder() {
	h := &e.hours
	h.over = true
	if e.plan.Calendar[h.at].Shift < 0 {
		e.nextBorder(h.at, e.now)
		return
	}
	e.noteShift()
	e.shiftBegins()
}

// noteShift notes what was made in a shift that is over and whole.
func (e *Engine) noteShift() {
	h := &e.hours
	if !h.open || !h.over {
		return
	}
	for i, n := range e.passed() {
		h.record.Passed[i] = n - h.record.Passed[i]
	}
	h.record.Late = e.lateTasks() - h.record.Late
	e.rec.Shifts = append(e.rec.Shifts, h.record)
}

// shiftBegins notes what a shift begins with.
func (e *Engine) shiftBegins() {
	h := &e.hours
	shift := e.plan.Calendar[h.at].Shift
	h.open, h.over = shift >= 0, false
	h.record = plan.ShiftRecord{Shift: shift, Begin: e.now, Passed: e.passed(), Late: e.lateTasks()}
	h.record.Scheduled = e.nextBorder(h.at, e.now)
}

// nextBorder finds the end of the shift to which a span belongs, which began then; it returns its scheduled time.
func (e *Engine) nextBorder(at int, begin plan.Micros) (scheduled plan.Micros) {
	h, spans := &e.hours, e.plan.Calendar
	h.border = plan.Never
	end := begin
	for i := range spans {
		span := &spans[(at+i)%len(spans)]
		if span.Shift != spans[at].Shift {
			h.border, h.at = end, (at+i)%len(spans)
			return scheduled
		}
		if span.Line != plan.LineOff {
			scheduled += span.Lasts
		}
		end += span.Lasts
	}
	return scheduled
}

// passed is what each station has passed on in the window so far.
func (e *Engine) passed() []int64 {
	passed := make([]int64, len(e.rec.Stations))
	for i := range e.stations {
		for _, m := range e.stations[i].plan.Members {
			passed[m.Declared] = e.stations[i].rec.Passed
		}
	}
	return passed
}

// makeWaits makes the distributions of waiting.
func (e *Engine) makeWaits() {
	for i := range e.rec.Crews {
		e.rec.Crews[i].Waits = &plan.Ages{}
	}
	for i := range e.rec.Stations {
		e.rec.Stations[i].Waits = &plan.Ages{}
	}
}

// lateTasks counts the tasks for which a station has had to stop.
func (e *Engine) lateTasks() int64 {
	late := int64(0)
	for i := range e.rec.Stations {
		for j := range e.rec.Stations[i].Materials {
			late += e.rec.Stations[i].Materials[j].Late
		}
	}
	return late
}
