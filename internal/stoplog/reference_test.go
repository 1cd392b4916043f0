package stoplog

import (
	"math"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/reference"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.15g, want %.15g ± %g", what, got, want, tolerance)
	}
}

// logOf is the log of a case of maximum likelihood.
func logOf(t *testing.T, r reference.Row) []Observation {
	t.Helper()
	log := Complete(reference.Numbers(t, r["data"]))
	switch r["censoring"] {
	case "none":
	case "10 units right-censored at 500":
		log = slices.Concat(log, slices.Repeat([]Observation{{Value: 500, Open: true}}, 10))
	default:
		t.Fatalf("%s: unknown censoring %s", r, r["censoring"])
	}
	return log
}

func TestReferenceMaximumLikelihood(t *testing.T) {
	for _, r := range reference.Table(t, "testdata/08e_mle.csv") {
		fit, err := FitLaw(Kind(strings.ToLower(r["distribution"])), logOf(t, r))
		if err != nil {
			t.Errorf("%s: %v", r, err)
			continue
		}
		var got float64
		switch r["quantity"] {
		case "loglik":
			got = fit.LogLikelihood
		case "AIC":
			got = fit.AIC
		case "mean":
			got = fit.Law.Mean()
		case "sd":
			got = fit.Law.SD()
		default:
			got = parameter(fit.Law, strings.TrimSuffix(r["quantity"], "_mle"))
		}
		r.Hold(t, got, r.Number(t, "tolerance"))
	}
}

func parameter(law Law, name string) float64 {
	for _, p := range law.Parameters() {
		if p.Name == name {
			return p.Value
		}
	}
	return math.NaN()
}
