package estimate

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Hand computation of 1 + (n − 1)p: of 1 to 10 P10 is at place 1.9, of four values
// P25 at place 1.75.
func TestQuantile(t *testing.T) {
	ten := []float64{10, 9, 8, 7, 6, 5, 4, 3, 2, 1}
	near(t, "P10 of 1 to 10", Quantile(ten, 0.1), 1.9, 1e-15)
	near(t, "P50 of 1 to 10", Quantile(ten, 0.5), 5.5, 1e-15)
	near(t, "P90 of 1 to 10", Quantile(ten, 0.9), 9.1, 1e-14)
	near(t, "P0", Quantile(ten, 0), 1, 0)
	near(t, "P100", Quantile(ten, 1), 10, 0)
	near(t, "P25", Quantile([]float64{10, 20, 40, 80}, 0.25), 17.5, 1e-14)
	near(t, "one value", Quantile([]float64{3}, 0.9), 3, 0)
	near(t, "no value", Quantile(nil, 0.9), 0, 0)
	if ten[0] != 10 {
		t.Error("the sample was sorted in place")
	}
}

func TestQuantileProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sample := rapid.SliceOfN(rapid.Float64Range(-1e9, 1e9), 1, 50).Draw(t, "sample")
		p, q := rapid.Float64Range(0, 1).Draw(t, "p"), rapid.Float64Range(0, 1).Draw(t, "q")
		low, high := Quantile(sample, min(p, q)), Quantile(sample, max(p, q))
		if !(slices.Min(sample) <= low && low <= high+1e-6 && high <= slices.Max(sample)+1e-6) {
			t.Fatalf("quantiles %g and %g", low, high)
		}
		interval, ok := QuantileInterval(sample, p, 0.9)
		if !(interval.Low <= interval.Mean && interval.Mean <= interval.High) {
			t.Fatalf("%+v", interval)
		}
		if !ok && interval.Low != interval.High {
			t.Fatalf("an interval without ranks: %+v", interval)
		}
	})
}

// Ranks of the 95 % interval of a median as printed in tables (Hollander, Wolfe
// and Chicken, Nonparametric Statistical Methods; from memory): 2 and 9 of ten,
// 6 and 15 of twenty. For P90 it takes 36 values: 0.9^36 = 0.0225, 0.9^35 = 0.0250.
func TestRanks(t *testing.T) {
	for _, c := range []struct {
		n         int
		p         float64
		low, high int
	}{{10, 0.5, 2, 9}, {20, 0.5, 6, 15}, {5, 0.5, 0, 6}, {6, 0.5, 1, 6}} {
		if low, high := ranks(c.n, c.p, 0.95); low != c.low || high != c.high {
			t.Errorf("n = %d: ranks %d and %d, want %d and %d", c.n, low, high, c.low, c.high)
		}
	}
	sample := make([]float64, 36)
	for i := range sample {
		sample[i] = float64(i + 1)
	}
	if got, ok := QuantileInterval(sample, 0.9, 0.95); !ok || got.High != 36 {
		t.Errorf("36 values gave %+v, %v", got, ok)
	}
	if got, ok := QuantileInterval(sample[:35], 0.9, 0.95); ok || got.Low != got.Mean || got.High != got.Mean {
		t.Errorf("35 values gave %+v, %v", got, ok)
	}
}

// The chance that the true quantile lies between two ranks is a sum of binomial
// terms; it must reach the confidence, and one rank less on either side must not
// keep the tail within its half.
func TestRanksHoldTheConfidence(t *testing.T) {
	for n := 2; n <= 200; n += 3 {
		for _, p := range []float64{0.05, 0.1, 0.5, 0.9} {
			low, high := ranks(n, p, 0.95)
			if low >= 1 && below(n, low, p) > 0.025+1e-12 || below(n, low+1, p) <= 0.025 {
				t.Errorf("n = %d, p = %g: low rank %d", n, p, low)
			}
			if high <= n && below(n, high, p) < 0.975-1e-12 || below(n, high-1, p) >= 0.975 {
				t.Errorf("n = %d, p = %g: high rank %d", n, p, high)
			}
		}
	}
}

// below is P(B < k) for B binomial, term by term.
func below(n, k int, p float64) float64 {
	sum, all := 0.0, lnFactorial(n)
	for i := range k {
		sum += math.Exp(all - lnFactorial(i) - lnFactorial(n-i) + float64(i)*math.Log(p) + float64(n-i)*math.Log1p(-p))
	}
	return sum
}

func lnFactorial(n int) float64 {
	v, _ := math.Lgamma(float64(n) + 1)
	return v
}
