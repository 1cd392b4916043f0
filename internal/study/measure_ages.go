package study

import (
	"slices"
	"strings"

	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

// The words of measures for which the engine follows every piece.
const (
	timeInLine = "time in line"
	exposure   = "exposure"
)

// needsAges says that a measure asked for needs the ages of pieces.
func needsAges(show []string) bool {
	return slices.ContainsFunc(show, func(one string) bool {
		words := strings.Join(strings.Fields(one), " ")
		return words == timeInLine || words == exposure
	})
}

// agesOf are the times that pieces of the answer have been in the line: the mean, and the times that 95 and 99 % do
// not exceed, of each replication; and the longest of all.
func agesOf(v view, _ int, _ string) []result.Measure {
	var means, p95, p99 []float64
	longest := 0.0
	for i := range v.records {
		if a := v.records[i].Ages; a != nil && a.Count > 0 {
			means = append(means, float64(a.Sum)/float64(a.Count)/float64(sim.Second))
			p95 = append(p95, ageNotExceeded(a, 0.95)/float64(sim.Second))
			p99 = append(p99, ageNotExceeded(a, 0.99)/float64(sim.Second))
			longest = max(longest, ageNotExceeded(a, 1)/float64(sim.Second))
		}
	}
	most := result.Estimate{}
	if len(means) > 0 {
		most = estimateOf([]float64{longest}, v.confidence)
	}
	return []result.Measure{
		{Of: "mean", Value: estimateOf(means, v.confidence)},
		{Of: "P95", Value: estimateOf(p95, v.confidence)},
		{Of: "P99", Value: estimateOf(p99, v.confidence)},
		{Of: "longest", Value: most},
	}
}

// ageNotExceeded is the age that a share of the pieces do not exceed, in microseconds: the middle of its class, which is
// within 0.5 %.
func ageNotExceeded(a *sim.Ages, share float64) float64 {
	left := share * float64(a.Count)
	for class, n := range a.Classes {
		if left -= float64(n); left <= 0 {
			return (sim.AgeLimit(class-1) + sim.AgeLimit(class)) / 2
		}
	}
	return sim.AgeLimit(len(a.Classes))
}

// exposures are of all tests of each check in all replications: how many pieces would have to be looked at if one of
// them had failed.
func exposures(v view, _ int, _ string) []result.Measure {
	var rows []result.Measure
	for i := range v.scenario.Line.Stations {
		station := &v.scenario.Line.Stations[i]
		for k := range station.Checks {
			name := station.Checks[k].Name + " of " + station.Name
			rows = append(rows, v.exposuresOf(name, i, k)...)
		}
	}
	return rows
}

func (v view) exposuresOf(name string, station, check int) []result.Measure {
	var all, means []float64
	for i := range v.records {
		sum, list := 0.0, v.records[i].Stations[station].Checks[check].Exposures
		for _, pieces := range list {
			all = append(all, float64(pieces))
			sum += float64(pieces)
		}
		if len(list) > 0 {
			means = append(means, sum/float64(len(list)))
		}
	}
	p95, ok := estimate.QuantileInterval(all, 0.95, v.confidence)
	if !ok {
		p95.N = min(p95.N, 1) // there is no interval
	}
	most := result.Estimate{}
	if len(all) > 0 {
		most = estimateOf([]float64{slices.Max(all)}, v.confidence)
	}
	unit := v.firstUnit(station)
	return []result.Measure{
		{Of: name + ", mean", Value: estimateOf(means, v.confidence), Unit: unit},
		{Of: name + ", P95", Value: result.Estimate(p95), Unit: unit},
		{Of: name + ", most", Value: most, Unit: unit},
	}
}

// firstUnit is what the first station of the main way to a station gives.
func (v view) firstUnit(station int) string {
	for range v.scenario.Line.Stations {
		from := v.feeder(v.scenario.Line.Stations[station].From)
		if from < 0 {
			break
		}
		station = from
	}
	return v.scenario.Stations[station].GivesUnit
}

// feeder is the station, or the first of those, behind which a place lies, -1 for supply from outside.
func (v view) feeder(name string) int {
	for i := range v.scenario.Line.Stations {
		if v.scenario.Line.Stations[i].Name == name {
			return i
		}
	}
	for _, b := range v.scenario.Line.Buffers {
		if b.Name == name && len(b.From) > 0 {
			return v.feeder(b.From[0])
		}
	}
	return -1
}
