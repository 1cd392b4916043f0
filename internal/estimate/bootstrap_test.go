package estimate

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// each makes every value a replication of its own.
func each(sample []float64) [][]float64 {
	groups := make([][]float64, len(sample))
	for i, x := range sample {
		groups[i] = []float64{x}
	}
	return groups
}

// The value is the certified standard deviation of NIST (see interval_test.go).
func TestSpreadIsTheStandardDeviation(t *testing.T) {
	near(t, "lew", Spread(each(values(t, "lew")), 0.95).Mean, 277.332168044316, 1e-9)
	near(t, "numacc4", Spread(each(values(t, "numacc4")), 0.95).Mean, 0.1, 1e-9)
	sample := values(t, "lottery")
	near(t, "lottery in groups", Spread([][]float64{sample[:50], sample[50:51], sample[51:]}, 0.95).Mean, 291.699727470969, 1e-9)
}

// For normal values the interval is known: sd √((n−1)/χ²). 400 values that lie
// exactly like the normal law; the ends may differ by 1.5 %, a fifth of the half-width.
func TestSpreadAgainstChiSquared(t *testing.T) {
	const n = 400
	sample := make([]float64, n)
	for i := range sample {
		sample[i] = distuv.UnitNormal.Quantile((float64(i) + 0.5) / n)
	}
	got := Spread(each(sample), 0.95)
	chi := distuv.ChiSquared{K: n - 1}
	near(t, "low", got.Low, got.Mean*math.Sqrt((n-1)/chi.Quantile(0.975)), 0.015)
	near(t, "high", got.High, got.Mean*math.Sqrt((n-1)/chi.Quantile(0.025)), 0.015)
	near(t, "standard error", got.SD, got.Mean/math.Sqrt(2*n), 0.003)
}

// 400 samples of 30 normal values with sd 1: about 95 of 100 intervals must hold
// 1. The bootstrap is known to fall a little short for such small samples; below
// 88 % it would be wrong.
func TestSpreadCovers(t *testing.T) {
	const tries = 400
	source := rand.New(rand.NewPCG(1, 2))
	held := 0
	for range tries {
		sample := make([]float64, 30)
		for i := range sample {
			sample[i] = source.NormFloat64()
		}
		if got := Spread(each(sample), 0.95); got.Low <= 1 && 1 <= got.High {
			held++
		}
	}
	if share := float64(held) / tries; share < 0.88 || share > 0.98 {
		t.Errorf("%.3g of the intervals hold the true value", share)
	}
}

func TestSpreadOfLittle(t *testing.T) {
	if got := Spread(nil, 0.95); got != (Interval{}) {
		t.Errorf("nothing gave %+v", got)
	}
	if got := Spread([][]float64{{1, 3}}, 0.95); got.N != 1 || got.Low != got.High || got.Mean != math.Sqrt2 {
		t.Errorf("one replication gave %+v", got)
	}
	if got := Spread(each([]float64{4, 4, 4}), 0.95); got != (Interval{N: 3}) {
		t.Errorf("equal values gave %+v", got)
	}
	if got := Spread([][]float64{{}, {}}, 0.95); got != (Interval{N: 2}) {
		t.Errorf("replications without values gave %+v", got)
	}
}

func TestBootstrapIsRepeatable(t *testing.T) {
	sample := each(values(t, "michelso"))
	if a, b := Spread(sample, 0.95), Spread(sample, 0.95); a != b {
		t.Errorf("%+v, then %+v", a, b)
	}
}
