package draw

import (
	"math"
	"testing"
)

func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	of := func(_ Law, err error) error { return err }
	mean := "mean must be a number greater than 0"
	for _, c := range []struct {
		err  error
		want string
	}{
		{of(Exponential(0)), mean},
		{of(Exponential(-1)), mean},
		{of(Exponential(nan)), mean},
		{of(Exponential(inf)), mean},
		{of(Erlang(1, 0)), "k is the number of stages, a whole number from 1 to 1000000; it is 0"},
		{of(Erlang(nan, -2)), mean + "\nk is the number of stages, a whole number from 1 to 1000000; it is -2"},
		{of(Gamma(1, 0)), "the cv of a gamma law must be from 0.001 to 20; it is 0; for no spread write the bare value"},
		{of(Gamma(0, nan)), mean + "\nthe cv of a gamma law must be from 0.001 to 20; it is NaN"},
		{of(Lognormal(1, 21)), "the cv of a lognormal law must be from 0.001 to 20; it is 21"},
		{of(Weibull(1, -0.5)), "the cv of a weibull law must be from 0.001 to 20; it is -0.5; for no spread write the bare value"},
		{of(WeibullShape(0, 0)), "shape must be from 0.2 to 1250\nscale must be a number greater than 0"},
		{of(WeibullShape(nan, 1)), "shape must be from 0.2 to 1250"},
		{of(Normal(1, 1)), "the cv of a normal, cut at zero, law must be from 0.001 to 0.999; it is 1"},
		{of(Uniform(-1, 2)), "low must be a number, 0 or more"},
		{of(Uniform(nan, nan)), "low must be a number, 0 or more\nhigh must be a number greater than 0"},
		{of(Uniform(2, 2)), "low must be less than high; for one value only write the bare value"},
		{of(UniformSpread(1, 0.58)), "the cv of a uniform law must be from 0.001 to 0.577; it is 0.58"},
		{of(Triangular(1, 0.5, 2)), "the order must be low, likely, high: likely not below low nor above high, and low less than high"},
		{of(Triangular(1, 3, 2)), "the order must be low, likely, high: likely not below low nor above high, and low less than high"},
		{of(Triangular(1, 1, 1)), "the order must be low, likely, high: likely not below low nor above high, and low less than high"},
		{of(Triangular(0, nan, 2)), "likely must be a number, 0 or more"},
		{of(Geometric(1, 2)), "mean must be at least one step, because the shortest value is one step"},
		{of(Geometric(1, 0)), "step must be a number greater than 0"},
		{of(Empirical(nil)), "at least one entry is needed"},
		{of(EmpiricalSample(nil)), "at least one entry is needed"},
		{of(Empirical([]Weighted{{1, 0.5}, {2, 0.4}})), "the weights must add to 1; they add to 0.9"},
		{of(Empirical([]Weighted{{1, 1.5}, {2, -0.5}})), "every weight must be greater than 0; one is -0.5"},
		{of(Empirical([]Weighted{{1, nan}})), "every weight must be greater than 0; one is NaN"},
		{of(Empirical([]Weighted{{-1, 1}})), "a value must be a number, 0 or more"},
		{of(Mixture(nil)), "at least one entry is needed"},
		{of(Mixture([]Component{{0.7, Law{}}, {0.2, Fixed(1)}})), "part 1 of the mixture has no law\nthe weights must add to 1; they add to 0.9"},
	} {
		if c.err == nil {
			t.Errorf("nothing was refused; want %q", c.want)
		} else if got := c.err.Error(); got != c.want {
			t.Errorf("got  %q\nwant %q", got, c.want)
		}
	}
}

// Three thirds written with three digits do not add to 1, with seven they do.
func TestWeightsOfThirds(t *testing.T) {
	if _, err := Empirical([]Weighted{{1, 0.333}, {2, 0.333}, {3, 0.333}}); err == nil {
		t.Error("0.999 was taken for 1")
	}
	l := must(t)(Empirical([]Weighted{{1, 0.3333333}, {2, 0.3333333}, {3, 0.3333333}}))
	if got := l.Mean(); math.Abs(got-2) > 1e-15 {
		t.Errorf("mean %g, want 2", got)
	}
	if got := l.Quantile(highest); got != 3 {
		t.Errorf("the last value is %g, want 3", got)
	}
}

func TestText(t *testing.T) {
	ok := must(t)
	for _, c := range []struct {
		law  Law
		want string
	}{
		{Law{}, "not given"},
		{Fixed(4), "fixed, 4"},
		{Fixed(4).Shift(1).Scale(60), "fixed, 300"},
		{ok(Exponential(90)), "exponential, mean 90"},
		{ok(Erlang(90, 3)), "erlang, mean 90, k 3"},
		{ok(Gamma(90, 0.8)), "gamma, mean 90, cv 0.8"},
		{ok(Lognormal(90, 0.8)), "lognormal, mean 90, cv 0.8"},
		{ok(Lognormal(1.5, 0.8)).Shift(0.5).Scale(60), "lognormal, mean 90, cv 0.8, plus 30"},
		{ok(Weibull(90, 0.8)), "weibull, mean 90, cv 0.8"},
		{ok(Normal(90, 0.2)), "normal, mean 90, cv 0.2"},
		{ok(Uniform(3, 9)), "uniform, 3 to 9"},
		{ok(Triangular(1, 2, 5)), "triangular, low 1, likely 2, high 5"},
		{ok(Geometric(10, 1)).Scale(2), "geometric, mean 20, step 2"},
		{ok(Empirical([]Weighted{{6, 0.5}, {8, 0.5}})), "empirical, 2 values, mean 7, cv 0.1429"},
		{ok(Mixture([]Component{{0.5, Fixed(6)}, {0.5, Fixed(8)}})), "mixture of 2 laws, mean 7, cv 0.1429"},
	} {
		if got := c.law.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
