package stoplog

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// The laws agree with gonum's, which are written independently of them.
func TestLawsAgainstLibrary(t *testing.T) {
	type other interface {
		LogProb(x float64) float64
		Survival(x float64) float64
		Mean() float64
		StdDev() float64
	}
	for _, c := range []struct {
		law   Law
		other other
	}{
		{Exponential{120}, distuv.Exponential{Rate: 1.0 / 120}},
		{Weibull{0.8, 300}, distuv.Weibull{K: 0.8, Lambda: 300}},
		{Gamma{0.6, 200}, distuv.Gamma{Alpha: 0.6, Beta: 1.0 / 200}},
		{Gamma{4, 30}, distuv.Gamma{Alpha: 4, Beta: 1.0 / 30}},
		{Lognormal{4.2, 0.9}, distuv.LogNormal{Mu: 4.2, Sigma: 0.9}},
	} {
		near(t, "mean", c.law.Mean(), c.other.Mean(), 1e-10*c.law.Mean())
		near(t, "sd", c.law.SD(), c.other.StdDev(), 1e-10*c.law.SD())
		for _, x := range []float64{0.01, 1, 30, 100, 500, 2000} {
			near(t, string(c.law.Kind())+" density", c.law.LogDensity(x), c.other.LogProb(x), 1e-9)
			near(t, string(c.law.Kind())+" survival", math.Exp(c.law.LogSurvival(x)), c.other.Survival(x), 1e-12)
		}
	}
}

// Quantile and survival undo each other, in the tails too; beyond the reach of the
// library the survival goes on falling smoothly.
func TestQuantileUndoesSurvival(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law := rapid.SampledFrom(truths).Draw(t, "law")
		p := rapid.Float64Range(1e-6, 1-1e-6).Draw(t, "p")
		if back := -math.Expm1(law.LogSurvival(law.Quantile(p))); math.Abs(back-p) > 1e-9 {
			t.Fatalf("%+v: %g came back as %g", law, p, back)
		}
		above := law.Quantile(rapid.Float64Range(0.01, 0.9).Draw(t, "below"))
		if back := Below(law, quantileAbove(law, p, above), above); math.Abs(back-p) > 1e-8 {
			t.Fatalf("%+v above %g: %g came back as %g", law, above, p, back)
		}
	})
	for _, law := range []Law{Gamma{4, 1}, Lognormal{0, 0.2}} {
		last := 0.0
		for x := 1.0; x < 3000; x *= 1.01 {
			now := law.LogSurvival(x)
			slope := (now - last) / math.Log(1.01)
			want := -math.Exp(law.LogDensity(x/math.Sqrt(1.01))-law.LogSurvival(x/math.Sqrt(1.01))) * x / math.Sqrt(1.01)
			if x > 1 && math.Abs(slope-want) > 0.002*math.Abs(want)+1e-9 {
				t.Fatalf("%+v at %g: falls by %g, want %g", law, x, slope, want)
			}
			last = now
		}
	}
	// Next to nothing of these laws lies above 30; an exponential law has no memory.
	for _, law := range []Law{Lognormal{-3.8, 1}, Exponential{1}, Gamma{2, 1}, Weibull{0.9, 0.7}} {
		for _, p := range []float64{0.001, 0.3, 0.999} {
			near(t, "far above", Below(law, quantileAbove(law, p, 30), 30), p, 1e-10)
		}
	}
	near(t, "no memory", quantileAbove(Exponential{1}, 0.3, 30), 30-math.Log(0.7), 1e-10)
	near(t, "cv", CV(Gamma{4, 30}), 0.5, 1e-12)
}
