package study

import (
	"math"
	"slices"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// passed counts the good pieces of the answer: they count by their entry into
// the place after the station.
func passed(s *scenario.Scenario) func(*sim.Record) int64 {
	at := s.Answer.CountedAfter
	return func(r *sim.Record) int64 { return r.Stations[at].Passed }
}

// total is the good pieces of the answer in the window.
func total(s *scenario.Scenario) func(*sim.Record) float64 {
	count := passed(s)
	return func(r *sim.Record) float64 { return float64(count(r)) }
}

func (c columns) output(s *scenario.Scenario) result.Output {
	windows := c.column(total(s))
	sorted := slices.Sorted(slices.Values(windows))
	return result.Output{
		Unit:    s.Answer.Unit,
		PerHour: c.perHour(passed(s)),
		Total:   estimateOf(windows, c.confidence),
		// Type 7 of Hyndman and Fan 1996, The American Statistician 50:361-365.
		ShiftP10: quantile(sorted, 0.10),
		ShiftP50: quantile(sorted, 0.50),
		ShiftP90: quantile(sorted, 0.90),
	}
}

// quantile is the quantile of sorted values, of type 7: linear between the
// order statistics, the first being 0 and the last 1. (gonum's is of type 4.)
func quantile(sorted []float64, p float64) float64 {
	if len(sorted) == 0 {
		return 0
	}
	whole, rest := math.Modf(p * float64(len(sorted)-1))
	i := int(whole)
	next := min(i+1, len(sorted)-1)
	return sorted[i] + rest*(sorted[next]-sorted[i])
}

// runningMean has the estimate of the total after 2, 3, … replications.
func runningMean(windows []float64, confidence float64) []result.Estimate {
	var means []result.Estimate
	for n := leastReplications; n <= len(windows); n++ {
		means = append(means, estimateOf(windows[:n], confidence))
	}
	return means
}
