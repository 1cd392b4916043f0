package stoplog

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Lognormal is the law whose logarithm is normal with mean Mu and standard deviation Sigma.
type Lognormal struct{ Mu, Sigma float64 }

// Kind is "lognormal".
func (Lognormal) Kind() Kind { return LognormalKind }

// Parameters are mu and sigma.
func (l Lognormal) Parameters() []Parameter { return []Parameter{{"mu", l.Mu}, {"sigma", l.Sigma}} }

// Mean is exp(Mu + Sigma²/2).
func (l Lognormal) Mean() float64 { return math.Exp(l.Mu + l.Sigma*l.Sigma/2) }

// SD is Mean · √(exp(Sigma²) − 1).
func (l Lognormal) SD() float64 { return l.Mean() * math.Sqrt(math.Expm1(l.Sigma*l.Sigma)) }

func (l Lognormal) standard(x float64) float64 { return (math.Log(x) - l.Mu) / l.Sigma }

// LogDensity is ln f(x).
func (l Lognormal) LogDensity(x float64) float64 {
	z := l.standard(x)
	return -z*z/2 - math.Log(x*l.Sigma) - math.Log(2*math.Pi)/2
}

// farTail is where erfc comes near to the smallest numbers and a series takes over.
const farTail = 30

// LogSurvival is ln(1 − Φ(z)) with z = (ln x − Mu)/Sigma. Far out it is the first terms of the
// asymptotic series, ln φ(z) − ln z − 1/z² (Abramowitz and Stegun 26.2.12).
func (l Lognormal) LogSurvival(x float64) float64 {
	switch z := l.standard(x); {
	case z > farTail:
		return -z*z/2 - math.Log(z*math.Sqrt(2*math.Pi)) + math.Log1p(-1/(z*z))
	case z < 0:
		return math.Log1p(-math.Erfc(-z/math.Sqrt2) / 2)
	default:
		return math.Log(math.Erfc(z/math.Sqrt2) / 2)
	}
}

// Quantile is exp(Mu + Sigma · Φ⁻¹(p)).
func (l Lognormal) Quantile(p float64) float64 {
	return math.Exp(l.Mu + l.Sigma*distuv.UnitNormal.Quantile(p))
}
