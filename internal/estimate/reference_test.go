package estimate

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
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
func (r row) hold(t *testing.T, got, tolerance float64) {
	t.Helper()
	held := 0
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

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func whole(t *testing.T, text string) int {
	t.Helper()
	v, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func numbers(t *testing.T, text string) []float64 {
	t.Helper()
	var list []float64
	for _, field := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,[]", r) }) {
		list = append(list, number(t, field))
	}
	return list
}

// Certified values of the NIST Statistical Reference Datasets: 1e-12 for means and
// standard deviations, 1e-8 for NumAcc4's and for the autocorrelation, as the table says.
func TestCertifiedValues(t *testing.T) {
	for _, r := range rows(t, "08a_nist_strd.csv") {
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
		r.hold(t, got, relative*math.Abs(number(t, r["published_value"])))
	}
}

func TestReferenceIntervals(t *testing.T) {
	for _, r := range rows(t, "08b_intervals.csv") {
		level := number(t, r["level"])
		r.hold(t, intervalFigure(t, r, level), number(t, r["tolerance"]))
	}
}

func intervalFigure(t *testing.T, r row, level float64) float64 {
	kind, _, _ := strings.Cut(r["case_id"], "-")
	switch kind {
	case "CI":
		return ofInterval(tInterval(t, r, level), r["quantity"])
	case "T":
		return StudentQuantile(whole(t, strings.TrimPrefix(r["data"], "df=")), level)
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
		now := Of(numbers(t, r["data"]), level)
		if r["case_id"] == "NREP-REL" {
			return float64(NeededRelative(now, 0.10, level))
		}
		return float64(Needed(now, 0.10, level))
	}
	return math.NaN()
}

func tInterval(t *testing.T, r row, level float64) Interval {
	if r["case_id"] == "CI-NIST" {
		return Of(values(t, "heat_flow_meter"), level)
	}
	a, b, _ := strings.Cut(r["data"], ";")
	return Paired(numbers(t, strings.TrimPrefix(a, "A")), numbers(t, strings.TrimPrefix(b, " B")), level)
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
