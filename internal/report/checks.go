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
	return tableOf(caption, head, 3, textColumn(name), textColumn(station), textColumn(takes), columnOf(counts, s.Window.Hours))
}
