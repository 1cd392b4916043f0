package sim_test

import (
	"testing"

	"tuckline/sim"
)

const year = 365 * 24 * sim.Hour

// A year of the reference line at a tenth of its speed keeps its pieces and its time.
func TestYearConserves(t *testing.T) {
	line := slower(refLine(t, 600_000, 400_000, 3*s), 10)
	m := compile(t, line)
	o := sim.Options{Seed: 1, WarmUp: sim.Hour, Measure: year}
	rec := m.NewEngine().Run(o)
	for _, fault := range faults(line, m, o, &rec, nil) {
		t.Error(fault)
	}
	for i, holds := range []int64{400, 30} {
		if mean := float64(rec.Buffers[i].LevelTime) / float64(year); mean < 0 || mean > float64(holds) {
			t.Errorf("%s: mean level %g", line.Buffers[i].Name, mean)
		}
	}
	if rec.Stations[2].Passed < 4_000_000 {
		t.Errorf("only %d cartons", rec.Stations[2].Passed)
	}
}
