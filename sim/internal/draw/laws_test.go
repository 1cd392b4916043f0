package draw

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// must is for laws of tests whose parameters are right.
func must(t testing.TB) func(Law, error) Law {
	return func(l Law, err error) Law {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
}

// oneOfEach has every kind of law, and the laws by mean and cv with small, usual and large cv.
func oneOfEach(t testing.TB) []Law {
	ok := must(t)
	return []Law{
		Fixed(0.5), ok(Exponential(90)),
		ok(Erlang(90, 1)), ok(Erlang(90, 4)), ok(Erlang(90, 10_000)),
		ok(Gamma(90, 0.01)), ok(Gamma(90, 0.5)), ok(Gamma(90, 1.5)), ok(Gamma(90, 3)),
		ok(Lognormal(90, 0.01)), ok(Lognormal(90, 0.8)), ok(Lognormal(90, 2)),
		ok(Weibull(90, 0.01)), ok(Weibull(90, 0.5)), ok(Weibull(90, 2)), ok(WeibullShape(0.8, 300)),
		ok(Normal(90, 0.01)), ok(Normal(90, 0.3)), ok(Normal(90, 0.75)), ok(Normal(90, 0.99)),
		ok(Uniform(0, 3)), ok(UniformSpread(90, 0.5)),
		ok(Triangular(1, 2, 5)), ok(Triangular(2, 2, 5)), ok(Triangular(1, 5, 5)),
		ok(Geometric(10, 1)), ok(Geometric(3, 3)),
		ok(Empirical([]Weighted{{8, 0.25}, {6, 0.5}, {20, 0.25}})), ok(EmpiricalSample([]float64{4, 4, 1, 9})),
		ok(Mixture([]Component{{0.97, ok(Lognormal(60, 0.5))}, {0.03, ok(Uniform(600, 1200))}})),
		ok(Lognormal(90, 0.8)).Shift(30), ok(Gamma(90, 0.8)).Shift(30).Scale(1e6),
	}
}

// The moments of the quantile, integrated over u, are those the law was asked for.
func TestMomentsOfTheQuantile(t *testing.T) {
	for _, l := range oneOfEach(t) {
		mean, sd := integrate(&l)
		if math.Abs(mean/l.Mean()-1) > 2e-6 {
			t.Errorf("%s: the quantile has mean %.9g, want %.9g", l, mean, l.Mean())
		}
		if math.Abs(sd/mean-l.CV()) > 2e-5*max(l.CV(), 0.1) {
			t.Errorf("%s: the quantile has cv %.9g, want %.9g", l, sd/mean, l.CV())
		}
	}
}

// integrate takes 20,000 slices of equal width in t, u = 1/(1+e^-t): fine at both
// ends, where u itself has few steps. A law with jumps takes 1,000,000 equal slices
// of u instead, whose edges meet the jumps of the shares used here.
func integrate(l *Law) (mean, sd float64) {
	n, reach, jumps := 20_000, 36.0, l.Kind() == "geometric" || l.Kind() == "empirical" || l.Kind() == "mixture"
	if jumps {
		n = 1_000_000
	}
	node := func(i int) (u, weight float64) {
		middle := (float64(i) + 0.5) / float64(n)
		if jumps {
			return middle, 1
		}
		u = 1 / (1 + math.Exp(-reach*(2*middle-1)))
		return min(u, highest), u * (1 - u)
	}
	average := func(of func(v float64) float64) float64 {
		sum, weights := 0.0, 0.0
		for i := range n {
			u, w := node(i)
			sum += w * of(l.Quantile(u))
			weights += w
		}
		return sum / weights
	}
	mean = average(func(v float64) float64 { return v })
	return mean, math.Sqrt(average(func(v float64) float64 { return (v - mean) * (v - mean) }))
}

func TestQuantileProperties(t *testing.T) {
	laws := oneOfEach(t)
	rapid.Check(t, func(t *rapid.T) {
		l := rapid.SampledFrom(laws).Draw(t, "law")
		u, w := drawUniform(t, "u"), drawUniform(t, "w")
		x, y := l.Quantile(min(u, w)), l.Quantile(max(u, w))
		for _, v := range []float64{x, y} {
			if !(v >= 0) || math.IsInf(v, 0) {
				t.Fatalf("%s: quantile %g is not a finite number from 0", l, v)
			}
		}
		// Neighbours may change places by some last digits of rounding, no more.
		if l.Kind() != "mixture" && x > y*(1+1e-12) {
			t.Fatalf("%s: the quantile falls from %.17g to %.17g", l, x, y)
		}
	})
}

func drawUniform(t *rapid.T, name string) float64 {
	return rapid.OneOf(
		rapid.Map(rapid.Uint64(), uniform),
		rapid.Map(rapid.Uint64Max(1<<20), uniform),
		rapid.Map(rapid.Uint64Min(math.MaxUint64-1<<20), uniform),
	).Draw(t, name)
}

func TestRandomParametersStayFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mean := rapid.Float64Range(1e-3, 1e13).Draw(t, "mean")
		cv := math.Exp(rapid.Float64Range(math.Log(smallestCV), math.Log(largestCV)).Draw(t, "ln cv"))
		law := rapid.SampledFrom([]func(mean, cv float64) (Law, error){Gamma, Lognormal, Weibull, Normal, UniformSpread}).Draw(t, "law")
		l, err := law(mean, cv)
		if err != nil {
			if cv > 0.57 {
				return
			}
			t.Fatal(err)
		}
		if math.Abs(l.CV()/cv-1) > 1e-9 || math.Abs(l.Mean()/mean-1) > 1e-9 {
			t.Fatalf("%s: mean %g and cv %g came out as %g and %g", l, mean, cv, l.Mean(), l.CV())
		}
		u := drawUniform(t, "u")
		if v := l.Quantile(u); !(v >= 0) || math.IsInf(v, 0) {
			t.Fatalf("%s: quantile at %g is %g", l, u, v)
		}
	})
}

func TestScaleAndShift(t *testing.T) {
	l := must(t)(Lognormal(90, 0.8))
	minutes := l.Shift(30).Scale(1.0 / 60)
	for _, u := range []float64{0.01, 0.5, 0.99} {
		if got, want := minutes.Quantile(u), (l.Quantile(u)+30)/60; math.Abs(got/want-1) > 1e-15 {
			t.Errorf("at %g: %g, want %g", u, got, want)
		}
	}
	if got := minutes.Mean(); math.Abs(got-2) > 1e-15 {
		t.Errorf("mean %g, want 2", got)
	}
	if got := minutes.CV(); math.Abs(got-0.6) > 1e-15 {
		t.Errorf("cv %g, want 72/120", got)
	}
	if l.Mean() != 90 {
		t.Errorf("the law itself was changed: mean %g", l.Mean())
	}
}

func TestKinds(t *testing.T) {
	var none Law
	if !none.IsZero() || none.IsFixed() || none.Kind() != "" {
		t.Errorf("the zero law is not told as not given")
	}
	if zero := Fixed(0); zero.IsZero() || !zero.IsFixed() || zero.CV() != 0 {
		t.Errorf("the value 0 is not told as given")
	}
	if l := must(t)(Exponential(2)); l.IsFixed() || l.Kind() != "exponential" {
		t.Errorf("an exponential law is told as %q", l.Kind())
	}
}
