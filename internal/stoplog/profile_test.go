package stoplog

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// For an exponential law the profile is known: with r = mean of the log / mean of
// the law, 2n (r − 1 − ln r) = χ². n = 25 and χ² = 3.841459 give the ratios 0.6575
// and 1.4448 (solved by bisection apart from this program), whatever the values.
func TestProfileOfExponential(t *testing.T) {
	values := make([]float64, 25)
	sum := 0.0
	for i := range values {
		values[i] = float64(3*i + 1)
		sum += values[i]
	}
	log := Complete(values)
	fit, _ := FitLaw(ExponentialKind, log)
	ranges, err := Ranges(fit, log, 0.95)
	if err != nil || len(ranges) != 1 {
		t.Fatal(ranges, err)
	}
	mean := sum / 25
	near(t, "low", mean/ranges[0].Low, 1.44480026, 1e-6)
	near(t, "high", mean/ranges[0].High, 0.65746418, 1e-6)
}

// At both ends the likelihood with everything else refitted lies χ²/2 below the top:
// checked by a fine search over the other parameter.
func TestProfileEnds(t *testing.T) {
	source := rand.New(rand.NewPCG(15, 1))
	for _, truth := range truths {
		log := drawLog(truth, 60, 10, 400, source)
		fit, err := FitLaw(truth.Kind(), log)
		if err != nil {
			t.Fatal(err)
		}
		ranges, err := Ranges(fit, log, 0.95)
		if err != nil {
			t.Errorf("%+v: %v", fit.Law, err)
			continue
		}
		for i, f := range figuresOf(fit.Law) {
			for _, end := range []float64{ranges[i].Low, ranges[i].High} {
				if f.name != "mu" {
					end = math.Log(end)
				}
				top := highestOnGrid(f, end, log)
				near(t, string(truth.Kind())+" "+f.name, 2*(fit.LogLikelihood-top), 3.841459, 1e-4)
			}
		}
	}
}

// highestOnGrid looks at every place of a grid, then of a finer one around the best.
func highestOnGrid(f figure, x float64, log []Observation) float64 {
	top, at := math.Inf(-1), f.free
	for _, grid := range []struct {
		step  float64
		steps int
	}{{0.02, 500}, {1e-4, 300}} {
		middle := at
		for i := -grid.steps; i <= grid.steps; i++ {
			free := middle + float64(i)*grid.step
			if l := LogLikelihood(f.with(x, free), log); l > top {
				top, at = l, free
			}
		}
	}
	return top
}

// 400 logs of 50 values, some open and all above a threshold: 95 % intervals hold the
// truth in 92.0 to 97.6 % of them (99 % limits of a binomial share, by the normal law).
func TestProfileCovers(t *testing.T) {
	truth := Weibull{1.3, 200}
	held, given := map[string]int{}, 0
	for seed := range 400 {
		source := rand.New(rand.NewPCG(16, uint64(seed)))
		log := drawLog(truth, 50, 30, 400, source)
		fit, err := FitLaw(WeibullKind, log)
		if err != nil {
			continue
		}
		ranges, err := Ranges(fit, log, 0.95)
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		given++
		for i, want := range []float64{1.3, 200, truth.Mean()} {
			if ranges[i].Low <= want && want <= ranges[i].High {
				held[ranges[i].Name]++
			}
		}
	}
	if given < 396 {
		t.Errorf("only %d of 400 logs gave intervals", given)
	}
	for name, n := range held {
		if share := float64(n) / float64(given); share < 0.920 || share > 0.976 {
			t.Errorf("%s: %.3g of the intervals hold the truth", name, share)
		}
	}
}

func TestNoIntervalOfFew(t *testing.T) {
	source := rand.New(rand.NewPCG(17, 1))
	log := drawLog(Weibull{1.5, 100}, 19, 0, math.Inf(1), source)
	log = append(log, Observation{Value: 50, Open: true})
	fit, err := FitLaw(WeibullKind, log)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := Ranges(fit, log, 0.95); !errors.Is(err, ErrFewForInterval) || got != nil {
		t.Errorf("19 that ended gave %v, %v", got, err)
	}
	log = append(log, Observation{Value: 80})
	if _, err := Ranges(fit, log, 95); err == nil {
		t.Error("a confidence of 95 was taken")
	}
	fit, _ = FitLaw(WeibullKind, log)
	if got, err := Ranges(fit, log, 0.95); err != nil || len(got) != 3 {
		t.Errorf("20 that ended gave %v, %v", got, err)
	}
}

// Strange logs get intervals that hold their figure, or an error; p values are
// chances. Nothing panics.
func TestStrangeLogs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		log := make([]Observation, rapid.IntRange(20, 26).Draw(t, "n"))
		threshold := rapid.SampledFrom([]float64{0, 1e-6, 5}).Draw(t, "threshold")
		for i := range log {
			log[i] = Observation{Value: threshold + rapid.SampledFrom([]float64{1e-9, 0.1, 1, 3, 1e4, 1e12}).Draw(t, "value"), Above: threshold}
		}
		fits, err := FitAll(log)
		if err != nil {
			return
		}
		for _, fit := range fits {
			ranges, err := Ranges(fit, log, 0.95)
			for _, r := range ranges {
				if err != nil || !(r.Low <= r.Value && r.Value <= r.High) {
					t.Fatalf("%+v: %+v, %v", fit, r, err)
				}
			}
			g, err := GoodnessOf(fit.Law, log, 100)
			if err == nil && !(g.PAndersonDarling > 0 && g.PAndersonDarling <= 1 && g.PKolmogorovSmirnov > 0 && g.PKolmogorovSmirnov <= 1) {
				t.Fatalf("%+v: %+v", fit, g)
			}
		}
	})
}
