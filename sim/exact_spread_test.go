package sim_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/sim"
)

// The output in the first 20 s of two exponential stations without a place between, new and
// empty at the start: mean and standard deviation over many replications. The interval of the standard
// deviation is the usual one for large samples, with the kurtosis of the sample.
func TestExactSpreadOfOutput(t *testing.T) {
	value := exactValues(t)
	e := compile(t, laws{t}.exponentials([]float64{1, 1}, 0)).NewEngine()
	missed := func(seed string, n int) bool {
		x := make([]float64, n)
		for r := range x {
			rec := e.Run(sim.Options{Seed: seedOf(seed), Replication: r, Measure: 20 * s})
			x[r] = float64(rec.Stations[1].Passed)
		}
		mean, half := interval(x)
		sd := stat.StdDev(x, nil)
		halfSD := distuv.UnitNormal.Quantile(0.995) * sd * math.Sqrt((stat.ExKurtosis(x, nil)+2)/(4*float64(n)))
		wantMean, wantSD := value("VAR-1", "mean_parts in 20 s")[0], value("VAR-1", "sd_parts in 20 s")[0]
		t.Logf("mean %.4f ± %.4f, exact %.4f; sd %.4f ± %.4f, exact %.4f", mean, half, wantMean, sd, halfSD, wantSD)
		if half > 0.01*wantMean || halfSD > 0.01*wantSD {
			t.Error("an interval is wider than 1 %")
		}
		return math.Abs(mean-wantMean) > half || math.Abs(sd-wantSD) > halfSD
	}
	if missed("VAR-1", 40_000) && missed("VAR-1, second", 9*40_000) {
		t.Error("outside again with nine times the replications")
	}
}

// A person's other work takes its share of the time where the line asks for nothing.
func TestElsewhereTakesItsShare(t *testing.T) {
	line := alone(1)
	line.Crews = []sim.Crew{{Name: "fitters", People: 3, ElsewhereShare: 0.3, ElsewhereSpell: 5 * minute}}
	e := compile(t, line).NewEngine()
	missed := func(seed string, n int) bool {
		x := make([]float64, n)
		for r := range x {
			rec := e.Run(sim.Options{Seed: seedOf(seed), Replication: r, Measure: 240_000 * s})
			x[r] = float64(rec.Crews[0].Elsewhere) / float64(3*rec.Window)
		}
		mean, half := interval(x)
		t.Logf("elsewhere %.4f ± %.4f, by the model 0.3", mean, half)
		if half > 0.003 {
			t.Error("the interval is wider than 1 %")
		}
		return math.Abs(mean-0.3) > half
	}
	if missed("elsewhere", 160) && missed("elsewhere, second", 9*160) {
		t.Error("outside again with nine times the replications")
	}
}
