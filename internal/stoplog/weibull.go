package stoplog

import "math"

// Weibull is the law with P(X > x) = exp(−(x/Scale)^Shape).
type Weibull struct{ Shape, Scale float64 }

// Kind is "weibull".
func (Weibull) Kind() Kind { return WeibullKind }

// Parameters are shape and scale.
func (w Weibull) Parameters() []Parameter { return []Parameter{{"shape", w.Shape}, {"scale", w.Scale}} }

// Mean is Scale · Γ(1 + 1/Shape).
func (w Weibull) Mean() float64 { return w.Scale * math.Gamma(1+1/w.Shape) }

// SD is Scale · √(Γ(1 + 2/Shape) − Γ(1 + 1/Shape)²).
func (w Weibull) SD() float64 {
	first := math.Gamma(1 + 1/w.Shape)
	return w.Scale * math.Sqrt(max(math.Gamma(1+2/w.Shape)-first*first, 0))
}

// LogDensity is ln f(x).
func (w Weibull) LogDensity(x float64) float64 {
	z := math.Log(x / w.Scale)
	return math.Log(w.Shape/w.Scale) + (w.Shape-1)*z - math.Exp(w.Shape*z)
}

// LogSurvival is −(x/Scale)^Shape.
func (w Weibull) LogSurvival(x float64) float64 { return -math.Pow(x/w.Scale, w.Shape) }

// Quantile is Scale · (−ln(1 − p))^(1/Shape).
func (w Weibull) Quantile(p float64) float64 {
	return w.Scale * math.Pow(-math.Log1p(-p), 1/w.Shape)
}

// Exponential is the law with P(X > x) = exp(−x/Average).
type Exponential struct{ Average float64 }

// Kind is "exponential".
func (Exponential) Kind() Kind { return ExponentialKind }

// Parameters is the mean alone.
func (e Exponential) Parameters() []Parameter { return []Parameter{{"mean", e.Average}} }

// Mean is Average.
func (e Exponential) Mean() float64 { return e.Average }

// SD is the mean.
func (e Exponential) SD() float64 { return e.Average }

// LogDensity is ln f(x).
func (e Exponential) LogDensity(x float64) float64 { return -math.Log(e.Average) - x/e.Average }

// LogSurvival is −x/Average.
func (e Exponential) LogSurvival(x float64) float64 { return -x / e.Average }

// Quantile is −Average · ln(1 − p).
func (e Exponential) Quantile(p float64) float64 { return -e.Average * math.Log1p(-p) }
