package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A store that takes a piece in every 2 s lets the next one in just when the window ends: at 1 s the first went
// in, so the next may at 3 s. The line is slow there, not locked. By hand; the hand-over before the store has no places,
// so that A waits for somebody who waits for A.
func TestNoDeadlockWhereAStoreOpensAtTheHorizon(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{one("A", "", 1), one("B", "store", 10)},
		Buffers: []sim.Buffer{
			{Name: "hand-over", From: []string{"A"}},
			{Name: "store", From: []string{"hand-over"}, Holds: 5, In: 2 * s},
		},
	}
	for _, measure := range []sim.Micros{3*s - 1, 3 * s, 3*s + 1} {
		rec := compile(t, line).NewEngine().Run(sim.Options{Measure: measure})
		if rec.End != sim.HorizonReached || rec.EndedAt != measure {
			t.Errorf("a window of %d ended with %v of %q at %d", measure, rec.End, rec.Locked, rec.EndedAt)
		}
		if blocked := rec.Stations[0].States[sim.Blocked]; blocked != min(measure, 3*s)-2*s {
			t.Errorf("a window of %d: A blocked for %d", measure, blocked)
		}
	}
}
