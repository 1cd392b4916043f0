package study

import (
	"math"
	"testing"

	"tuckline/sim"
)

// Waits that are always 180 s are 180 s at every quantile, also where others did not wait at all: of 10 waits 4 of 0 and 6 of 180 s
// half do not exceed 180 s. Beside 2 of 400 s, 4 of 180 s still are 180 s to 0.5 %, the width of a class.
func TestConstantWaitsComeOutAsTheyAre(t *testing.T) {
	wait := func(a *sim.Ages, n int64, seconds float64) *sim.Ages {
		a.Add(sim.Micros(seconds*float64(sim.Second)), n)
		return a
	}
	for name, c := range map[string]struct {
		all       *sim.Ages
		p         float64
		want, off float64
	}{
		"all alike":     {wait(&sim.Ages{}, 7, 180), 0.95, 180, 1e-6},
		"some none":     {wait(wait(&sim.Ages{}, 4, 0), 6, 180), 0.5, 180, 1e-6},
		"none":          {wait(wait(&sim.Ages{}, 6, 0), 4, 180), 0.5, 0, 0},
		"others longer": {wait(wait(&sim.Ages{}, 4, 180), 2, 400), 0.5, 180, 0.9},
		"the longest":   {wait(wait(&sim.Ages{}, 4, 180), 2, 400), 0.95, 400, 4},
	} {
		if got := waitIn(c.all, classNotExceeded(c.all, c.p)); math.Abs(got-c.want) > c.off {
			t.Errorf("%s: %v s, want %v", name, got, c.want)
		}
	}
}
