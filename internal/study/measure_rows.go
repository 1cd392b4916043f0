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
	if per == "shift" {
		return one(v.scenario.Answer.Unit, v.goodTotal())
	}
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

// ofCrews is a measure with a row for each crew, in a unit or none.
func ofCrews(unit string, value func(v view, crew int, per string) result.Estimate) func(view, int, string) []result.Measure {
	return func(v view, _ int, per string) []result.Measure {
		var rows []result.Measure
		for i, crew := range v.scenario.Line.Crews {
			rows = append(rows, result.Measure{Of: crew.Name, Value: value(v, i, per), Unit: unit})
		}
		return rows
	}
}

func crewWaited(v view, crew int, _ string) result.Estimate { return v.waited(crew) }
func crewBusy(v view, crew int, _ string) result.Estimate   { return v.busy(crew) }

func crewMinutes(v view, crew int, per string) result.Estimate { return v.count(per, v.minutes(crew)) }

// minutesOf are minutes of people of a crew.
func minutesOf(of func(*sim.CrewRecord) sim.Micros) func(v view, crew int, per string) result.Estimate {
	return func(v view, crew int, per string) result.Estimate { return v.count(per, v.crewMinutes(crew, of)) }
}
