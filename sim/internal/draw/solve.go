package draw

import (
	"errors"
	"math"
)

// Weibull is the Weibull law by mean and cv. The shape solves
// 1 + cv² = Γ(1 + 2/shape) / Γ(1 + 1/shape)² (Johnson, Kotz and Balakrishnan,
// Continuous Univariate Distributions 1, ch. 21; from memory).
func Weibull(mean, cv float64) (Law, error) {
	if err := errors.Join(positive("mean", mean), usualCV("weibull", cv)); err != nil {
		return Law{}, err
	}
	shape := 1 / increasing(0, 10, cv, weibullCV)
	return weibullLaw(shape, mean/math.Gamma(1+1/shape)), nil
}

// WeibullShape has the distribution function 1 − e^(−(x/scale)^shape). The shape
// goes from 0.2 (cv 15.8) to 1250 (cv 0.001).
func WeibullShape(shape, scale float64) (Law, error) {
	var wrongShape error
	if !(shape >= 0.2 && shape <= 1250) {
		wrongShape = errors.New("shape must be from 0.2 to 1250")
	}
	if err := errors.Join(wrongShape, positive("scale", scale)); err != nil {
		return Law{}, err
	}
	return weibullLaw(shape, scale), nil
}

func weibullLaw(shape, scale float64) Law {
	mean := scale * math.Gamma(1+1/shape)
	return Law{kind: weibull, a: scale, b: 1 / shape, mean: mean, sd: mean * weibullCV(1/shape), scale: 1}
}

// weibullCV is the cv of the Weibull law with shape 1/inverse; it grows with inverse.
func weibullCV(inverse float64) float64 {
	one, _ := math.Lgamma(1 + inverse)
	two, _ := math.Lgamma(1 + 2*inverse)
	return math.Sqrt(max(math.Expm1(two-2*one), 0))
}

// Normal is the normal law without its values below zero. mean and cv are those
// of the law as cut; the cv must be below 1, which the cut law only nears (it
// becomes exponential). With λ = φ(α)/(1 − Φ(α)), α being the cut in standard
// deviations σ from the uncut mean, the mean is σ(λ − α) and the variance
// σ²(1 − λ(λ − α)) (Johnson, Kotz and Balakrishnan, Continuous Univariate
// Distributions 1, ch. 13; from memory).
func Normal(mean, cv float64) (Law, error) {
	if err := errors.Join(positive("mean", mean), limitedCV("normal, cut at zero,", cv, 0.999, "0.999")); err != nil {
		return Law{}, err
	}
	cut := increasing(-1/smallestCV-1, 35, cv, cutNormalCV)
	height := hazard(cut) - cut
	return Law{kind: normal, a: cut, b: mean / height, c: upperNormal(cut), mean: mean, sd: mean * cv, scale: 1}, nil
}

// cutNormalCV is the cv of the normal law cut at α standard deviations; it grows with α.
func cutNormalCV(cut float64) float64 {
	lambda := hazard(cut)
	height := lambda - cut
	return math.Sqrt(max(1-lambda*height, 0)) / height
}

// hazard is φ(z) / (1 − Φ(z)).
func hazard(z float64) float64 {
	return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) / upperNormal(z)
}

// increasing finds where a function that grows from low to high has the value
// target, by halving the span until no number lies between its ends.
func increasing(low, high, target float64, f func(float64) float64) float64 {
	for {
		middle := low + (high-low)/2
		if middle <= low || middle >= high {
			return middle
		}
		if f(middle) < target {
			low = middle
		} else {
			high = middle
		}
	}
}
