package stoplog

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// fewestForInterval is the number of observations that ended below which no interval
// is given: the limit law of the likelihood ratio would not hold.
const fewestForInterval = 20

// Range is a figure of a fitted law with its interval.
type Range struct {
	// Name is the name of a parameter, or "mean".
	Name             string
	Value, Low, High float64
}

// ErrFewForInterval says that a log is too short for an interval.
var ErrFewForInterval = fmt.Errorf("an interval needs at least %d observations that ended", fewestForInterval)

// Ranges are the intervals of the parameters of a fitted law and of its mean by
// profile likelihood: all values θ for which 2 (lnL − max lnL given θ) stays within the
// quantile of χ² with one degree of freedom (Wilks 1938; Cox and Hinkley, Theoretical
// Statistics). Fewer than 20 observations that ended are refused with ErrFewForInterval.
func Ranges(fit Fit, log []Observation, confidence float64) ([]Range, error) {
	if !(confidence > 0 && confidence < 1) {
		return nil, fmt.Errorf("a confidence lies between 0 and 1, such as 0.95; it is %g", confidence)
	}
	if n := ended(log); n < fewestForInterval {
		return nil, fmt.Errorf("%w; this log has %d", ErrFewForInterval, n)
	}
	var ranges []Range
	for _, f := range figuresOf(fit.Law) {
		r, err := f.profile(fit, log, confidence)
		if err != nil {
			return nil, fmt.Errorf("%s of the %s law: %w", f.name, fit.Law.Kind(), err)
		}
		ranges = append(ranges, r)
	}
	return ranges, nil
}

// profile finds both ends. The signed root of the likelihood ratio is nearly
// straight in the coordinate, so that a secant finds where it passes the quantile.
func (f figure) profile(fit Fit, log []Observation, confidence float64) (Range, error) {
	z := distuv.UnitNormal.Quantile((1 + confidence) / 2)
	r := Range{Name: f.name, Value: f.back(f.coordinate)}
	for _, side := range []float64{-1, 1} {
		end, err := f.end(fit, log, side, z)
		if err != nil {
			return Range{}, err
		}
		if side < 0 {
			r.Low = f.back(end)
		} else {
			r.High = f.back(end)
		}
	}
	return r, nil
}

// errNoEnd says that an interval has no end.
var errNoEnd = errors.New("the likelihood stays too high: the interval has no end")

// end is where the root of the likelihood ratio passes z on one side.
func (f figure) end(fit Fit, log []Observation, side, z float64) (float64, error) {
	free := f.free
	root := func(distance float64) float64 {
		top, at := f.highest(log, f.coordinate+side*distance, free)
		free = at
		return math.Sqrt(max(2*(fit.LogLikelihood-top), 0)) - z
	}
	near, far := 0.0, 0.05
	atNear, atFar := -z, root(0.05)
	for atFar < 0 {
		if far > farthest {
			return 0, errNoEnd
		}
		near, atNear, far = far, atFar, 2*far
		atFar = root(far)
	}
	for range 60 {
		next := near + (far-near)*atNear/(atNear-atFar)
		value := root(next)
		if math.Abs(value) < 1e-7 || far-near < 1e-10 {
			return f.coordinate + side*next, nil
		}
		// Illinois: the end that stays twice counts half.
		if value < 0 {
			near, atNear, atFar = next, value, atFar/2
		} else {
			far, atFar, atNear = next, value, atNear/2
		}
	}
	return f.coordinate + side*far, nil
}

// highest is the largest log-likelihood when the figure is at x, and the free
// coordinate there: Newton's method from near, or where that fails the simplex from
// the fitted law.
func (f figure) highest(log []Observation, x, near float64) (top, free float64) {
	height := func(v []float64) float64 {
		if !(math.Abs(v[0]-f.free) <= farthest) {
			return math.Inf(1)
		}
		if l := LogLikelihood(f.with(x, v[0]), log); !math.IsNaN(l) {
			return -l
		}
		return math.Inf(1)
	}
	if f.alone {
		return -height([]float64{f.free}), f.free
	}
	if summit, ok := newton(height, []float64{near}); ok {
		return -height(summit), summit[0]
	}
	found, err := simplex(height, []float64{f.free})
	if err != nil {
		return math.Inf(-1), near
	}
	return -height(found), found[0]
}
