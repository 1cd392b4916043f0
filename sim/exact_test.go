package sim_test

import (
	"cmp"
	"encoding/json"
	"hash/fnv"
	"math"
	"os"
	"path/filepath"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/sim"
)

// exactCase is a line whose long-run figures are known from outside. Times of the cases are in
// seconds.
type exactCase struct {
	name string
	// row is its name in cases.json where that is another.
	row  string
	line sim.Line
	// warmUp is at least 20 times the longest mean repair or busy period.
	warmUp, measure sim.Micros
	replications    int
	figures         []exactFigure
}

// exactFigure is one figure of a case, by its name in testdata/exact/cases.json.
type exactFigure struct {
	quantity string
	// index counts where a quantity has several values.
	index int
	of    func(*sim.Record) float64
	// allowance is how far the line is from the case by its nature; the test prints it.
	allowance float64
}

// exactValue is a row of testdata/exact/cases.json.
type exactValue struct {
	Name, Quantity, Source, Known string
	Values                        []float64
}

// exactValues reads the values with their sources.
func exactValues(t *testing.T) func(name, quantity string) []float64 {
	data, err := os.ReadFile(filepath.Join("..", "testdata", "exact", "cases.json"))
	if err != nil {
		t.Fatal(err)
	}
	var all []exactValue
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	return func(name, quantity string) []float64 {
		t.Helper()
		for _, v := range all {
			if v.Name == name && v.Quantity == quantity && v.Source != "" {
				return v.Values
			}
		}
		t.Fatalf("no value with a source for %s of %s", quantity, name)
		return nil
	}
}

// seedOf is the hash of a case name, so that nobody chooses a seed.
func seedOf(name string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(name))
	return h.Sum64()
}

// TestExactValues runs every case and compares 99 % t intervals over replications with the
// value. A miss is repeated once with nine times the replications and the seed of another name.
func TestExactValues(t *testing.T) {
	value := exactValues(t)
	for _, c := range exactCases(t) {
		t.Run(c.name, func(t *testing.T) {
			missed := c.misses(t, value, c.name, 1)
			if missed > 0 && c.misses(t, value, c.name+", second", 9) > 0 {
				t.Error("outside again with nine times the replications")
			}
		})
	}
}

// misses runs the case and counts the figures whose interval leaves the value out.
func (c *exactCase) misses(t *testing.T, value func(name, quantity string) []float64, seed string, times int) int {
	samples := c.samples(t, seed, times*c.replications)
	missed := 0
	for i, f := range c.figures {
		mean, half := interval(samples[i])
		want := value(cmp.Or(c.row, c.name), f.quantity)[f.index]
		mark := ""
		if math.Abs(mean-want) > half+f.allowance {
			missed++
			mark = " OUTSIDE"
		}
		t.Logf("%s[%d]: %.6f ± %.6f, exact %.6f, allowance %.1g%s", f.quantity, f.index, mean, half, want, f.allowance, mark)
		if half > 0.01*math.Abs(want) {
			t.Errorf("%s: half-width %.2g is more than 1 %% of %.6g; run longer", f.quantity, half, want)
		}
	}
	return missed
}

func (c *exactCase) samples(t *testing.T, seed string, n int) [][]float64 {
	e := compile(t, c.line).NewEngine()
	samples := make([][]float64, len(c.figures))
	for r := range n {
		rec := e.Run(sim.Options{Seed: seedOf(seed), Replication: r, WarmUp: c.warmUp, Measure: c.measure})
		if rec.End != sim.HorizonReached {
			t.Fatalf("the run ended with %s", rec.End)
		}
		for i, f := range c.figures {
			samples[i] = append(samples[i], f.of(&rec))
		}
	}
	return samples
}

// interval is the mean with the half-width of its 99 % t interval.
func interval(x []float64) (mean, half float64) {
	mean, sd := stat.MeanStdDev(x, nil)
	n := float64(len(x))
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: n - 1}.Quantile(0.995)
	return mean, t * sd / math.Sqrt(n)
}
