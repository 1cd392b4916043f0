package study

import (
	"math"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// setRate is what the line makes at most at set speed, in pieces of the answer
// a minute: at each step the speeds of the stations side by side add up.
func setRate(s *scenario.Scenario) float64 {
	f := flowOf(s.Line)
	at := s.Answer.CountedAfter
	return min(f.through(s, at, f.feedersOf), f.through(s, at, f.consumers))
}

func (f flow) feedersOf(station int) []int { return f.feeders[station] }

// through is what a station makes at set speed if all that it needs on one side runs at set speed.
func (f flow) through(s *scenario.Scenario, station int, neighbours func(int) []int) float64 {
	own := setPiecesPerMinute(s, station)
	if len(neighbours(station)) == 0 {
		return own
	}
	beside := 0.0
	for _, j := range neighbours(station) {
		beside += f.through(s, j, neighbours)
	}
	return min(own, beside)
}

// constraintOf is the station that, alone, would make the fewest good pieces
// of the answer: at set speed, with its own stops.
func constraintOf(s *scenario.Scenario, c columns) int {
	least, at := math.Inf(1), 0
	for i := range s.Line.Stations {
		run := c.share(func(r *sim.Record) sim.Micros { return r.Stations[i].States[sim.Running] }).Mean
		own := c.share(func(r *sim.Record) sim.Micros {
			var sum sim.Micros
			for k := range r.Stations[i].Stops {
				sum += stopped(&r.Stations[i].Stops[k])
			}
			return sum
		}).Mean
		alone := setPiecesPerMinute(s, i)
		if run+own > 0 {
			alone *= run / (run + own)
		}
		if alone < least {
			least, at = alone, i
		}
	}
	return at
}
