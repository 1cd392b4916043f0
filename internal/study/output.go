package study

import (
	"tuckline/internal/estimate"
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
	return result.Output{
		Unit:     s.Answer.Unit,
		PerHour:  c.perHour(passed(s)),
		Total:    estimateOf(windows, c.confidence),
		ShiftP10: estimate.Quantile(windows, 0.10),
		ShiftP50: estimate.Quantile(windows, 0.50),
		ShiftP90: estimate.Quantile(windows, 0.90),
	}
}
