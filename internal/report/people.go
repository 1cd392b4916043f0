package report

import (
	"cmp"
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// peopleSection has the crews; it is a table only.
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
		names, people = append(names, crew.Name), append(people, whole(float64(crew.People)))
	}
	t := tableOf(heading, heads("crew", "people", "busy", "people.minutes", "waited", "wait"), 1, textColumn(names), textColumn(people),
		column(func(c result.Crew) result.Estimate { return c.Busy }, 100),
		column(func(c result.Crew) result.Estimate { return c.Minutes }, 1),
		column(func(c result.Crew) result.Estimate { return c.Waited }, 100),
		column(func(c result.Crew) result.Estimate { return c.MeanWaitS }, 1))
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
