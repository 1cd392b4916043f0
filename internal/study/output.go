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

func (v view) output() result.Output {
	s := v.scenario
	groups, of := v.singles()
	single := flat(groups)
	out := result.Output{
		Unit:     s.Answer.Unit,
		PerHour:  v.perHour(GoodPieces(s)),
		Total:    v.goodTotal(),
		ShiftP10: estimate.Quantile(single, 0.10),
		ShiftP50: estimate.Quantile(single, 0.50),
		ShiftP90: estimate.Quantile(single, 0.90),
		ByShift:  v.byShift(),
	}
	if s.Calendar != nil || of == noSingles {
		out.SpreadOf = of
	}
	return out
}
