package sim_test

import (
	"fmt"
	"math"
	"testing"

	"tuckline/sim"
)

// Every law of the scenario format can be made from outside and has the mean and
// the cv it was asked for.
func TestLawsFromOutside(t *testing.T) {
	type made struct {
		law sim.Law
		err error
	}
	of := func(l sim.Law, err error) made { return made{l, err} }
	for kind, c := range map[string]struct {
		made     made
		mean, cv float64
	}{
		"fixed":       {made{law: sim.Fixed(5)}, 5, 0},
		"exponential": {of(sim.Exponential(5)), 5, 1},
		"erlang":      {of(sim.Erlang(5, 4)), 5, 0.5},
		"gamma":       {of(sim.Gamma(5, 0.7)), 5, 0.7},
		"lognormal":   {of(sim.Lognormal(5, 0.7)), 5, 0.7},
		"weibull":     {of(sim.Weibull(5, 0.7)), 5, 0.7},
		"normal":      {of(sim.Normal(5, 0.7)), 5, 0.7},
		"uniform":     {of(sim.Uniform(2, 8)), 5, math.Sqrt(3) / 5},
		"triangular":  {of(sim.Triangular(2, 5, 8)), 5, math.Sqrt(1.5) / 5},
		"geometric":   {of(sim.Geometric(5, 1)), 5, math.Sqrt(0.8)},
		"empirical":   {of(sim.Empirical([]sim.Weighted{{Value: 4, Weight: 0.5}, {Value: 6, Weight: 0.5}})), 5, 0.2},
		"mixture":     {of(sim.Mixture([]sim.Component{{Weight: 0.5, Law: sim.Fixed(4)}, {Weight: 0.5, Law: sim.Fixed(6)}})), 5, 0.2},
	} {
		l := c.made.law
		if c.made.err != nil {
			t.Errorf("%s: %v", kind, c.made.err)
		}
		if l.Kind() != kind || math.Abs(l.Mean()-c.mean) > 1e-9 || math.Abs(l.CV()-c.cv) > 1e-9 {
			t.Errorf("%s came out as %s with mean %g and cv %g, want %g and %g", kind, l.Kind(), l.Mean(), l.CV(), c.mean, c.cv)
		}
	}
	weibull, err := sim.WeibullShape(1, 5)
	if err != nil || math.Abs(weibull.Mean()-5) > 1e-12 || math.Abs(weibull.CV()-1) > 1e-12 {
		t.Errorf("weibull with shape 1 is not exponential: %s, %v", weibull, err)
	}
	uniform, err := sim.UniformSpread(5, math.Sqrt(3)/5)
	if err != nil || uniform.String() != "uniform, 2 to 8" {
		t.Errorf("uniform by mean and cv is %s, %v", uniform, err)
	}
	sample, err := sim.EmpiricalSample([]float64{4, 6})
	if err != nil || sample.Mean() != 5 {
		t.Errorf("a sample of 4 and 6 is %s, %v", sample, err)
	}
}

func ExampleLognormal() {
	repair, err := sim.Lognormal(90, 0.8)
	fmt.Println(repair, err)
	_, err = sim.Lognormal(-90, 0)
	fmt.Println(err)
	// Output:
	// lognormal, mean 90, cv 0.8 <nil>
	// mean must be a number greater than 0
	// the cv of a lognormal law must be from 0.001 to 20; it is 0; for no spread write the bare value
}
