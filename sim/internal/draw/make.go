package draw

import (
	"errors"
	"fmt"
	"math"
)

// The coefficients of variation that laws given by mean and cv take. Below, a
// fixed value says the same; above, a sample mean says nothing any more.
const (
	smallestCV = 0.001
	largestCV  = 20
)

// Fixed is the law of one value, which must be finite and not negative.
func Fixed(value float64) Law {
	return Law{kind: fixed, a: value, mean: value, scale: 1}
}

// Exponential has the distribution function 1 − e^(−x/mean); its cv is 1.
func Exponential(mean float64) (Law, error) {
	if err := positive("mean", mean); err != nil {
		return Law{}, err
	}
	return Law{kind: exponential, a: mean, mean: mean, sd: mean, scale: 1}, nil
}

// Erlang is the sum of k equal exponential stages; its cv is 1/√k.
// k goes from 1 to 1,000,000.
func Erlang(mean float64, k int) (Law, error) {
	var wrongK error
	if k < 1 || k > 1_000_000 {
		wrongK = fmt.Errorf("k is the number of stages, a whole number from 1 to 1000000; it is %d", k)
	}
	if err := errors.Join(positive("mean", mean), wrongK); err != nil {
		return Law{}, err
	}
	return byShape(erlang, mean, float64(k)), nil
}

// Gamma has shape 1/cv² and scale mean·cv² (Johnson, Kotz and Balakrishnan,
// Continuous Univariate Distributions 1, ch. 17; from memory).
func Gamma(mean, cv float64) (Law, error) {
	if err := errors.Join(positive("mean", mean), usualCV("gamma", cv)); err != nil {
		return Law{}, err
	}
	return byShape(gamma, mean, 1/(cv*cv)), nil
}

func byShape(k kind, mean, shape float64) Law {
	lnGamma, _ := math.Lgamma(shape + 1)
	return Law{kind: k, a: shape, b: mean / shape, c: lnGamma, mean: mean, sd: mean / math.Sqrt(shape), scale: 1}
}

// Lognormal has σ² = ln(1 + cv²) and μ = ln(mean) − σ²/2 (Johnson, Kotz and
// Balakrishnan, Continuous Univariate Distributions 1, ch. 14; from memory).
func Lognormal(mean, cv float64) (Law, error) {
	if err := errors.Join(positive("mean", mean), usualCV("lognormal", cv)); err != nil {
		return Law{}, err
	}
	variance := math.Log1p(cv * cv)
	return Law{
		kind: lognormal, a: math.Log(mean) - variance/2, b: math.Sqrt(variance),
		mean: mean, sd: mean * cv, scale: 1,
	}, nil
}

// Uniform has every value from low to high with the same density.
func Uniform(low, high float64) (Law, error) {
	if err := errors.Join(notNegative("low", low), positive("high", high)); err != nil {
		return Law{}, err
	}
	if !(low < high) {
		return Law{}, errors.New("low must be less than high; for one value only write the bare value")
	}
	return Law{
		kind: uniformLaw, a: low, b: high,
		mean: low + (high-low)/2, sd: (high - low) / math.Sqrt(12), scale: 1,
	}, nil
}

// UniformSpread is the uniform law by mean and cv: from mean·(1 − √3·cv) to
// mean·(1 + √3·cv). Its cv is at most 1/√3 = 0.577, where it reaches down to 0.
func UniformSpread(mean, cv float64) (Law, error) {
	if err := errors.Join(positive("mean", mean), limitedCV("uniform", cv, 1/math.Sqrt(3), "0.577")); err != nil {
		return Law{}, err
	}
	half := mean * cv * math.Sqrt(3)
	return Uniform(math.Max(mean-half, 0), mean+half)
}

// Triangular rises from low to likely and falls to high. Its mean is
// (low + likely + high)/3, its variance
// (low² + likely² + high² − low·likely − low·high − likely·high)/18.
func Triangular(low, likely, high float64) (Law, error) {
	err := errors.Join(notNegative("low", low), notNegative("likely", likely), positive("high", high))
	if err != nil {
		return Law{}, err
	}
	if !(low <= likely && likely <= high && low < high) {
		return Law{}, errors.New("the order must be low, likely, high: likely not below low nor above high, and low less than high")
	}
	x, y := likely-low, high-low
	return Law{
		kind: triangular, a: low, b: likely, c: high,
		mean: low + (x+y)/3, sd: math.Sqrt((x*x + y*y - x*y) / 18), scale: 1,
	}, nil
}

// Geometric has the values step, 2·step, 3·step … : a try of length step
// succeeds with probability p = step/mean. The number of tries is
// 1 + floor(ln(1−u)/ln(1−p)), the cv √(1−p).
func Geometric(mean, step float64) (Law, error) {
	if err := errors.Join(positive("mean", mean), positive("step", step)); err != nil {
		return Law{}, err
	}
	if !(mean >= step) {
		return Law{}, errors.New("mean must be at least one step, because the shortest value is one step")
	}
	p := step / mean
	return Law{kind: geometric, a: step, b: math.Log1p(-p), mean: mean, sd: mean * math.Sqrt(1-p), scale: 1}, nil
}
