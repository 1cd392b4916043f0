package study

import (
	"math"
	"testing"
)

// Type 7 of Hyndman and Fan 1996: the quantile p of n values lies at 1 + (n-1)p, linear between.
func TestQuantile(t *testing.T) {
	values := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 11}
	for p, want := range map[float64]float64{0: 1, 0.1: 1.9, 0.5: 5.5, 0.9: 9.2, 1: 11} {
		if got := quantile(values, p); math.Abs(got-want) > 1e-12 {
			t.Errorf("quantile %v is %v, want %v", p, got, want)
		}
	}
}

func TestRunningMean(t *testing.T) {
	means := runningMean([]float64{10, 20, 30, 0}, 0.95)
	if len(means) != 3 {
		t.Fatalf("%d means, want those after 2, 3 and 4", len(means))
	}
	for i, want := range []float64{15, 20, 15} {
		if means[i].Mean != want || means[i].N != i+2 {
			t.Errorf("after %d: mean %v of %d, want %v", i+2, means[i].Mean, means[i].N, want)
		}
	}
}
