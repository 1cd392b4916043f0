package estimate

import (
	"bufio"
	"encoding/json"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// values reads a file of testdata: a line with its source, then a number a line.
func values(t *testing.T, name string) []float64 {
	t.Helper()
	file, err := os.Open("testdata/" + name + ".txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var read []float64
	for lines := bufio.NewScanner(file); lines.Scan(); {
		if strings.HasPrefix(lines.Text(), "#") {
			continue
		}
		v, err := strconv.ParseFloat(lines.Text(), 64)
		if err != nil {
			t.Fatal(err)
		}
		read = append(read, v)
	}
	return read
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.15g, want %.15g ± %g", what, got, want, tolerance)
	}
}

// Certified values of the NIST Statistical Reference Datasets, univariate summary
// statistics. The sets NumAcc are made to break careless sums.
func TestCertifiedMeansAndDeviations(t *testing.T) {
	for _, c := range []struct {
		name     string
		n        int
		mean, sd float64
		relative float64
	}{
		{"lew", 200, -177.435, 277.332168044316, 1e-12},
		{"lottery", 218, 518.958715596330, 291.699727470969, 1e-12},
		{"michelso", 100, 299.852400000000, 0.0790105478190518, 1e-12},
		{"numacc1", 3, 10000002, 1, 1e-12},
		{"numacc2", 1001, 1.2, 0.1, 1e-12},
		{"numacc4", 1001, 10000000.2, 0.1, 1e-8},
	} {
		sample := values(t, c.name)
		got := Of(sample, 0.95)
		if got.N != c.n {
			t.Fatalf("%s: %d values, want %d", c.name, got.N, c.n)
		}
		near(t, c.name+" mean", got.Mean, c.mean, 1e-12*math.Abs(c.mean))
		near(t, c.name+" sd", got.SD, c.sd, c.relative*c.sd)

		band := RunningMean(sample, 0.95)
		last := band[len(band)-1]
		near(t, c.name+" running mean", last.Mean, c.mean, 1e-12*math.Abs(c.mean))
		near(t, c.name+" running sd", last.SD, c.sd, max(c.relative, 1e-11)*c.sd)
	}
}

// NIST/SEMATECH e-Handbook 1.3.5.2, confidence limits for the mean (heat flow meter data).
func TestPublishedInterval(t *testing.T) {
	got := Of(values(t, "heat_flow_meter"), 0.95)
	near(t, "mean", got.Mean, 9.261460, 2e-6)
	near(t, "sd", got.SD, 0.022789, 2e-6)
	near(t, "low", got.Low, 9.258242, 2e-6)
	near(t, "high", got.High, 9.264679, 2e-6)
	if got.N != 195 {
		t.Errorf("n = %d, want 195", got.N)
	}
}

// Law, Simulation Modeling and Analysis, ch. 10: two inventory policies, 90 %.
func TestPublishedPairedInterval(t *testing.T) {
	a := []float64{126.97, 124.31, 126.68, 122.66, 127.23}
	b := []float64{118.21, 120.22, 122.45, 122.68, 119.4}
	got := Paired(a, b, 0.9)
	near(t, "mean", got.Mean, 4.98, 0.005)
	near(t, "low", got.Low, 1.65, 0.01)
	near(t, "high", got.High, 8.31, 0.01)
	if unequal := Paired(a, b[:4], 0.9); unequal != (Interval{}) {
		t.Errorf("samples of different length gave %+v", unequal)
	}
}

// Any table of Student's t.
func TestStudentTable(t *testing.T) {
	for _, c := range []struct {
		degrees int
		p, want float64
	}{{9, 0.95, 1.833}, {4, 0.95, 2.132}, {1, 0.975, 12.706}, {120, 0.995, 2.617}, {9, 0.975, 2.262}} {
		near(t, "t", StudentQuantile(c.degrees, c.p), c.want, 0.0006)
	}
}

func TestTooFewForAnInterval(t *testing.T) {
	if got := Of(nil, 0.95); got != (Interval{}) || got.Given() {
		t.Errorf("no value gave %+v", got)
	}
	if got, want := Of([]float64{7}, 0.95), (Interval{Mean: 7, Low: 7, High: 7, N: 1}); got != want || got.Given() {
		t.Errorf("one value gave %+v, want %+v", got, want)
	}
	if band := RunningMean([]float64{7}, 0.95); len(band) != 0 {
		t.Errorf("one value gave the band %+v", band)
	}
}

// Whatever the sample, JSON can carry the result, the interval contains the mean
// and more confidence is never narrower.
func TestIntervalProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sample := rapid.SliceOfN(rapid.Float64Range(-1e12, 1e12), 0, 40).Draw(t, "sample")
		narrow, wide := Of(sample, 0.9), Of(sample, 0.99)
		if !(narrow.Low <= narrow.Mean && narrow.Mean <= narrow.High && wide.HalfWidth() >= narrow.HalfWidth()) {
			t.Fatalf("%+v within %+v", narrow, wide)
		}
		if _, err := json.Marshal([]any{narrow, RunningMean(sample, 0.9)}); err != nil {
			t.Fatal(err)
		}
		if band := RunningMean(sample, 0.9); len(band) != max(len(sample)-1, 0) {
			t.Fatalf("%d intervals of %d values", len(band), len(sample))
		}
	})
}

// Each entry of the running band is the interval of the values so far.
func TestRunningMeanIsOfTheValuesSoFar(t *testing.T) {
	sample := values(t, "lottery")
	for i, got := range RunningMean(sample, 0.95) {
		want := Of(sample[:i+2], 0.95)
		near(t, "mean", got.Mean, want.Mean, 1e-10)
		near(t, "low", got.Low, want.Low, 1e-9)
		near(t, "high", got.High, want.High, 1e-9)
		if got.N != want.N {
			t.Errorf("n = %d, want %d", got.N, want.N)
		}
	}
}
