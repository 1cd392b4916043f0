package sim_test

import (
	"math"
	"testing"

	"tuckline/sim"
)

// A buffer without limit that fills all year does not overflow: 120 pieces a minute more than are taken,
// half of the last level on average.
func TestYearOfABufferWithoutLimit(t *testing.T) {
	a, b := one("A", "", 10), one("B", "", 10)
	a.Gives, b.Takes = 40, 20
	line := withBuffer(a, b, sim.Buffer{Name: "buffer", Holds: sim.Unlimited})
	m := compile(t, line)
	o := sim.Options{Measure: year}
	rec := m.NewEngine().Run(o)
	last := float64(rec.Buffers[0].Level[1])
	if want := float64(year/s) * 2; math.Abs(last-want) > 40 {
		t.Errorf("%g pieces at the end, not %g", last, want)
	}
	if mean := rec.Buffers[0].MeanLevel(year); math.Abs(mean-last/2) > 40 {
		t.Errorf("mean level %g, not half of %g", mean, last)
	}
}
