package study

import (
	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/sim"
)

// keyFigureOf is a figure of the line, then of each station.
func keyFigureOf(key string) func(view, int, string) []result.Measure {
	return func(v view, _ int, _ string) []result.Measure {
		f, own := v.figuring(), v.scenario.KeyFigures.Counting
		value := func(count func(*sim.Record) keyfigure.Counted) result.Estimate {
			all := make([]keyfigure.Counted, len(f.records))
			for i := range f.records {
				all[i] = count(&f.records[i])
			}
			return f.valueOf(key, all)
		}
		var rows []result.Measure
		if len(v.figures.Limiting()) > 0 {
			rows = one("line", value(func(r *sim.Record) keyfigure.Counted { return f.line(r, own) }))
		}
		for i := range v.scenario.Line.Stations {
			rows = append(rows, one(v.scenario.Line.Stations[i].Name, value(func(r *sim.Record) keyfigure.Counted { return f.station(r, i, own) }))...)
		}
		return rows
	}
}

// timeOf is a mean time of all own stops of a station, then of each cause.
func timeOf(which func(result.StopTimes) result.Estimate) func(view, int, string) []result.Measure {
	return func(v view, of int, _ string) []result.Measure {
		var rows []result.Measure
		for _, stop := range v.stopTimes(of) {
			name := stop.Name
			if name == result.AllStops {
				name = v.scenario.Line.Stations[of].Name
			}
			rows = append(rows, result.Measure{Of: name, Value: which(stop), Unit: "min"})
		}
		return rows
	}
}

func between(s result.StopTimes) result.Estimate    { return s.BetweenMinutes }
func toRepair(s result.StopTimes) result.Estimate   { return s.RepairMinutes }
func stoppedFor(s result.StopTimes) result.Estimate { return s.StoppedMinutes }
