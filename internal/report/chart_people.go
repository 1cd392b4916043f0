package report

import (
	"cmp"
	"html/template"
	"slices"

	"tuckline/internal/result"
)

// shortage is the time in which a station stands and waits for a crew.
type shortage struct {
	Station, Crew string
	Share         result.Estimate
	// Waits are of the crew, whichever station asks it.
	Waits *result.Waits
}

// waitsOfCrew are those of all requests of a crew.
func (s *subject) waitsOfCrew(name string) *result.Waits {
	for _, crew := range s.Results.Crews {
		if crew.Name == name && crew.Waits != nil {
			return crew.Waits
		}
	}
	return &result.Waits{}
}

// drawnShortages is how many the chart has at most; the table has all.
const drawnShortages = 16

// shortages are all of them, the longest first.
func (s *subject) shortages() []shortage {
	var all []shortage
	for _, station := range s.Results.Stations {
		for _, one := range station.WaitsFor {
			all = append(all, shortage{station.Name, one.Crew, one.Share, s.waitsOfCrew(one.Crew)})
		}
	}
	slices.SortStableFunc(all, func(a, b shortage) int { return cmp.Compare(b.Share.Mean, a.Share.Mean) })
	return all
}

// waitsForPeopleSection shows where people are short: how long each station stands because nobody is there for it.
func waitsForPeopleSection(s *subject) (*section, error) {
	t := s.waitTimesTable()
	if len(t.Rows) == 0 {
		return nil, nil
	}
	all := s.shortages()
	if len(all) == 0 {
		t.Caption = say("short.none", nil)
		return &section{ID: "short", Heading: t.Caption, Reading: say("short.table", nil), Table: t, Open: true}, nil
	}
	worst := all[0]
	heading := say("short.heading", facts{
		"Station": worst.Station, "Crew": worst.Crew, "Minutes": numberOf(worst.Share, 60*s.Window.Hours).Mean, "Window": s.Window.One, "Several": len(all) > 1,
	})
	t.Caption = heading
	option, err := s.shortOption(all[:min(drawnShortages, len(all))], described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "short", Heading: heading, Reading: say("short.reading", facts{"Window": s.Window.One}),
		Charts: []chart{{"short", 70 + 30*min(drawnShortages, len(all)), option}}, Table: t,
	}, nil
}

func (s *subject) shortOption(all []shortage, aria string) (template.JS, error) {
	var rows []barRow
	minutes := 60 * s.Window.Hours
	for _, one := range all {
		f := facts{
			"Station": one.Station, "Crew": one.Crew, "Minutes": numberOf(one.Share, minutes).String(), "Window": s.Window.One,
			"P50": waitLength(one.Waits.P50S.Mean), "P95": waitLength(one.Waits.P95S.Mean),
		}
		rows = append(rows, barRow{
			Label: say("short.label", f), Tip: say("short.tip", f), Count: say("short.count", f),
			Share: one.Share, Scale: minutes, Fill: "state:waiting",
		})
	}
	return barsWithCounts(aria, say("stops.axis", facts{"Window": s.Window.One}), "waiting", rows)
}

// waitLength is a wait as people say it: seconds below two minutes, then minutes.
func waitLength(seconds float64) string {
	if seconds < 120 {
		return rounded(seconds, 0) + thin + "s"
	}
	return rounded(seconds/60, min(0, exponent(seconds/60)-1)) + thin + "min"
}

// waitTimesTable has the waits of each crew, then of each station that asks for people.
func (s *subject) waitTimesTable() table {
	f := facts{"Window": s.Window.One}
	t := table{Words: 1, Head: append(heads("asks"), say("column.requests", f), say("column.wait.mean", nil), say("column.wait.P50", nil), say("column.wait.P95", nil), say("column.stands", f))}
	row := func(name string, w *result.Waits, stands cell) {
		if w != nil {
			t.Rows = append(t.Rows, []cell{
				text(name), estimateCell(numberOf(w.PerHour, s.Window.Hours)), waitCell(w.MeanS), waitCell(w.P50S), waitCell(w.P95S), stands,
			})
		}
	}
	for _, crew := range s.Results.Crews {
		row(say("short.crew", facts{"Crew": crew.Name}), crew.Waits, text(""))
	}
	for _, station := range s.Results.Stations {
		row(station.Name, station.Waits, estimateCell(numberOf(station.States.Waiting, 60*s.Window.Hours)))
	}
	return t
}

// waitCell is a wait in minutes with its interval.
func waitCell(e result.Estimate) cell { return estimateCell(numberOf(e, 1.0/60)) }

// shortWords say in a sentence where people are short.
func (s *subject) shortWords() string {
	all := s.shortages()
	if len(all) == 0 {
		return ""
	}
	worst := all[0]
	return say("short.sentence", facts{
		"Station": worst.Station, "Crew": worst.Crew, "Minutes": numberOf(worst.Share, 60*s.Window.Hours).String(), "Window": s.Window.One,
		"P50": waitLength(worst.Waits.P50S.Mean), "P95": waitLength(worst.Waits.P95S.Mean),
	})
}
