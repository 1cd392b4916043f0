package keyfigure

import (
	"fmt"
	"strings"
)

// workingLines are the hours as people read them.
func (f *Figures) workingLines() (out []item) {
	w := f.Working
	if w == nil {
		return nil
	}
	for _, s := range w.Shifts {
		out = append(out, item{s.Name, fmt.Sprintf("%s: %s h scheduled, %s h net", s.When, hoursOf(s.Scheduled), hoursOf(s.Net))})
	}
	breaks := "none"
	switch {
	case w.Breaks > 0 && w.Relief > 0:
		breaks = fmt.Sprintf("%s h a week; the line works on, with %s for relief", hoursOf(w.Breaks), persons(w.Relief))
	case w.Breaks > 0:
		breaks = fmt.Sprintf("%s h a week; the line stands", hoursOf(w.Breaks))
	}
	out = append(out, item{"breaks", breaks})
	if w.Cleaning > 0 {
		out = append(out, item{"cleaning", fmt.Sprintf("%s h a week", hoursOf(w.Cleaning))})
	}
	week := fmt.Sprintf("%s h scheduled, %s h net", hoursOf(w.Week), hoursOf(w.NetWeek))
	if f.Bounds.Unlimited > 0 {
		week += fmt.Sprintf(", in which the line makes at most %s %s", number(60*f.Bounds.Unlimited*w.NetWeek), f.Unit)
	}
	return append(out, item{"week", week},
		item{"year", fmt.Sprintf("%s h scheduled, %s h net: %s weeks", hoursOf(w.Year), hoursOf(w.NetYear), number(ratio(w.Year, w.Week)))},
		item{"start", w.Starts})
}

// hoursOf writes hours to the hundredth, those of a year whole.
func hoursOf(h float64) string {
	if h >= 1000 {
		return number(h)
	}
	return strings.TrimRight(strings.TrimRight(fixed(h, 2), "0"), ".")
}

// staffLines are the people as people read them; crews of which nothing is known but their number are left out
// where there is no calendar.
func (f *Figures) staffLines() (out []item) {
	for i := range f.Staff {
		if text := f.staffText(&f.Staff[i]); text != "" {
			out = append(out, item{f.Staff[i].Crew, text})
		}
	}
	return out
}

func (f *Figures) staffText(s *Staff) string {
	var parts []string
	switch {
	case f.Working != nil && s.ByShift == nil:
		parts = append(parts, persons(s.People)+" on every shift")
	case f.Working != nil:
		var shifts []string
		for k, n := range s.ByShift {
			shifts = append(shifts, fmt.Sprintf("%d on %s", n, f.Working.Shifts[k].Name))
		}
		parts = append(parts, strings.Join(shifts, ", "))
	}
	if s.Walk > 0 {
		parts = append(parts, fmt.Sprintf("walks %s s to each work", number(s.Walk)))
	}
	if s.Response > 0 {
		parts = append(parts, fmt.Sprintf("responds after %s min", number(s.Response/60)))
	}
	if len(s.CanAlso) > 0 {
		parts = append(parts, "can also do the work of "+listed(s.CanAlso))
	}
	return strings.Join(parts, "; ")
}

// writeWorking writes the calendar and the people.
func (f *Figures) writeWorking(b *strings.Builder) {
	if lines := f.workingLines(); len(lines) > 0 {
		b.WriteString("\nWorking time; rates above are per hour in which the line may work\n")
		writeLines(b, lines)
	}
	if lines := f.staffLines(); len(lines) > 0 {
		b.WriteString("\nPeople\n")
		writeLines(b, lines)
	}
}

// workingRows are the figures of the calendar and of the people.
func (l *list) workingRows(f *Figures) {
	if w := f.Working; w != nil {
		l.group = "calendar"
		for _, s := range w.Shifts {
			l.add(s.Name+": scheduled", s.Scheduled, "h")
			l.add(s.Name+": net", s.Net, "h")
		}
		l.add("scheduled a week", w.Week, "h")
		l.add("net a week", w.NetWeek, "h")
		l.add("scheduled a year", w.Year, "h")
		l.add("net a year", w.NetYear, "h")
		l.some("breaks a week", w.Breaks, "h")
		l.some("cleaning a week", w.Cleaning, "h")
		l.some("relief in breaks", float64(w.Relief), "people")
	}
	for i := range f.Staff {
		s := &f.Staff[i]
		l.group = s.Crew
		for k, n := range s.ByShift {
			l.add("people on "+f.Working.Shifts[k].Name, float64(n), "people")
		}
		l.some("walk", s.Walk, "s")
		l.some("response", s.Response/60, "min")
	}
}
