package sim

import (
	"slices"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// calendar puts the working time into the plan.
func (c *compiler) calendar() {
	for _, span := range c.line.Calendar.Spans {
		c.plan.Calendar = append(c.plan.Calendar, plan.Span(span))
	}
}

// checkCalendar refuses a calendar in which no line ever works, and spans that are none.
func (c *compiler) checkCalendar() {
	spans := c.line.Calendar.Spans
	left := Micros(draw.Longest)
	for i := range spans {
		span := &spans[i]
		if span.Lasts < 1 {
			c.fault("calendar", "span %d lasts %d microseconds; a span lasts at least 1", i+1, span.Lasts)
		}
		if left -= max(0, span.Lasts); left < 0 {
			c.fault("calendar", "its spans last longer than 146,000 years together; a week is enough, it comes again and again")
			return
		}
		if span.Shift < -1 {
			c.fault("calendar", "span %d belongs to shift %d; shifts count from 0, and -1 is off shift", i+1, span.Shift)
		}
		if span.Line > LineOff || span.Crews > CrewsAway {
			c.fault("calendar", "span %d: there is no such time of a line, or of crews", i+1)
		}
	}
	if len(spans) > 0 && !slices.ContainsFunc(spans, func(s Span) bool { return s.Line == LineWorks }) {
		c.fault("calendar", "there is no working time: the lines stand or are off shift in every span")
	}
}

// shifts is the number of shifts of a calendar.
func (c *Calendar) shifts() int {
	n := 0
	for i := range c.Spans {
		n = max(n, c.Spans[i].Shift+1)
	}
	return n
}

// onShift is how many people of a crew a shift has.
func (crew *Crew) onShift(shift int) int {
	switch {
	case crew.Relief:
		return 0
	case crew.ByShift == nil:
		return crew.People
	case shift < 0 || shift >= len(crew.ByShift):
		return 0
	}
	return crew.ByShift[shift]
}

// there is how many people of a crew are on duty in a span.
func (crew *Crew) there(span *Span) int {
	switch span.Crews {
	case CrewsWork:
		return crew.onShift(span.Shift)
	case CrewsRest:
		return crew.InBreaks
	}
	return 0
}

// peopleFor is how many people who can do the work of a crew are ever there at once.
func (c *compiler) peopleFor(name string) int {
	spans := c.line.Calendar.Spans
	if len(spans) == 0 {
		spans = []Span{{Shift: -1}}
	}
	most := 0
	for i := range spans {
		n := 0
		for k := range c.line.Crews {
			if crew := &c.line.Crews[k]; crew.Name == name || slices.Contains(crew.CanAlso, name) {
				n += crew.there(&spans[i])
			}
		}
		most = max(most, n)
	}
	return most
}

// duties are where the people of a crew are, span by span. The first of a replication is new whatever was before it.
func (c *compiler) duties(crew *Crew) []plan.Duty {
	spans := c.line.Calendar.Spans
	if len(spans) == 0 {
		return []plan.Duty{{There: crew.onShift(-1), Whole: crew.onShift(-1), New: true}}
	}
	all := make([]plan.Duty, len(spans))
	for i := range spans {
		before := &spans[(i+len(spans)-1)%len(spans)]
		d := plan.Duty{There: crew.there(&spans[i])}
		d.Whole, d.New = d.There, crew.absent(before) != crew.absent(&spans[i]) || before.Shift != spans[i].Shift
		if spans[i].Crews == CrewsRest && !crew.Relief {
			d.Whole, d.Break = max(d.There, crew.onShift(spans[i].Shift)), breakFrom(spans, i)
		}
		all[i] = d
	}
	return all
}

// absent says that nobody of a crew has anything to do with a span: it is not working time, and no break of theirs.
func (crew *Crew) absent(span *Span) bool {
	return span.Crews == CrewsAway || crew.Relief && span.Crews != CrewsRest
}

// breakFrom is how long a break lasts from a span on.
func breakFrom(spans []Span, i int) Micros {
	lasts := spans[i].Lasts
	for k := 1; k < len(spans); k++ {
		next := &spans[(i+k)%len(spans)]
		if next.Crews != CrewsRest || next.Shift != spans[i].Shift {
			break
		}
		lasts += next.Lasts
	}
	return lasts
}
