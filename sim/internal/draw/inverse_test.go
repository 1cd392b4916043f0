package draw

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// The distribution functions of gonum v0.17 (distuv) lead back from the quantile
// to u. Both tails are compared relative to the smaller of u and 1 − u.
func TestQuantileAgainstDistributionFunctions(t *testing.T) {
	ok := must(t)
	gammaOf := func(mean, cv float64) distribution {
		return distuv.Gamma{Alpha: 1 / (cv * cv), Beta: 1 / (mean * cv * cv)}
	}
	logOf := func(mean, cv float64) distribution {
		s2 := math.Log(1 + cv*cv)
		return distuv.LogNormal{Mu: math.Log(mean) - s2/2, Sigma: math.Sqrt(s2)}
	}
	for _, c := range []struct {
		law  Law
		from distribution
	}{
		{ok(Exponential(90)), distuv.Exponential{Rate: 1.0 / 90}},
		{ok(Erlang(90, 3)), distuv.Gamma{Alpha: 3, Beta: 3.0 / 90}},
		{ok(Erlang(90, 500)), distuv.Gamma{Alpha: 500, Beta: 500.0 / 90}},
		{ok(Gamma(90, 0.05)), gammaOf(90, 0.05)},
		{ok(Gamma(90, 0.7)), gammaOf(90, 0.7)},
		{ok(Gamma(90, 1.4)), gammaOf(90, 1.4)},
		{ok(Gamma(90, 2.5)), gammaOf(90, 2.5)},
		{ok(Gamma(90, 4)), gammaOf(90, 4)},
		{ok(Lognormal(90, 0.1)), logOf(90, 0.1)},
		{ok(Lognormal(90, 1.7)), logOf(90, 1.7)},
		{ok(WeibullShape(0.8, 300)), distuv.Weibull{K: 0.8, Lambda: 300}},
		{ok(WeibullShape(3.6, 300)), distuv.Weibull{K: 3.6, Lambda: 300}},
		{ok(Uniform(0, 7)), distuv.Uniform{Min: 0, Max: 7}},
		{ok(Triangular(0, 2, 5)), distuv.NewTriangle(0, 5, 2, nil)},
	} {
		for _, u := range grid {
			x := c.law.Quantile(u)
			backToU(t, c.law, u, c.from.CDF(x))
		}
	}
}

type distribution interface{ CDF(x float64) float64 }

var grid = []float64{
	lowest, 1e-12, 1e-9, 1e-6, 1e-4, 0.001, 0.01, 0.1, 0.25, 0.3, 0.5, 0.7, 0.75, 0.9, 0.99, 0.999,
	1 - 1e-6, 1 - 1e-9, 1 - 1e-12, highest,
}

// A distribution function near 1 has steps of 1e-16, so the upper end is held to some steps.
func backToU(t *testing.T, l Law, u, back float64) {
	t.Helper()
	allowed := 2e-9 * u
	if u > 0.5 {
		allowed = 2e-9*(1-u) + 4e-16
	}
	if !(math.Abs(back-u) <= allowed) {
		t.Errorf("%s: u = %.17g comes back as %.17g", l, u, back)
	}
}

// The cut normal law by the error function of the standard library: the
// share of the uncut law between 0 and x.
func TestCutNormalQuantile(t *testing.T) {
	for _, cv := range []float64{0.05, 0.3, 0.6, 0.8, 0.95} {
		l := must(t)(Normal(90, cv))
		for _, u := range grid {
			z := l.Quantile(u)/l.b + l.a
			above := math.Erfc(l.a / math.Sqrt2)
			back := (above - math.Erfc(z/math.Sqrt2)) / above
			if !(math.Abs(back-u) <= 1e-12) {
				t.Errorf("%s: u = %.17g comes back as %.17g", l, u, back)
			}
		}
	}
}

// Percentiles as printed in tables of the chi-squared law (gamma with shape half
// the degrees of freedom, scale 2) and of the normal law; from memory.
func TestPrintedPercentiles(t *testing.T) {
	ok := must(t)
	for _, c := range []struct {
		law          Law
		u, want, tol float64
	}{
		{ok(Erlang(10, 5)), 0.95, 18.307, 0.0005},             // chi-squared, 10 degrees
		{ok(Gamma(5, math.Sqrt(2.0/5))), 0.05, 1.145, 0.0005}, // chi-squared, 5 degrees
		{ok(Gamma(1, math.Sqrt(2))), 0.99, 6.635, 0.0005},     // chi-squared, 1 degree
		{ok(Lognormal(math.Exp(0.5), math.Sqrt(math.E-1))), 0.975, math.Exp(1.959964), 1e-5},
		{ok(Exponential(1)), 0.5, 0.693147, 5e-7},
	} {
		if got := c.law.Quantile(c.u); math.Abs(got-c.want) > c.tol {
			t.Errorf("%s: percentile %g is %g, tables say %g", c.law, 100*c.u, got, c.want)
		}
	}
}

// Hand computation: with p = 1/10 the first try succeeds with probability 0.1,
// one of the first two with 0.19, of the first three with 0.271.
func TestGeometricSteps(t *testing.T) {
	l := must(t)(Geometric(20, 2))
	for _, c := range []struct{ u, want float64 }{
		{lowest, 2}, {0.0999, 2}, {0.1001, 4}, {0.1899, 4}, {0.1901, 6}, {0.2709, 6}, {0.2711, 8},
	} {
		if got := l.Quantile(c.u); got != c.want {
			t.Errorf("at %g: %g, want %g", c.u, got, c.want)
		}
	}
	always := must(t)(Geometric(3, 3))
	if got := always.Quantile(highest); got != 3 {
		t.Errorf("with mean and step equal every value is one step, not %g", got)
	}
}

func TestEmpiricalAndMixtureShares(t *testing.T) {
	ok := must(t)
	l := ok(Empirical([]Weighted{{8, 0.25}, {6, 0.5}, {20, 0.25}}))
	for _, c := range []struct{ u, want float64 }{{lowest, 6}, {0.5, 6}, {0.501, 8}, {0.75, 8}, {0.751, 20}, {highest, 20}} {
		if got := l.Quantile(c.u); got != c.want {
			t.Errorf("empirical at %g: %g, want %g", c.u, got, c.want)
		}
	}
	m := ok(Mixture([]Component{{0.25, ok(Uniform(0, 1))}, {0.75, ok(Uniform(10, 13))}}))
	for _, c := range []struct{ u, want float64 }{{0.125, 0.5}, {0.25, 1}, {0.5, 11}, {0.75, 12}} {
		if got := m.Quantile(c.u); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("mixture at %g: %g, want %g", c.u, got, c.want)
		}
	}
}
