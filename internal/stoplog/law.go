package stoplog

import "math"

// Kind names a family of laws with the word of the scenario format.
type Kind string

// The families that can be fitted.
const (
	ExponentialKind Kind = "exponential"
	WeibullKind     Kind = "weibull"
	GammaKind       Kind = "gamma"
	LognormalKind   Kind = "lognormal"
)

// Kinds are all families, simple ones first.
var Kinds = []Kind{ExponentialKind, WeibullKind, GammaKind, LognormalKind}

// Law is a fitted law of positive values.
type Law interface {
	Kind() Kind
	// Parameters are its own parameters in the order in which they are named in books.
	Parameters() []Parameter
	Mean() float64
	SD() float64
	// LogDensity is ln f(x), LogSurvival is ln P(X > x), for x above 0.
	LogDensity(x float64) float64
	LogSurvival(x float64) float64
	// Quantile is the value that the law stays below with probability p, 0 < p < 1.
	Quantile(p float64) float64
}

// Parameter is a parameter of a law with its name.
type Parameter struct {
	Name  string
	Value float64
}

// CV is the coefficient of variation, standard deviation / mean.
func CV(law Law) float64 { return law.SD() / law.Mean() }

// Below is P(X ≤ x | X > above): the share of logged values that are at most x.
func Below(law Law, x, above float64) float64 {
	if x <= above {
		return 0
	}
	ln := law.LogSurvival(x)
	if above > 0 {
		ln -= law.LogSurvival(above)
	}
	return -math.Expm1(min(ln, 0))
}

// LogLikelihood is that of a log under a law: densities of what ended, chances of
// lasting at least so long of what is open, each given that it passed its threshold.
func LogLikelihood(law Law, log []Observation) float64 {
	sum := 0.0
	above, passed := 0.0, 0.0 // most logs have one threshold: it is worked out once
	for _, o := range log {
		if o.Open {
			sum += law.LogSurvival(o.Value)
		} else {
			sum += law.LogDensity(o.Value)
		}
		if o.Above != above {
			above, passed = o.Above, 0
			if above > 0 {
				passed = law.LogSurvival(above)
			}
		}
		sum -= passed
	}
	return sum
}
