package study

import (
	"math"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// 12,000 cycles an hour are 3.3 a second: a station of 0.25 s has 14,400 and gets 12/14.4 of the usual (by hand), one of 1 s all of it.
func TestEffortGoesByCycles(t *testing.T) {
	for cycle, want := range map[float64]float64{1: 1, 0.3: 1, 0.25: 12.0 / 14.4, 0.1: 12.0 / 36, 0.01: 0.2} {
		s := &scenario.Scenario{}
		s.Line.Stations = []sim.Station{{Name: "a", Cycle: sim.Fixed(cycle * float64(sim.Second))}}
		s.Agreement.Run = 8 * sim.Hour
		if got := effort(s); math.Abs(got-want) > 1e-9 {
			t.Errorf("a cycle of %v s: %v, by hand %v", cycle, got, want)
		}
		if runs := (AcceptanceOptions{}).filledFor(s).Runs; runs != max(100, int(400*want)) {
			t.Errorf("a cycle of %v s: %d runs", cycle, runs)
		}
	}
}
