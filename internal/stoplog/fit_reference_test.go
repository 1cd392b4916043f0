package stoplog

import (
	"math"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/reference"
)

// drawsForTables keeps the chance of the 1 % value of A² of an exponential law, the
// least certain of the table, within about 0.016 (standard error).
const drawsForTables = 100_000

func TestReferenceGoodnessOfFit(t *testing.T) {
	null := map[string][]Distances{}
	goodness := map[string]Goodness{}
	for _, r := range reference.Table(t, "testdata/08f_goodness_of_fit.csv") {
		id, tolerance := r["case_id"], r.Number(t, "tolerance")
		switch {
		case strings.Contains(id, "-KNOWN-"):
			r.Hold(t, known(t, r), tolerance)
		case strings.HasPrefix(id, "GOF-"):
			if _, ok := goodness[id]; !ok {
				goodness[id] = goodnessOfCase(t, r)
			}
			r.Hold(t, ofGoodness(goodness[id], r["quantity"]), tolerance)
		default:
			if _, ok := null[id]; !ok {
				null[id] = nullOfCase(t, r)
			}
			r.Hold(t, critical(t, r, null[id]), tolerance)
		}
	}
}

func alphaOf(t *testing.T, r reference.Row) float64 {
	return reference.Number(t, strings.TrimPrefix(r["quantity"], "critical value alpha="))
}

func known(t *testing.T, r reference.Row) float64 {
	if r["test"] == "Anderson-Darling" {
		return CriticalKnown(AndersonDarlingKnown, alphaOf(t, r))
	}
	return CriticalKnown(KolmogorovKnown, alphaOf(t, r))
}

// goodnessOfCase takes 10,000 draws: a standard error of 0.005 at most, a quarter of the tolerance.
func goodnessOfCase(t *testing.T, r reference.Row) Goodness {
	log := Complete(reference.Numbers(t, r["n_or_data"]))
	fit, err := FitLaw(Kind(strings.ToLower(r["distribution"])), log)
	if err != nil {
		t.Fatal(err)
	}
	g, err := GoodnessOf(fit.Law, log, 10_000)
	if err != nil || g.Failed > 0 {
		t.Fatalf("%s: %d failed, %v", r, g.Failed, err)
	}
	return g
}

func ofGoodness(g Goodness, quantity string) float64 {
	switch quantity {
	case "A2":
		return g.AndersonDarling
	case "D":
		return g.KolmogorovSmirnov
	case "bootstrap_p_A2":
		return g.PAndersonDarling
	case "bootstrap_p_D":
		return g.PKolmogorovSmirnov
	}
	return math.NaN()
}

// nullOfCase draws logs of 100 values, as the table does. A normal law is the
// lognormal one seen through the logarithm; the ranks are the same.
func nullOfCase(t *testing.T, r reference.Row) []Distances {
	law := map[string]Law{"exponential": Exponential{1}, "Weibull": Weibull{1, 1}, "normal": Lognormal{0, 1}}[r["distribution"]]
	null, err := NullDistances(law, make([]Observation, 100), drawsForTables)
	if err != nil {
		t.Fatal(err)
	}
	return null
}

// critical is the quantile of the modified statistic.
func critical(t *testing.T, r reference.Row, null []Distances) float64 {
	modified := map[string]func(d Distances) float64{
		"(1+0.6/n) A2":                    func(d Distances) float64 { return (1 + 0.6/100) * d.AndersonDarling },
		"(1+0.2/sqrt n) A2":               func(d Distances) float64 { return (1 + 0.2/10) * d.AndersonDarling },
		"(sqrt n - 0.01 + 0.85/sqrt n) D": func(d Distances) float64 { return (10 - 0.01 + 0.085) * d.KolmogorovSmirnov },
	}[r["modification"]]
	if modified == nil {
		t.Fatalf("%s: unknown modification %s", r, r["modification"])
	}
	values := make([]float64, len(null))
	for i, d := range null {
		values[i] = modified(d)
	}
	slices.Sort(values)
	return values[int(math.Ceil((1-alphaOf(t, r))*float64(len(values))))-1]
}
