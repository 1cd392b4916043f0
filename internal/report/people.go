package report

import (
	"cmp"
	"slices"
	"strings"

	"tuckline/internal/result"
	"tuckline/sim"
)

// peopleSection has the crews.
func peopleSection(s *subject) (*section, error) {
	crews := s.Results.Crews
	if len(crews) == 0 {
		return nil, nil
	}
	busiest := slices.MaxFunc(crews, func(a, b result.Crew) int { return cmp.Compare(a.Busy.Mean, b.Busy.Mean) })
	heading := say("people.heading", facts{"Crew": busiest.Name, "Busy": percentWords(busiest.Busy.Mean), "Several": len(crews) > 1})
	column := func(of func(result.Crew) result.Estimate, scale float64) []cell {
		var all []result.Estimate
		for _, crew := range crews {
			all = append(all, of(crew))
		}
		return columnOf(all, scale)
	}
	var names, people []string
	for _, crew := range crews {
		names, people = append(names, crew.Name), append(people, s.peopleWords(crew.Name, crew.People))
	}
	t := tableOf(heading, heads("crew", "people", "present", "busy", "people.minutes", "waited", "wait"), 1, textColumn(names), textColumn(people),
		column(func(c result.Crew) result.Estimate { return c.Present }, 1),
		column(func(c result.Crew) result.Estimate { return c.Busy }, 100),
		column(func(c result.Crew) result.Estimate { return c.Minutes }, 1),
		column(func(c result.Crew) result.Estimate { return c.Waited }, 100),
		column(func(c result.Crew) result.Estimate { return c.MeanWaitS }, 1))
	for _, extra := range []struct {
		word string
		of   func(result.Crew) result.Estimate
	}{
		{"walking", func(c result.Crew) result.Estimate { return c.WalkingMinutes }},
		{"overtime", func(c result.Crew) result.Estimate { return c.OvertimeMinutes }},
	} {
		if slices.ContainsFunc(crews, func(c result.Crew) bool { return extra.of(c).N > 0 }) {
			t.Head = append(t.Head, say("column."+extra.word, nil))
			for i, one := range column(extra.of, 1) {
				t.Rows[i] = append(t.Rows[i], one)
			}
		}
	}
	return &section{ID: "people", Heading: heading, Reading: say("people.reading", s.workKnown()), Table: t, Open: true}, nil
}

// workKnown is the work that people do in this line.
func (s *subject) workKnown() facts {
	work := []string{say("people.stops", nil), say("people.changes", nil)}
	add := func(has bool, word string) {
		if has {
			work = append(work, say("people."+word, nil))
		}
	}
	line := &s.Scenario.Line
	add(len(s.refilled()) > 0, "refills")
	add(anyStation(func(st *sim.Station) bool { return len(st.Checks) > 0 })(line), "tests")
	add(anyBuffer(func(b *sim.Buffer) bool { return b.Kind == sim.HandMagazine })(line), "carrying")
	add(anyBuffer(func(b *sim.Buffer) bool { return b.Returns.Share > 0 })(line), "inspection")
	return facts{"Work": listed(work)}
}

// peopleWords say how many people a crew has: on each shift where the numbers differ, those of breaks where there are any.
func (s *subject) peopleWords(name string, people int) string {
	line := &s.Scenario.Line
	at := slices.IndexFunc(line.Crews, func(c sim.Crew) bool { return c.Name == name })
	if at < 0 || s.Scenario.Calendar == nil {
		return whole(float64(people))
	}
	crew := &line.Crews[at]
	if crew.Relief {
		return say("people.relief", facts{"N": crew.InBreaks})
	}
	words := whole(float64(people))
	if crew.ByShift != nil {
		var all []string
		for i, n := range crew.ByShift {
			all = append(all, say("people.shift", facts{"Shift": s.Scenario.Calendar.Shifts[i].Name, "N": n}))
		}
		words = strings.Join(all, ", ")
	}
	if crew.InBreaks > 0 {
		words += ", " + say("people.in.breaks", facts{"N": crew.InBreaks})
	}
	return words
}
