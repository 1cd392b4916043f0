package report

// peopleSection has the crews; it is a table only.
func peopleSection(s *subject) (*section, error) {
	if len(s.Results.Crews) == 0 {
		return nil, nil
	}
	busiest := s.Results.Crews[0]
	for _, crew := range s.Results.Crews {
		if crew.Busy.Mean > busiest.Busy.Mean {
			busiest = crew
		}
	}
	heading := say("people.heading", facts{"Crew": busiest.Name, "Busy": percentWords(busiest.Busy.Mean)})
	t := table{Caption: heading, Head: heads("crew", "people", "busy", "waited", "wait"), Words: 1}
	for _, crew := range s.Results.Crews {
		t.Rows = append(t.Rows, []cell{
			text(crew.Name), text(whole(float64(crew.People))),
			estimateCell(numberOf(crew.Busy, 100)), estimateCell(numberOf(crew.Waited, 100)), estimateCell(numberOf(crew.MeanWaitS, 1)),
		})
	}
	return &section{ID: "people", Heading: heading, Reading: say("people.reading", nil), Table: t, Open: true}, nil
}
