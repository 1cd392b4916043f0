package study

import (
	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

func one(of string, value result.Estimate) []result.Measure {
	return []result.Measure{{Of: of, Value: value}}
}

// count is a count per scheduled hour, or per window where a shift or a week is asked for.
func (c columns) count(per string, value func(*sim.Record) float64) result.Estimate {
	if per != "hour" {
		return c.estimate(value)
	}
	return c.estimate(func(r *sim.Record) float64 { return value(r) / scheduledHours(r) })
}

func goodOutput(v view, _ int, per string) []result.Measure {
	return one(v.scenario.Answer.Unit, v.count(per, total(v.scenario)))
}

// spread is the standard deviation of single windows.
func spread(v view, _ int, per string) []result.Measure {
	value := total(v.scenario)
	groups := make([][]float64, len(v.records))
	for i := range v.records {
		r := &v.records[i]
		groups[i] = []float64{value(r)}
		if per == "hour" {
			groups[i][0] /= scheduledHours(r)
		}
	}
	return one(v.scenario.Answer.Unit, result.Estimate(estimate.Spread(groups, v.confidence)))
}

func allRunning(v view, _ int, _ string) []result.Measure {
	return one("", v.share(func(r *sim.Record) sim.Micros { return r.AllRunning }))
}

func inState(state sim.State) func(view, int, string) []result.Measure {
	return func(v view, of int, _ string) []result.Measure {
		return one(v.scenario.Line.Stations[of].Name,
			v.share(func(r *sim.Record) sim.Micros { return r.Stations[of].States[state] }))
	}
}

func stopsOf(v view, of int, per string) []result.Measure {
	return one(v.scenario.Line.Stations[of].Name, v.count(per, func(r *sim.Record) float64 {
		var n int64
		for _, stop := range r.Stations[of].Stops {
			n += stop.Count
		}
		return float64(n)
	}))
}

func restartsOf(v view, of int, per string) []result.Measure {
	return one(v.scenario.Line.Stations[of].Name,
		v.count(per, func(r *sim.Record) float64 { return float64(r.Stations[of].Restarts) }))
}

func full(v view, of int, _ string) []result.Measure {
	return one(v.model.Places()[of].Name, v.share(func(r *sim.Record) sim.Micros { return r.Buffers[of].Full }))
}

func empty(v view, of int, _ string) []result.Measure {
	return one(v.model.Places()[of].Name, v.share(func(r *sim.Record) sim.Micros { return r.Buffers[of].Empty }))
}

func level(v view, of int, _ string) []result.Measure {
	return one(v.model.Places()[of].Name, v.level(of))
}

func waiting(v view, _ int, _ string) []result.Measure {
	var rows []result.Measure
	for i, crew := range v.scenario.Line.Crews {
		rows = append(rows, one(crew.Name, v.meanWait(i))...)
	}
	return rows
}

func waited(v view, _ int, _ string) []result.Measure {
	var rows []result.Measure
	for i, crew := range v.scenario.Line.Crews {
		rows = append(rows, one(crew.Name, v.waited(i))...)
	}
	return rows
}

func busy(v view, _ int, _ string) []result.Measure {
	var rows []result.Measure
	for i, crew := range v.scenario.Line.Crews {
		rows = append(rows, one(crew.Name, v.busy(i, crew.People))...)
	}
	return rows
}
