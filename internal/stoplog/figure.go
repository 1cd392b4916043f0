package stoplog

import "math"

// figure is something of a law that an interval is given for. coordinate makes it
// a number that may take any value, free is the other coordinate of the law, and
// with gives the law that has both.
type figure struct {
	name string
	// alone says that the law has no other coordinate.
	alone            bool
	coordinate, free float64
	back             func(x float64) float64
	with             func(x, free float64) Law
}

func figuresOf(law Law) []figure {
	same := func(x float64) float64 { return x }
	switch l := law.(type) {
	case Exponential:
		return []figure{{"mean", true, math.Log(l.Average), 0, math.Exp, func(x, _ float64) Law { return Exponential{math.Exp(x)} }}}
	case Weibull:
		shape, scale := math.Log(l.Shape), math.Log(l.Scale)
		return []figure{
			{"shape", false, shape, scale, math.Exp, func(x, free float64) Law { return Weibull{math.Exp(x), math.Exp(free)} }},
			{"scale", false, scale, shape, math.Exp, func(x, free float64) Law { return Weibull{math.Exp(free), math.Exp(x)} }},
			{"mean", false, math.Log(l.Mean()), shape, math.Exp, func(x, free float64) Law {
				k := math.Exp(free)
				return Weibull{k, math.Exp(x) / math.Gamma(1+1/k)}
			}},
		}
	case Gamma:
		shape, mean := math.Log(l.Shape), math.Log(l.Mean())
		return []figure{
			{"shape", false, shape, mean, math.Exp, func(x, free float64) Law { return gammaAt([]float64{x, free}) }},
			{"scale", false, math.Log(l.Scale), shape, math.Exp, func(x, free float64) Law { return Gamma{math.Exp(free), math.Exp(x)} }},
			{"mean", false, mean, shape, math.Exp, func(x, free float64) Law { return gammaAt([]float64{free, x}) }},
		}
	case Lognormal:
		sigma := math.Log(l.Sigma)
		return []figure{
			{"mu", false, l.Mu, sigma, same, func(x, free float64) Law { return lognormalAt([]float64{x, free}) }},
			{"sigma", false, sigma, l.Mu, math.Exp, func(x, free float64) Law { return lognormalAt([]float64{free, x}) }},
			{"mean", false, math.Log(l.Mean()), sigma, math.Exp, func(x, free float64) Law {
				s := math.Exp(free)
				return Lognormal{x - s*s/2, s}
			}},
		}
	}
	return nil
}
