package sim

import "tuckline/sim/internal/plan"

// Calendar is the working time of all lines: spans one after the other, and again from the first
// without end. The first begins at time 0 of a replication. Without spans the lines work always.
type Calendar struct {
	Spans []Span
}

// Span is a stretch of working time in which nothing changes.
type Span struct {
	// Name is the word that people read of a span in which the lines stand: break, start-up, tidy, cleaning.
	Name string
	// Lasts is its length, at least 1.
	Lasts Micros
	// Line is what the stations may do, Crews where the people are.
	Line  LineTime
	Crews CrewTime
	// Shift is the place in Crew.ByShift of the shift to which it belongs; -1 off shift.
	Shift int
}

// LineTime is what the stations of all lines may do in a span.
type LineTime = plan.LineTime

// The line times. At the beginning of a span that is not LineWorks the cycle under way is frozen; it goes on
// afterwards. Finished pieces may still leave, belts run on.
const (
	// LineWorks: stations work.
	LineWorks = plan.LineWorks
	// LineStands: scheduled, but stations stand (PlannedStop): a break, start-up, tidy, cleaning.
	LineStands = plan.LineStands
	// LineOff: not scheduled (OffShift).
	LineOff = plan.LineOff
)

// CrewTime is where people are in a span.
type CrewTime = plan.CrewTime

// The crew times. Work of a crew that has begun is finished; who was at work when a break began takes it
// afterwards, whole.
const (
	// CrewsWork: as many as the shift has.
	CrewsWork = plan.CrewsWork
	// CrewsRest: a break; only Crew.InBreaks are there.
	CrewsRest = plan.CrewsRest
	// CrewsAway: nobody is there.
	CrewsAway = plan.CrewsAway
)

// Cycle is the length of all spans together; 0 without a calendar.
func (c *Calendar) Cycle() Micros {
	var sum Micros
	for i := range c.Spans {
		sum += c.Spans[i].Lasts
	}
	return sum
}

// Scheduled is the scheduled time, that in which the line is not off shift, in [0, t).
func (c *Calendar) Scheduled(t Micros) Micros {
	if len(c.Spans) == 0 {
		return t
	}
	whole := t / c.Cycle()
	sum := whole * c.scheduledACycle()
	t %= c.Cycle()
	for i := range c.Spans {
		part := min(t, c.Spans[i].Lasts)
		if c.Spans[i].Line != LineOff {
			sum += part
		}
		t -= part
	}
	return sum
}

// After is the first time at which so much scheduled time has passed. It needs a
// calendar with scheduled time, or none.
func (c *Calendar) After(scheduled Micros) Micros {
	if len(c.Spans) == 0 || scheduled == 0 {
		return scheduled
	}
	a := c.scheduledACycle()
	whole := (scheduled - 1) / a
	left, t := scheduled-whole*a, whole*c.Cycle()
	for i := range c.Spans {
		if c.Spans[i].Line != LineOff {
			if left <= c.Spans[i].Lasts {
				return t + left
			}
			left -= c.Spans[i].Lasts
		}
		t += c.Spans[i].Lasts
	}
	return t
}

func (c *Calendar) scheduledACycle() Micros {
	var sum Micros
	for i := range c.Spans {
		if c.Spans[i].Line != LineOff {
			sum += c.Spans[i].Lasts
		}
	}
	return sum
}
