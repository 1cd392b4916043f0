package estimate

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/reference"
)

func TestReferenceWarmUp(t *testing.T) {
	for _, r := range reference.Table(t, "testdata/08c_warmup.csv") {
		if strings.HasPrefix(r["case_id"], "WELCH") {
			holdWelch(t, r)
			continue
		}
		cut, ok := MSER5(seriesOf(t, r))
		if !ok {
			t.Fatalf("%s: nothing found", r)
		}
		r.Hold(t, map[string]float64{
			"truncation_in_batches":      float64(cut.Batches),
			"truncation_in_observations": float64(cut.Observations),
			"criterion_at_minimum":       cut.Criterion,
			"criterion_d0":               cut.AtStart,
			"mean_after_truncation":      cut.Mean,
		}[r["quantity"]], r.Number(t, "tolerance"))
	}
}

// seriesOf is the series of a case: a list, or the formula of MSER-2.
func seriesOf(t *testing.T, r reference.Row) []float64 {
	if !strings.HasPrefix(r["series"], "y_i") {
		return reference.Numbers(t, r["series"])
	}
	if r["series"] != "y_i = 5 + 4*0.9^i + 0.2*((7 i) mod 5 - 2), i=0..59" {
		t.Fatalf("%s: unknown formula %s", r, r["series"])
	}
	series := make([]float64, 60)
	for i := range series {
		series[i] = 5 + 4*math.Pow(0.9, float64(i)) + 0.2*float64(7*i%5-2)
	}
	return series
}

func holdWelch(t *testing.T, r reference.Row) {
	var window int
	if _, err := fmt.Sscanf(r["settings"], "window %d:", &window); err != nil {
		t.Fatal(err)
	}
	var replications [][]float64
	for _, text := range strings.Split(r["series"], "],") {
		replications = append(replications, reference.Numbers(t, text))
	}
	got, want := Welch(replications, window), reference.Numbers(t, r["recomputed_value"])
	if len(replications) != 3 || len(got) != len(want) {
		t.Fatalf("%s: %d replications, %d values, want 3 and %d", r, len(replications), len(got), len(want))
	}
	for i := range want {
		near(t, fmt.Sprintf("%s %d", r, i+1), got[i], want[i], r.Number(t, "tolerance"))
	}
}

// The search by the definition: every d on its own, two passes.
func TestMSERByDefinition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		series := rapid.SliceOfN(rapid.Float64Range(-100, 100), 10, 120).Draw(t, "series")
		z := batchMeans(series, 5)
		best, at := math.Inf(1), 0
		for d := 0; d <= len(z)/2; d++ {
			kept := z[d:]
			sum, squares := 0.0, 0.0
			for _, v := range kept {
				sum += v
			}
			for _, v := range kept {
				squares += math.Pow(v-sum/float64(len(kept)), 2)
			}
			if c := squares / float64(len(kept)*len(kept)); c < best*(1-1e-9) {
				best, at = c, d
			}
		}
		got, ok := MSER5(series)
		if !ok || math.Abs(got.Criterion-best) > 1e-9*(1+best) || got.AtHalf != (got.Batches == len(z)/2) {
			t.Fatalf("%+v, want %g at %d", got, best, at)
		}
	})
}

func TestWarmUpOfLittle(t *testing.T) {
	if _, ok := MSER5([]float64{1, 2, 3, 4, 5, 6, 7, 8, 9}); ok {
		t.Error("one batch and a rest gave a truncation")
	}
	flat, ok := MSER5(slices.Repeat([]float64{7}, 23))
	if want := (Truncation{Mean: 7}); !ok || flat != want {
		t.Errorf("a flat series gave %+v", flat)
	}
	rising := make([]float64, 50)
	for i := range rising {
		rising[i] = float64(i)
	}
	if got, _ := MSER5(rising); !got.AtHalf || got.Batches != 5 || got.Observations != 25 {
		t.Errorf("a series that only rises gave %+v", got)
	}
	for _, bad := range [][][]float64{nil, {{1, 2}, {}}, {{1, 2, 3}}} {
		if got := Welch(bad, 3); len(got) != 0 {
			t.Errorf("%v gave %v", bad, got)
		}
	}
	if got := Welch([][]float64{{1, 3}, {3, 5, 9}}, 0); !slices.Equal(got, []float64{2, 4}) {
		t.Errorf("window 0 gave %v", got)
	}
}

func TestLag1OfLittle(t *testing.T) {
	for _, bad := range [][]float64{nil, {3}, {4, 4, 4}} {
		if r, ok := Lag1(bad); ok || r != 0 {
			t.Errorf("%v gave %g", bad, r)
		}
	}
}
