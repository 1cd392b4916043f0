package sim_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/sim"
)

// A works in cycles of 2 s and passes a piece at 2, 4, 6 … In intervals of 5 s from
// T0 = 1 s on: pieces at 2 and 4 | 6, 8, 10 | 12, 14; a piece at an edge counts in the
// interval that begins there.
func TestSeriesOfIntervals(t *testing.T) {
	line := sim.Line{Stations: []sim.Station{{Name: "A", Takes: 1, Gives: 1, Cycle: sim.Fixed(2e6)}}}
	o := sim.Options{WarmUp: sim.Second, Measure: 17 * sim.Second, Every: 5 * sim.Second}
	rec := compile(t, line).NewEngine().Run(o)
	if d := cmp.Diff([][]int64{{2}, {3}, {2}}, rec.Series); d != "" {
		t.Error(d)
	}
	o.Every = 0
	plainly := compile(t, line).NewEngine().Run(o)
	rec.Series = nil
	if d := cmp.Diff(plainly, rec); d != "" {
		t.Errorf("intervals change the record: %s", d)
	}
}
