package keyfigure

import (
	"math"
	"testing"

	"tuckline/sim"
)

// Exponential work of mean 1 that fails with f is, all tries together, exponential of mean 1/(1 - f)
// (geometric sum of exponential times; Feller 1968, from memory).
func TestRepeatedWork(t *testing.T) {
	r := newRepeated(exponential(1), 0.3)
	mean := 1 / 0.7
	for what, c := range map[string][2]float64{
		"mean": {r.mean(), mean}, "longer": {r.longer(3), math.Exp(-3 / mean)},
		"excess": {r.excess(2), mean * math.Exp(-2/mean)}, "quantile": {r.quantile(0.99), mean * math.Log(100)},
	} {
		if math.Abs(c[0]-c[1]) > 0.01*c[1] {
			t.Errorf("%s: got %v, want %v", what, c[0], c[1])
		}
	}
	fixed := newRepeated(sim.Fixed(2), 0.02)
	near(t, "fixed: twice", fixed.longer(2), 0.02)
	near(t, "fixed: 99 of 100", fixed.quantile(0.999), 4)
}
