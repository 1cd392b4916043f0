package study

import (
	"slices"

	"tuckline/internal/estimate"
	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// keyFigures are the key figures of the line and of each station, and the steps from one way of counting to another.
func (v view) keyFigures() result.KeyFigures {
	f := v.figuring()
	own := v.scenario.KeyFigures
	k := result.KeyFigures{Counting: countingOf(own), At: []string{}, Line: []result.KeyFigure{}, Steps: f.steps()}
	for _, i := range f.sideBySide() {
		k.At = append(k.At, v.scenario.Line.Stations[i].Name)
	}
	if len(k.At) > 0 {
		k.Line = f.estimates(func(r *sim.Record) keyfigure.Counted { return f.line(r, own.Counting) })
	}
	for i := range v.scenario.Line.Stations {
		k.Stations = append(k.Stations, result.StationFigures{
			Name:    v.scenario.Line.Stations[i].Name,
			Figures: f.estimates(func(r *sim.Record) keyfigure.Counted { return f.station(r, i, own.Counting) }),
			Stops:   v.stopTimes(i),
		})
	}
	return k
}

func countingOf(k scenario.KeyFigures) result.Counting {
	c := result.Counting{
		RunTimeFrom: speedWord(k.Counting), MinorMinutes: minutes(k.MinorUpTo), MinorAs: string(k.MinorIn),
		MaterialAs: string(k.MaterialIn), NotBusy: append([]string{}, k.NotBusy...),
	}
	if k.Reported != nil {
		c.HasReport, c.ReportedOEE = true, k.Reported.OEE
	}
	return c
}

// estimates are all figures of what is counted in each replication.
func (f figuring) estimates(count func(*sim.Record) keyfigure.Counted) []result.KeyFigure {
	all := make([]keyfigure.Counted, len(f.records))
	for i := range f.records {
		all[i] = count(&f.records[i])
	}
	var figures []result.KeyFigure
	for _, one := range keyfigure.KeyFigureList {
		figures = append(figures, result.KeyFigure{
			Key: one.Key, Name: one.Name, Standard: one.Standard, Formula: one.Formula, Source: one.Source, Unit: one.Unit,
			Value: f.valueOf(one.Key, all),
		})
	}
	return figures
}

// valueOf estimates the figure of that key; replications in which there is nothing to divide by are left out.
func (f figuring) valueOf(key string, all []keyfigure.Counted) result.Estimate {
	at := slices.IndexFunc(keyfigure.KeyFigureList, func(one keyfigure.Figure) bool { return one.Key == key })
	var values []float64
	for _, c := range all {
		if value, ok := keyfigure.KeyFigureList[at].Of(c); ok {
			values = append(values, value)
		}
	}
	return estimateOf(values, f.confidence)
}

// stopTimes are the mean times between and to repair of all own stops of a station together, then of each cause. They are
// ratios of means, not means of ratios: a cause that comes once in ten windows would be left out of nine of them.
func (v view) stopTimes(station int) []result.StopTimes {
	names, classes := v.model.StopNames(station), v.model.StopClasses(station)
	times := []result.StopTimes{}
	if len(names) > 1 {
		all := v.stopTime(station, func(int) bool { return true })
		all.Name = result.AllStops
		times = append(times, all)
	}
	for k := range names {
		one := v.stopTime(station, func(cause int) bool { return cause == k })
		one.Name, one.Class = names[k], classes[k].String()
		times = append(times, one)
	}
	return times
}

func (v view) stopTime(station int, counts func(cause int) bool) result.StopTimes {
	sum := func(of func(r *sim.Record, cause int) sim.Micros) []float64 {
		return v.column(func(r *sim.Record) float64 {
			sum := 0.0
			for k := range r.Stations[station].Stops {
				if counts(k) {
					sum += float64(of(r, k))
				}
			}
			return sum
		})
	}
	count := sum(func(r *sim.Record, k int) sim.Micros { return sim.Micros(r.Stations[station].Stops[k].Count) })
	running := v.column(func(r *sim.Record) float64 { return float64(r.Stations[station].States[sim.Running]) })
	per := func(part []float64) result.Estimate {
		value, ok := estimate.LinearRatio(part, count, v.confidence)
		if !ok {
			return result.Estimate{}
		}
		value.Mean, value.Low, value.High, value.SD = value.Mean/microsAMinute, value.Low/microsAMinute, value.High/microsAMinute, value.SD/microsAMinute
		return result.Estimate(value)
	}
	return result.StopTimes{
		BetweenMinutes: per(running),
		RepairMinutes:  per(sum(func(r *sim.Record, k int) sim.Micros { return r.Stations[station].Stops[k].Down })),
		StoppedMinutes: per(sum(func(r *sim.Record, k int) sim.Micros { return v.stoodFor(r, station, k) })),
	}
}

const microsAMinute = float64(sim.Minute)
