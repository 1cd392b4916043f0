package stoplog

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// likelyExponential is Σ(value − threshold) / number that ended.
func likelyExponential(log []Observation) (Law, error) {
	sum := 0.0
	for _, o := range log {
		sum += o.Value - o.Above
	}
	if !(sum > 0) {
		return nil, ErrNoMaximum
	}
	return Exponential{sum / float64(ended(log))}, nil
}

// plainLognormal is the mean and the standard deviation (divisor n) of the logarithms.
func plainLognormal(log []Observation) Lognormal {
	n, sum, squares := float64(len(log)), 0.0, 0.0
	for _, o := range log {
		sum += math.Log(o.Value)
	}
	mu := sum / n
	for _, o := range log {
		off := math.Log(o.Value) - mu
		squares += off * off
	}
	return Lognormal{mu, math.Sqrt(squares / n)}
}

// widestShape bounds the shape of gamma and Weibull on both sides: from a spread of a
// thousandth of the mean to one that no log of stops has.
const widestShape, narrowestShape = 0.02, 1e6

// plainGamma solves ln k − ψ(k) = ln(mean) − mean(ln x) by Newton's method in ln k,
// from Minka's start (Estimating a Gamma distribution, 2002; from memory).
func plainGamma(log []Observation) (Law, error) {
	n, sum, logs := float64(len(log)), 0.0, 0.0
	for _, o := range log {
		sum += o.Value
		logs += math.Log(o.Value)
	}
	mean := sum / n
	s := math.Log(mean) - logs/n
	if !(s > 0) {
		return nil, ErrNoMaximum
	}
	k := (3 - s + math.Sqrt((s-3)*(s-3)+24*s)) / (12 * s)
	for range 50 {
		off := math.Log(k) - mathext.Digamma(k) - s
		slope := 1 - k*mathext.Zeta(2, k) // d/d ln k; ψ′(k) = ζ(2, k)
		step := off / slope
		k *= math.Exp(-step)
		if math.Abs(step) < 1e-13 {
			break
		}
	}
	if !(k > widestShape && k < narrowestShape) {
		return nil, ErrNoMaximum
	}
	return Gamma{k, mean / k}, nil
}
