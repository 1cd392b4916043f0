package stoplog

import (
	"math"

	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
)

// farthest is how far a coordinate may run from its start before it has run away:
// a factor of 20,000 where it is a logarithm.
const farthest = 10

// leastGain is what a step must promise, in units of the log-likelihood, for another
// to follow: the rounding of long sums leaves about a tenth of it, a standard error
// is 50 million times as much.
const leastGain = 1e-8

// climb finds the most likely law in coordinates that may take any value: Nelder and
// Mead's simplex from the start, then Newton's method on the summit.
func climb(at func(x []float64) Law, start []float64, log []Observation) (Law, error) {
	height := func(x []float64) float64 {
		for i := range x {
			if !(math.Abs(x[i]-start[i]) <= farthest) {
				return math.Inf(1)
			}
		}
		if l := LogLikelihood(at(x), log); !math.IsNaN(l) {
			return -l
		}
		return math.Inf(1)
	}
	near, err := simplex(height, start)
	if err != nil {
		return nil, err
	}
	summit, ok := newton(height, near)
	if !ok {
		return nil, ErrNoMaximum
	}
	return at(summit), nil
}

// simplex is Nelder and Mead's search for a minimum.
func simplex(height func(x []float64) float64, start []float64) ([]float64, error) {
	settings := &optimize.Settings{
		MajorIterations: 4000,
		Converger:       &optimize.FunctionConverge{Absolute: 1e-9, Iterations: 30},
	}
	found, err := optimize.Minimize(optimize.Problem{Func: height}, start, settings, &optimize.NelderMead{SimplexSize: 0.3})
	if found == nil || err != nil && math.IsInf(found.F, 0) {
		return nil, ErrNoMaximum
	}
	return found.X, nil
}

// newton goes from near a minimum to it. ok is false if there is none: the surface
// is not curved upwards, or the steps do not come to rest.
func newton(height func(x []float64) float64, x []float64) (summit []float64, ok bool) {
	n := len(x)
	curve := mat.NewSymDense(n, nil)
	for range 20 {
		slope := fd.Gradient(nil, height, x, &fd.Settings{Formula: fd.Central})
		fd.Hessian(curve, height, x, nil)
		var factor mat.Cholesky
		if !finite(slope) || !finite(curve.RawSymmetric().Data) || !factor.Factorize(curve) {
			return nil, false
		}
		step := mat.NewVecDense(n, nil)
		if err := factor.SolveVecTo(step, mat.NewVecDense(n, slope)); err != nil {
			return nil, false
		}
		longest := mat.Norm(step, math.Inf(1))
		for i := range x {
			x[i] -= step.AtVec(i) / max(1, 2*longest)
		}
		if mat.Dot(step, mat.NewVecDense(n, slope)) < leastGain {
			return x, true
		}
	}
	return nil, false
}

func finite(values []float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// gammaAt reads ln shape and ln mean, which hardly disturb each other.
func gammaAt(x []float64) Law {
	shape := math.Exp(x[0])
	return Gamma{shape, math.Exp(x[1]) / shape}
}

// lognormalAt reads mu and ln sigma.
func lognormalAt(x []float64) Law { return Lognormal{x[0], math.Exp(x[1])} }

// gammaStart and lognormalStart begin with what the values would give if all had
// ended and nothing were missing.
func gammaStart(log []Observation) []float64 {
	l := plainLognormal(log)
	mean := 0.0
	for _, o := range log {
		mean += o.Value / float64(len(log))
	}
	shape := 1 / max(math.Expm1(l.Sigma*l.Sigma), 1e-4)
	return []float64{math.Log(max(shape, 0.1)), math.Log(mean)}
}

func lognormalStart(log []Observation) []float64 {
	l := plainLognormal(log)
	return []float64{l.Mu, math.Log(max(l.Sigma, 1e-3))}
}
