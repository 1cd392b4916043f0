package report

import (
	"cmp"
	"html/template"
	"slices"

	"tuckline/internal/result"
)

// cause is one stop with its station or store, for the chart of stops.
type cause struct {
	Station string
	result.Stop
}

func (s *subject) stopCauses() []cause {
	var all []cause
	for _, station := range s.Results.Stations {
		for _, stop := range station.Stops {
			if stop.Down.Mean > 0 || stop.PerHour.Mean > 0 {
				all = append(all, cause{station.Name, stop})
			}
		}
	}
	for _, buffer := range s.Results.Buffers {
		for _, stop := range buffer.Stops {
			if stop.Down.Mean > 0 || stop.PerHour.Mean > 0 {
				all = append(all, cause{buffer.Name, stop})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b cause) int { return cmp.Compare(b.Down.Mean, a.Down.Mean) })
	return all
}

// drawnStops is how many causes the chart has at most; the table has all.
const drawnStops = 15

// stopsSection shows what stops the stations, the longest first.
func stopsSection(s *subject) (*section, error) {
	all := s.stopCauses()
	if len(all) == 0 {
		return nil, nil
	}
	minutes := 60 * s.Window.Hours
	heading := say("stops.heading", facts{
		"Stop": all[0].Name, "Station": all[0].Station, "Window": s.Window.One, "Minutes": numberOf(all[0].Down, minutes).Mean,
	})
	option, err := s.stopsOption(all[:min(drawnStops, len(all))], described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "stops", Heading: heading, Reading: say("stops.reading", facts{"Window": s.Window.One}),
		Charts: []chart{{"stops", 70 + 30*min(drawnStops, len(all)), option}},
		Table:  s.stopsTable(all, heading),
	}, nil
}

func (s *subject) stopsOption(causes []cause, aria string) (template.JS, error) {
	minutes := 60 * s.Window.Hours
	var rows []barRow
	place := placeIn(causes, func(c cause) result.Estimate { return c.PerHour }, s.Window.Hours)
	for _, c := range causes {
		f := facts{
			"Stop": c.Name, "Station": c.Station, "Class": c.Class, "Window": s.Window.One,
			"Count": atPlace(c.PerHour, s.Window.Hours, place).Mean, "Minutes": numberOf(c.Down, minutes),
		}
		rows = append(rows, barRow{Label: say("stop.at", f), Tip: say("stops.tip", f), Count: say("stops.label", f), Share: c.Down, Scale: minutes})
	}
	return barsWithCounts(aria, say("stops.axis", facts{"Window": s.Window.One}), "down", rows)
}

func (s *subject) stopsTable(all []cause, caption string) table {
	minutes := 60 * s.Window.Hours
	var station, name, class []string
	var down, count []result.Estimate
	for _, c := range all {
		station, name, class = append(station, c.Station), append(name, c.Name), append(class, c.Class)
		down, count = append(down, c.Down), append(count, c.PerHour)
	}
	head := append(heads("stop", "station", "class"),
		say("column.minutes", facts{"Window": s.Window.One}), say("column.count", facts{"Window": s.Window.One}))
	return tableOf(caption, head, 3, textColumn(name), textColumn(station), textColumn(class),
		columnOf(down, minutes), columnOf(count, s.Window.Hours))
}
