package study

import (
	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// GoodPieces counts the good pieces of the answer in one record: they count by
// their entry into the place after each of its stations.
func GoodPieces(s *scenario.Scenario) func(*sim.Record) int64 {
	after := s.Answer.CountedAfter
	return func(r *sim.Record) int64 {
		var sum int64
		for _, at := range after {
			sum += r.Stations[at].Passed
		}
		return sum
	}
}

// total is the good pieces of the answer in the window.
func total(s *scenario.Scenario) func(*sim.Record) float64 {
	count := GoodPieces(s)
	return func(r *sim.Record) float64 { return float64(count(r)) }
}

func (c columns) output(s *scenario.Scenario) result.Output {
	windows := c.column(total(s))
	return result.Output{
		Unit:     s.Answer.Unit,
		PerHour:  c.perHour(GoodPieces(s)),
		Total:    estimateOf(windows, c.confidence),
		ShiftP10: estimate.Quantile(windows, 0.10),
		ShiftP50: estimate.Quantile(windows, 0.50),
		ShiftP90: estimate.Quantile(windows, 0.90),
	}
}
