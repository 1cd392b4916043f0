package estimate

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"tuckline/internal/reference"
)

// Certified values of the NIST Statistical Reference Datasets: 1e-12 for means and
// standard deviations, 1e-8 for NumAcc4's and for the autocorrelation, as the table says.
func TestCertifiedValues(t *testing.T) {
	for _, r := range reference.Table(t, "testdata/08a_nist_strd.csv") {
		sample := values(t, strings.ToLower(r["dataset"]))
		relative, got := 1e-12, math.NaN()
		switch r["quantity"] {
		case "mean":
			got = Of(sample, 0.95).Mean
		case "sd_n-1":
			got = Of(sample, 0.95).SD
			if r["dataset"] == "NumAcc4" {
				relative = 1e-8
			}
		case "lag1_autocorrelation":
			got, _ = Lag1(sample)
			relative = 1e-8
		}
		r.Hold(t, got, relative*math.Abs(r.Number(t, "published_value")))
	}
}

func TestReferenceIntervals(t *testing.T) {
	for _, r := range reference.Table(t, "testdata/08b_intervals.csv") {
		level := r.Number(t, "level")
		r.Hold(t, intervalFigure(t, r, level), r.Number(t, "tolerance"))
	}
}

func intervalFigure(t *testing.T, r reference.Row, level float64) float64 {
	kind, _, _ := strings.Cut(r["case_id"], "-")
	switch kind {
	case "CI":
		return ofInterval(tInterval(t, r, level), r["quantity"])
	case "T":
		return StudentQuantile(reference.Whole(t, strings.TrimPrefix(r["data"], "df=")), level)
	case "PROP":
		var hits, n int
		if _, err := fmt.Sscanf(r["data"], "%d rejects in %d", &hits, &n); err != nil {
			t.Fatal(err)
		}
		method, end, _ := strings.Cut(r["quantity"], "_")
		if method == "clopper" {
			return ofInterval(ClopperPearson(hits, n, level), end)
		}
		return ofInterval(Wilson(hits, n, level), end)
	case "NREP":
		now := Of(reference.Numbers(t, r["data"]), level)
		if r["case_id"] == "NREP-REL" {
			return float64(NeededRelative(now, 0.10, level))
		}
		return float64(Needed(now, 0.10, level))
	}
	return math.NaN()
}

func tInterval(t *testing.T, r reference.Row, level float64) Interval {
	if r["case_id"] == "CI-NIST" {
		return Of(values(t, "heat_flow_meter"), level)
	}
	a, b, _ := strings.Cut(r["data"], ";")
	return Paired(reference.Numbers(t, strings.TrimPrefix(a, "A")), reference.Numbers(t, strings.TrimPrefix(b, " B")), level)
}

func ofInterval(i Interval, quantity string) float64 {
	switch quantity {
	case "mean", "mean_difference":
		return i.Mean
	case "sd":
		return i.SD
	case "lower":
		return i.Low
	case "upper":
		return i.High
	}
	return math.NaN()
}
