package stoplog

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// row is one line of a table of reference values; the source of each value and how
// it is known stand in the same line.
type row map[string]string

// rows reads a table of testdata.
func rows(t *testing.T, name string) []row {
	t.Helper()
	file, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var table []row
	for _, line := range lines[1:] {
		r := row{}
		for i, column := range lines[0] {
			r[column] = line[i]
		}
		table = append(table, r)
	}
	return table
}

func (r row) String() string { return r["case_id"] + " " + r["quantity"] }

// hold compares a figure with the published and with the recomputed value.
func (r row) hold(t *testing.T, got float64) {
	t.Helper()
	held, tolerance := 0, number(t, r["tolerance"])
	for _, column := range []string{"published_value", "recomputed_value"} {
		if r[column] == "" {
			continue
		}
		near(t, r.String()+", "+column, got, number(t, r[column]), tolerance)
		held++
	}
	if held == 0 {
		t.Errorf("%s: no value to hold it against", r)
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.15g, want %.15g ± %g", what, got, want, tolerance)
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func numbers(t *testing.T, text string) []float64 {
	t.Helper()
	var list []float64
	for _, field := range strings.Fields(text) {
		list = append(list, number(t, field))
	}
	return list
}

// logOf is the log of a case of maximum likelihood.
func logOf(t *testing.T, r row) []Observation {
	t.Helper()
	log := Complete(numbers(t, r["data"]))
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
	for _, r := range rows(t, "08e_mle.csv") {
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
		r.hold(t, got)
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
