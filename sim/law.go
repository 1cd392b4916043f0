package sim

import "tuckline/sim/internal/draw"

// Law is the law of a random value: fixed, or by a distribution. Its unit is
// that of the field that holds it; durations are in microseconds. The zero Law
// means "not given". Laws cannot be changed, only made by the functions below,
// which refuse impossible parameters in plain words.
type Law = draw.Law

// Weighted is one value of an empirical law with its share.
type Weighted = draw.Weighted

// Component is one law of a mixture with its share.
type Component = draw.Component

// Fixed is the law of one value, which must be finite and not negative.
func Fixed(value float64) Law { return draw.Fixed(value) }

// Exponential is the law with cv 1 and no memory.
func Exponential(mean float64) (Law, error) { return draw.Exponential(mean) }

// Erlang is the sum of k equal exponential stages, 1 to 1,000,000; its cv is 1/√k.
func Erlang(mean float64, k int) (Law, error) { return draw.Erlang(mean, k) }

// Gamma is the gamma law by mean and cv (0.001 to 20).
func Gamma(mean, cv float64) (Law, error) { return draw.Gamma(mean, cv) }

// Lognormal is the lognormal law by mean and cv (0.001 to 20).
func Lognormal(mean, cv float64) (Law, error) { return draw.Lognormal(mean, cv) }

// Weibull is the Weibull law by mean and cv (0.001 to 20).
func Weibull(mean, cv float64) (Law, error) { return draw.Weibull(mean, cv) }

// WeibullShape is the Weibull law by shape (0.2 to 1250) and scale.
func WeibullShape(shape, scale float64) (Law, error) { return draw.WeibullShape(shape, scale) }

// Normal is the normal law cut at zero; mean and cv (below 1) are those of the law as cut.
func Normal(mean, cv float64) (Law, error) { return draw.Normal(mean, cv) }

// Uniform is the uniform law from low to high.
func Uniform(low, high float64) (Law, error) { return draw.Uniform(low, high) }

// UniformSpread is the uniform law by mean and cv (at most 1/√3 = 0.577).
func UniformSpread(mean, cv float64) (Law, error) { return draw.UniformSpread(mean, cv) }

// Triangular is the triangular law by its lowest, most likely and highest value.
func Triangular(low, likely, high float64) (Law, error) { return draw.Triangular(low, likely, high) }

// Geometric has the values step, 2 step, 3 step …; mean is at least step.
func Geometric(mean, step float64) (Law, error) { return draw.Geometric(mean, step) }

// Empirical takes each value with its weight; the weights add to 1.
func Empirical(values []Weighted) (Law, error) { return draw.Empirical(values) }

// EmpiricalSample takes each of the observed values with the same weight.
func EmpiricalSample(values []float64) (Law, error) { return draw.EmpiricalSample(values) }

// Mixture draws from one of the laws, chosen by weight; the weights add to 1.
func Mixture(parts []Component) (Law, error) { return draw.Mixture(parts) }
