package report

import (
	"cmp"
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// tested is an in-process test with its station.
type tested struct {
	result.Check
	Station, Unit string
	line          *sim.Check
}

// checksSection says how often tests are made and what they take.
func checksSection(s *subject) (*section, error) {
	var all []tested
	for i, station := range s.Results.Stations {
		for k, check := range station.Checks {
			all = append(all, tested{check, station.Name, s.givesUnit(i), &s.Scenario.Line.Stations[i].Checks[k]})
		}
	}
	if len(all) == 0 {
		return nil, nil
	}
	most := slices.MaxFunc(all, func(a, b tested) int { return cmp.Compare(a.PerHour.Mean, b.PerHour.Mean) })
	heading := say("checks.heading", facts{
		"Name": most.Name, "Station": most.Station, "Window": s.Window.One, "Several": len(all) > 1,
		"Count": numberOf(most.PerHour, s.Window.Hours).String(),
	})
	return &section{ID: "checks", Heading: heading, Reading: say("checks.reading", nil), Table: s.checksTable(all, heading), Open: true}, nil
}

func (s *subject) checksTable(all []tested, caption string) table {
	var name, station, takes []string
	var counts []result.Estimate
	for _, one := range all {
		name, station, counts = append(name, one.Name), append(station, one.Station), append(counts, one.PerHour)
		takes = append(takes, whole(float64(one.line.Takes))+" "+one.Unit)
	}
	head := append(heads("check", "station", "samples"), say("column.checks", facts{"Window": s.Window.One}))
	columns := [][]cell{textColumn(name), textColumn(station), textColumn(takes), columnOf(counts, s.Window.Hours)}
	for _, of := range []string{"mean", "P95", "most"} {
		if exposed := s.exposed(all, of); exposed[0].N > 0 {
			head, columns = append(head, say("column.exposed."+of, nil)), append(columns, columnOf(exposed, 1))
		}
	}
	return tableOf(caption, head, 3, columns...)
}

// exposed is what a bad test would have left to look at, where that was asked for.
func (s *subject) exposed(all []tested, of string) []result.Estimate {
	var exposed []result.Estimate
	for _, one := range all {
		exposed = append(exposed, s.measureOf("exposure", one.Name+" of "+one.Station+", "+of))
	}
	return exposed
}
