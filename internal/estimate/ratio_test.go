package estimate

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
)

// Hand computation: every replication recovers 61 % exactly, so nothing spreads.
func TestRecoveredExactly(t *testing.T) {
	none := []float64{100, 120, 90, 110}
	gain := []float64{40, 30, 50, 45}
	now, unlimited := make([]float64, 4), make([]float64, 4)
	for i := range none {
		now[i] = none[i] + 0.61*gain[i]
		unlimited[i] = none[i] + gain[i]
	}
	got, ok := Recovered(none, now, unlimited, 0.95)
	if !ok || got.N != 4 {
		t.Fatalf("%+v, %v", got, ok)
	}
	for what, v := range map[string]float64{"mean": got.Mean, "low": got.Low, "high": got.High} {
		near(t, what, v, 0.61, 1e-12)
	}
	near(t, "sd", got.SD, 0, 1e-12)
}

// Fieller's theorem (JRSS B 16 (1954) 175; from memory) gives the interval of a
// ratio of normal means in closed form. With 200 replications the bootstrap ends
// lie within a fifth of the half-width of it.
func TestRatioAgainstFieller(t *testing.T) {
	const n = 200
	source := rand.New(rand.NewPCG(3, 4))
	part, whole := make([]float64, n), make([]float64, n)
	for i := range whole {
		common := source.NormFloat64()
		whole[i] = 10 + 3*common + 2*source.NormFloat64()
		part[i] = 6 + 2*common + 2*source.NormFloat64()
	}
	got, ok := RatioOfMeans(part, whole, 0.95)
	if !ok {
		t.Fatal("no interval")
	}
	low, high := fieller(part, whole, 0.95)
	tolerance := (high - low) / 2 / 5
	near(t, "low", got.Low, low, tolerance)
	near(t, "high", got.High, high, tolerance)
	near(t, "delta method", got.SD*StudentQuantile(n-1, 0.975)/math.Sqrt(n), (high-low)/2, tolerance)
}

func fieller(part, whole []float64, confidence float64) (low, high float64) {
	n := float64(len(part))
	a, b := stat.Mean(part, nil), stat.Mean(whole, nil)
	saa, sbb, sab := stat.Variance(part, nil)/n, stat.Variance(whole, nil)/n, stat.Covariance(part, whole, nil)/n
	t2 := math.Pow(StudentQuantile(len(part)-1, (1+confidence)/2), 2)
	// (a − ρb)² = t² (saa − 2ρ sab + ρ² sbb), a quadratic in ρ.
	p, q, r := b*b-t2*sbb, a*b-t2*sab, a*a-t2*saa
	root := math.Sqrt(q*q - p*r)
	return (q - root) / p, (q + root) / p
}

func TestNothingToRecover(t *testing.T) {
	noise := []float64{1, -1, 2, -2, 0.5}
	for what, whole := range map[string][]float64{"around zero": noise, "zero": make([]float64, 5), "one": {1}, "none": nil} {
		got, ok := RatioOfMeans(noise[:len(whole)], whole, 0.95)
		if ok || got != (Interval{N: len(whole)}) {
			t.Errorf("%s: %+v, %v", what, got, ok)
		}
	}
	if _, ok := RatioOfMeans(noise, []float64{5, 6, 7, 8}, 0.95); ok {
		t.Error("samples of different length were paired")
	}
	if _, ok := Recovered([]float64{1, 2}, []float64{1, 2, 3}, []float64{1, 2, 3}, 0.95); ok {
		t.Error("samples of different length were paired")
	}
}
