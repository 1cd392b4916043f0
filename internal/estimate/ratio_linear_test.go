package estimate

import (
	"math"
	"testing"
)

// By hand: parts 8, 10, 18 of wholes 4, 5, 6: ratio 36/15 = 2.4; part − 2.4 whole = −1.6, −2, 3.6, over the mean of 5:
// −0.32, −0.4, 0.72, whose standard deviation is √(0.7808/2) = 0.62482. t of 2 degrees at 97.5 % is 4.30265 (tables).
func TestLinearRatioByHand(t *testing.T) {
	got, ok := LinearRatio([]float64{8, 10, 18}, []float64{4, 5, 6}, 0.95)
	half := 4.30265 * 0.62482 / math.Sqrt(3)
	if !ok || got.N != 3 || math.Abs(got.Mean-2.4) > 1e-12 || math.Abs(got.SD-0.62482) > 1e-5 ||
		math.Abs(got.High-2.4-half) > 1e-4 || math.Abs(2.4-got.Low-half) > 1e-4 {
		t.Errorf("got %+v, want 2.4 ± %g", got, half)
	}
	for what, whole := range map[string][]float64{"near 0": {1, 0, 0}, "too few": {1}} {
		if got, ok := LinearRatio([]float64{2, 4, 9}[:len(whole)], whole, 0.95); ok {
			t.Errorf("%s: got %+v", what, got)
		}
	}
	if _, ok := LinearRatio([]float64{1, 2}, []float64{1, 2, 3}, 0.95); ok {
		t.Error("samples of different length were divided")
	}
}
