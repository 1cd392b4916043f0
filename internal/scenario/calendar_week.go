package scenario

import (
	"fmt"
	"math"
	"slices"

	"tuckline/internal/quantity"
	"tuckline/sim"
)

// timeline makes spans of the shifts and the cleaning of a week.
type timeline struct {
	shifts, cleaning []stretch
	// relief says that the line works during breaks.
	relief bool
	// start is the time of the week at which the first span begins.
	start sim.Micros
}

// spans cuts the week at every edge and joins what is alike. A span under way at the start is cut in two: its rest is
// the last of the cycle.
func (w *timeline) spans() (spans []sim.Span) {
	edges := w.edges()
	for i, edge := range edges {
		end := weekLength
		if i+1 < len(edges) {
			end = edges[i+1]
		}
		span := w.span((w.start + edge) % weekLength)
		span.Lasts = end - edge
		if last := len(spans) - 1; last >= 0 && alike(spans[last], span) {
			spans[last].Lasts += span.Lasts
			continue
		}
		spans = append(spans, span)
	}
	return spans
}

func alike(a, b sim.Span) bool {
	a.Lasts = b.Lasts
	return a == b
}

// edges are the times after the start at which something may change.
func (w *timeline) edges() []sim.Micros {
	edges := []sim.Micros{0}
	add := func(begin sim.Micros, offsets ...sim.Micros) {
		for _, offset := range offsets {
			edges = append(edges, (begin+offset-w.start+2*weekLength)%weekLength)
		}
	}
	for i := range w.shifts {
		s := &w.shifts[i]
		add(s.begin, 0, s.times.startUp, s.lasts-s.times.tidy, s.lasts)
		for _, pause := range s.times.breaks {
			add(s.begin, pause.begin, pause.begin+pause.lasts)
		}
	}
	for i := range w.cleaning {
		add(w.cleaning[i].begin, 0, w.cleaning[i].lasts)
	}
	slices.Sort(edges)
	return slices.Compact(edges)
}

// span is what holds from a time of the week on, without its length.
func (w *timeline) span(t sim.Micros) sim.Span {
	span := sim.Span{Line: sim.LineOff, Crews: sim.CrewsAway, Shift: -1}
	for i := range w.shifts {
		if after, in := w.shifts[i].holds(t); in {
			span = w.shifts[i].times.span(after, w.relief)
		}
	}
	for i := range w.cleaning {
		if _, in := w.cleaning[i].holds(t); in {
			span.Name, span.Line = "cleaning", sim.LineStands
		}
	}
	return span
}

// span is what holds so long after the beginning of a shift.
func (t *shiftTimes) span(after sim.Micros, relief bool) sim.Span {
	span := sim.Span{Shift: t.shift}
	for _, pause := range t.breaks {
		if pause.begin <= after && after < pause.begin+pause.lasts {
			span.Crews = sim.CrewsRest
			if !relief {
				span.Name, span.Line = "break", sim.LineStands
			}
		}
	}
	switch {
	case after < t.startUp:
		span.Name, span.Line = "start-up", sim.LineStands
	case after >= t.lasts-t.tidy:
		span.Name, span.Line = "tidy", sim.LineStands
	}
	return span
}

// calendarOf sums the spans up for people.
func calendarOf(c *sim.Calendar, shifts []*shiftTimes, start sim.Micros) *Calendar {
	all := &Calendar{start: start}
	for _, t := range shifts {
		if t.shift == len(all.Shifts) {
			all.Shifts = append(all.Shifts, Shift{Name: t.name, From: t.from, To: t.to, Overtime: t.name == overtimeName})
		}
		s := &all.Shifts[t.shift]
		s.Several = s.Several || t.from != s.From || t.to != s.To
		s.Days, s.AWeek = append(s.Days, t.days...), s.AWeek+len(t.days)
		slices.Sort(s.Days)
	}
	for i := range c.Spans {
		all.add(&c.Spans[i])
	}
	for i := range all.Shifts {
		s := &all.Shifts[i]
		s.Days = slices.Compact(s.Days)
		s.Scheduled /= sim.Micros(max(1, s.AWeek))
		s.Net /= sim.Micros(max(1, s.AWeek))
	}
	all.Year = 52 * all.Week
	return all
}

// add counts a span.
func (c *Calendar) add(span *sim.Span) {
	if span.Line == sim.LineOff {
		return
	}
	var net sim.Micros
	if span.Line == sim.LineWorks {
		net = span.Lasts
	}
	c.Week, c.NetWeek = c.Week+span.Lasts, c.NetWeek+net
	if span.Shift >= 0 {
		s := &c.Shifts[span.Shift]
		s.Scheduled, s.Net = s.Scheduled+span.Lasts, s.Net+net
	}
}

// setYear puts in the hours a year as written.
func (c *Calendar) setYear(hours *duration) {
	if hours.given() {
		c.Year = micros(hours.value)
	}
	c.NetYear = sim.Micros(math.Round(float64(c.NetWeek) / float64(c.Week) * float64(c.Year)))
}

// setDay sums up the first working day: its shifts, and the cleaning outside of shifts that begins on it.
func (c *Calendar) setDay(w *timeline) {
	first := len(weekdays)
	for i := range c.Shifts {
		if !c.Shifts[i].Overtime {
			first = min(first, c.Shifts[i].Days[0])
		}
	}
	on := func(s *stretch) bool { return int(s.begin/dayLength) == first }
	for i := range w.shifts {
		if s := &w.shifts[i]; on(s) {
			c.Day += s.lasts
		}
	}
	for i := range w.cleaning {
		if s := &w.cleaning[i]; on(s) {
			c.Day += w.outside(s)
		}
	}
}

// outside is how much of a cleaning lies outside of all shifts.
func (w *timeline) outside(cleaning *stretch) sim.Micros {
	left := cleaning.lasts
	for i := range w.shifts {
		s := &w.shifts[i]
		if after, in := s.holds(cleaning.begin); in {
			left -= min(cleaning.lasts, s.lasts-after)
		} else if after, in := cleaning.holds(s.begin); in {
			left -= min(s.lasts, cleaning.lasts-after)
		}
	}
	return left
}

// hoursText is a time in hours as people read it.
func hoursText(t sim.Micros) string {
	return fmt.Sprintf("%s h", quantity.FormatNumber(math.Round(float64(t)/float64(sim.Hour)*100)/100))
}
