package study

import (
	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

func one(of string, value result.Estimate) []result.Measure {
	return []result.Measure{{Of: of, Value: value}}
}

func goodOutput(v view, _ int, per string) []result.Measure {
	return one(v.scenario.Answer.Unit, v.count(per, total(v.scenario)))
}

// spread is the standard deviation of single shifts, weeks or windows.
func spread(v view, _ int, per string) []result.Measure {
	groups, _ := v.singles()
	if per == "hour" {
		for i := range groups {
			for k := range groups[i] {
				groups[i][k] /= scheduledHours(&v.records[i])
			}
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
	return one(v.model.Places()[of].Name, v.clockShare(func(r *sim.Record) sim.Micros { return r.Buffers[of].Full }))
}

func empty(v view, of int, _ string) []result.Measure {
	return one(v.model.Places()[of].Name, v.clockShare(func(r *sim.Record) sim.Micros { return r.Buffers[of].Empty }))
}

func level(v view, of int, _ string) []result.Measure {
	return one(v.model.Places()[of].Name, v.level(of))
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
		rows = append(rows, one(crew.Name, v.busy(i))...)
	}
	return rows
}
