package stoplog

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// truths are laws of the kind that logs of stops have, in seconds.
var truths = []Law{Exponential{120}, Weibull{0.8, 300}, Weibull{2.5, 90}, Gamma{0.6, 200}, Gamma{4, 30}, Lognormal{4.2, 0.9}}

// drawLog draws n values above a threshold; those beyond open are cut there.
func drawLog(law Law, n int, above, open float64, source *rand.Rand) []Observation {
	log := make([]Observation, n)
	for i := range log {
		v := quantileAbove(law, (float64(source.Uint64()>>11)+0.5)/(1<<53), above)
		log[i] = Observation{Value: min(v, open), Open: v > open, Above: above}
	}
	return log
}

// At the maximum the log-likelihood falls in every direction, whichever way found
// it: for complete logs, for logs with open values, with a threshold, with both.
func TestFitIsTheHighestPoint(t *testing.T) {
	for seed, truth := range truths {
		source := rand.New(rand.NewPCG(11, uint64(seed)))
		for what, cut := range map[string][2]float64{
			"complete": {0, math.Inf(1)}, "open": {0, 200}, "threshold": {20, math.Inf(1)}, "both": {20, 200},
		} {
			log := drawLog(truth, 300, cut[0], cut[1], source)
			fit, err := FitLaw(truth.Kind(), log)
			if err != nil {
				t.Errorf("%+v, %s: %v", truth, what, err)
				continue
			}
			for _, f := range figuresOf(fit.Law) {
				for _, off := range []float64{-0.003, 0.003} {
					for _, aside := range []float64{-0.003, 0, 0.003} {
						if l := LogLikelihood(f.with(f.coordinate+off, f.free+aside), log); l >= fit.LogLikelihood {
							t.Errorf("%+v, %s, %s %+g %+g: ln L rises by %g", fit.Law, what, f.name, off, aside, l-fit.LogLikelihood)
						}
					}
				}
			}
		}
	}
}

// Large logs give back the law that they were drawn from, within 5 standard errors
// (the intervals of 99.99994 %), also where half of the law lies under the threshold or
// beyond the end of the log.
func TestFitFindsTheTruth(t *testing.T) {
	for seed, truth := range truths {
		source := rand.New(rand.NewPCG(12, uint64(seed)))
		log := drawLog(truth, 600, truth.Quantile(0.3), truth.Quantile(0.85), source)
		fit, err := FitLaw(truth.Kind(), log)
		if err != nil {
			t.Errorf("%+v: %v", truth, err)
			continue
		}
		ranges, err := Ranges(fit, log, 0.9999994)
		if err != nil {
			t.Errorf("%+v: %v", truth, err)
			continue
		}
		for _, r := range ranges {
			want := parameter(truth, r.Name)
			if r.Name == "mean" {
				want = truth.Mean()
			}
			if !(r.Low <= want && want <= r.High && r.Low < r.Value && r.Value < r.High) {
				t.Errorf("%+v: %+v, want %g", truth, r, want)
			}
		}
		if fit.Ended+fit.Open != 600 || fit.Open < 80 {
			t.Errorf("%+v: %d ended, %d open", truth, fit.Ended, fit.Open)
		}
	}
}

// The search in two dimensions finds what the closed form and the single equation
// find: they share nothing but the likelihood.
func TestTwoWaysOneFit(t *testing.T) {
	source := rand.New(rand.NewPCG(13, 1))
	weibullAt := func(x []float64) Law { return Weibull{math.Exp(x[0]), math.Exp(x[1])} }
	for _, truth := range truths {
		log := drawLog(truth, 150, 0, math.Inf(1), source)
		for kind, by := range map[Kind]struct {
			at    func(x []float64) Law
			start []float64
		}{
			GammaKind: {gammaAt, gammaStart(log)}, LognormalKind: {lognormalAt, lognormalStart(log)},
			WeibullKind: {weibullAt, []float64{0, math.Log(truth.Mean())}},
		} {
			short, err := FitLaw(kind, log)
			if err != nil {
				t.Fatal(err)
			}
			long, err := climb(by.at, by.start, log)
			if err != nil {
				t.Errorf("%s: %v", kind, err)
				continue
			}
			for i, p := range short.Law.Parameters() {
				near(t, string(kind)+" "+p.Name, long.Parameters()[i].Value, p.Value, 1e-6*math.Abs(p.Value))
			}
		}
	}
}

// An exponential law has no memory: a threshold on all values is the same as
// counting from it. By hand: (8 + 13 + 24)/2 with one open of three.
func TestExponentialByHand(t *testing.T) {
	log := []Observation{{Value: 10, Above: 2}, {Value: 15, Above: 2}, {Value: 24, Open: true}}
	fit, err := FitLaw(ExponentialKind, log)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "mean", fit.Law.Mean(), 22.5, 1e-12)
	near(t, "ln L", fit.LogLikelihood, -2*math.Log(22.5)-2, 1e-12)
	near(t, "AIC", fit.AIC, 4*math.Log(22.5)+6, 1e-12)
	if fit.Ended != 2 || fit.Open != 1 {
		t.Errorf("%+v", fit)
	}
}

func TestAICOrdersTheLaws(t *testing.T) {
	source := rand.New(rand.NewPCG(14, 1))
	for _, truth := range []Law{Exponential{120}, Weibull{3, 90}, Lognormal{4.2, 1.2}} {
		fits, err := FitAll(drawLog(truth, 2000, 0, math.Inf(1), source))
		if err != nil || len(fits) != len(Kinds) {
			t.Fatalf("%+v: %d fits, %v", truth, len(fits), err)
		}
		if !slices.IsSortedFunc(fits, func(a, b Fit) int { return int(math.Copysign(1, a.AIC-b.AIC)) }) {
			t.Errorf("%+v: not in order", truth)
		}
		// Weibull and gamma contain the exponential law, so that one of them may come
		// before it by luck, by less than 2 · 3.3 (one in a hundred).
		if fits[0].Law.Kind() != truth.Kind() && !(truth.Kind() == ExponentialKind && fits[0].AIC > aicOf(fits, truth.Kind())-6.6) {
			t.Errorf("%+v: %s comes first", truth, fits[0].Law.Kind())
		}
	}
}

func aicOf(fits []Fit, kind Kind) float64 {
	for _, f := range fits {
		if f.Law.Kind() == kind {
			return f.AIC
		}
	}
	return math.Inf(1)
}

func TestLogsThatCannotBeFitted(t *testing.T) {
	_, err := FitLaw(WeibullKind, []Observation{{Value: 0}, {Value: -3}, {Value: math.NaN()}, {Value: 5, Above: 30}, {Value: 7, Open: true, Above: -1}})
	if err == nil || len(strings.Split(err.Error(), "\n")) != 5 {
		t.Errorf("five faults gave: %v", err)
	}
	for what, log := range map[string][]Observation{
		"nothing": nil, "all open": {{Value: 3, Open: true}}, "equal": Complete([]float64{4, 4, 4}),
	} {
		for _, kind := range Kinds {
			if _, err := FitLaw(kind, log); err == nil && !(what == "equal" && kind == ExponentialKind) {
				t.Errorf("%s: %s was fitted", what, kind)
			}
		}
	}
	if _, err := FitAll(nil); err == nil {
		t.Error("all laws were fitted to nothing")
	}
	if _, err := FitLaw("cauchy", Complete([]float64{1, 2})); err == nil {
		t.Error("an unknown law was fitted")
	}
	// Values that fall like a power beyond the threshold: the best "lognormal" and
	// "gamma" lie at infinity. Quantiles of P(X > x) = 30/x.
	var heavy []Observation
	for i := range 200 {
		heavy = append(heavy, Observation{Value: 30 / (1 - (float64(i)+0.5)/200), Above: 30})
	}
	for _, kind := range []Kind{GammaKind, WeibullKind} {
		if fit, err := FitLaw(kind, heavy); !errors.Is(err, ErrNoMaximum) {
			t.Errorf("%s of a power law: %+v, %v", kind, fit, err)
		}
	}
}

// A value at its threshold pulls a shape up and a scale down to 0: there is no maximum.
func TestScaleThatRunsAwayIsSaid(t *testing.T) {
	log := []Observation{{Value: 1e-6, Above: 1e-6}, {Value: 1e-9}}
	for _, kind := range Kinds {
		fit, err := FitLaw(kind, log)
		if err == nil && (math.IsNaN(fit.LogLikelihood) || math.IsInf(fit.LogLikelihood, 0)) {
			t.Errorf("%s: %+v", kind, fit)
		}
	}
}

// Nothing that can be typed makes a fit panic or give a law that is none.
func TestFitNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 12).Draw(t, "n")
		log := make([]Observation, n)
		for i := range log {
			above := rapid.SampledFrom([]float64{0, 0, 1e-6, 5}).Draw(t, "above")
			log[i] = Observation{
				Value: above + rapid.SampledFrom([]float64{0, 1e-9, 0.1, 1, 3, 1e4, 1e12}).Draw(t, "value"),
				Open:  rapid.Bool().Draw(t, "open"), Above: above,
			}
		}
		for _, kind := range Kinds {
			fit, err := FitLaw(kind, log)
			if err != nil {
				continue
			}
			if math.IsNaN(fit.LogLikelihood) || math.IsInf(fit.LogLikelihood, 0) || !(fit.Law.Quantile(0.5) >= 0) {
				t.Fatalf("%+v of %+v", fit, log)
			}
		}
	})
}
