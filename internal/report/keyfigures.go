package report

import (
	"slices"

	"tuckline/internal/result"
)

// figureOf is the figure of that key.
func figureOf(all []result.KeyFigure, key string) result.KeyFigure {
	if at := slices.IndexFunc(all, func(f result.KeyFigure) bool { return f.Key == key }); at >= 0 {
		return all[at]
	}
	return result.KeyFigure{}
}

// figureScale is 100 for a share, which is shown in percent.
func figureScale(f result.KeyFigure) float64 {
	if f.Unit == "" {
		return 100
	}
	return 1
}

// figureUnit is the unit as people read it.
func (s *subject) figureUnit(f result.KeyFigure, unit string) string {
	if f.Unit == "" {
		return "%"
	}
	return unit + " " + f.Unit
}

// countingWords say how the key figures are counted.
func countingWords(c result.Counting) string {
	left := say("figures.nothing", nil)
	if len(c.NotBusy) > 0 {
		left = listed(c.NotBusy)
	}
	return say("figures.counting", facts{
		"Speed": c.RunTimeFrom, "Minor": short(c.MinorMinutes), "MinorAs": c.MinorAs, "MaterialAs": c.MaterialAs, "Left": left,
		"Planned": c.MaterialAs == "planned",
	})
}

// figuresSection has the key figures of the line, each with its formula and how that is known.
func figuresSection(s *subject) (*section, error) {
	k := s.Results.KeyFigures
	if len(k.Line) == 0 || figureOf(k.Line, "oee").Value.N == 0 {
		return nil, nil
	}
	value := func(key string) string { return numberOf(figureOf(k.Line, key).Value, 100).String() }
	heading := say("figures.heading", facts{
		"At": s.stationList(k.At), "OEE": value("oee"), "Availability": value("availability"), "Performance": value("performance"), "Quality": value("quality"),
	})
	t := table{Caption: heading, Head: heads("figure", "standard", "formula", "value"), Words: 3, Note: say("figures.note", nil)}
	for _, f := range k.Line {
		n := numberOf(f.Value, figureScale(f))
		value := estimateCell(n)
		if n.Known {
			value.Text += thin + s.figureUnit(f, s.Results.Output.Unit)
		}
		t.Rows = append(t.Rows, []cell{text(f.Name), text(f.Standard), {f.Formula, f.Source}, value})
	}
	return &section{ID: "key-figures", Heading: heading, Reading: countingWords(k.Counting), Table: t}, nil
}

// shownFigures are the figures of stations that stand side by side.
var shownFigures = []string{
	"availability", "performance", "quality", "oee", "nee", "technical_efficiency_iso", "technical_efficiency_en", "good_per_scheduled_hour", "good_per_run_hour",
}

// stationFiguresSection has the key figures of all stations.
func stationFiguresSection(s *subject) (*section, error) {
	stations := s.Results.KeyFigures.Stations
	if len(stations) == 0 {
		return nil, nil
	}
	names, heading := make([]string, len(stations)), say("figures.stations", nil)
	for i, one := range stations {
		names[i] = one.Name
	}
	head, columns := heads("station"), [][]cell{textColumn(names)}
	for _, key := range shownFigures {
		values := make([]result.Estimate, len(stations))
		for i := range stations {
			values[i] = figureOf(stations[i].Figures, key).Value
		}
		f := figureOf(stations[0].Figures, key)
		head = append(head, say("column.key.figure", facts{"Name": f.Name, "Unit": f.Unit}))
		columns = append(columns, columnOf(values, figureScale(f)))
	}
	t := tableOf(heading, head, 1, columns...)
	return &section{ID: "station-figures", Heading: heading, Reading: say("figures.stations.reading", nil), Table: t}, nil
}

// timesSection has the mean times between and to repair of each station and cause.
func timesSection(s *subject) (*section, error) {
	var names, causes []string
	var between, repair, stopped []result.Estimate
	for _, one := range s.Results.KeyFigures.Stations {
		for _, stop := range one.Stops {
			if stop.BetweenMinutes.N == 0 {
				continue
			}
			cause := stop.Name
			if cause == result.AllStops {
				cause = say("figures.all.stops", nil)
			}
			names, causes = append(names, one.Name), append(causes, cause)
			between, repair, stopped = append(between, stop.BetweenMinutes), append(repair, stop.RepairMinutes), append(stopped, stop.StoppedMinutes)
		}
	}
	if len(names) == 0 {
		return nil, nil
	}
	heading := say("figures.times", nil)
	t := tableOf(heading, heads("station", "waits.cause", "between", "repair", "stopped"), 2,
		textColumn(names), textColumn(causes), cells(between), cells(repair), cells(stopped))
	return &section{ID: "stop-times", Heading: heading, Reading: say("figures.times.reading", nil), Table: t}, nil
}

// cells are estimates each with the digits of its own interval: causes differ by orders of magnitude.
func cells(estimates []result.Estimate) []cell {
	all := make([]cell, len(estimates))
	for i, e := range estimates {
		all[i] = estimateCell(numberOf(e, 1))
	}
	return all
}
