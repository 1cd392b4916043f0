package draw

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
)

// Weighted is one value of an empirical law with its share.
type Weighted struct{ Value, Weight float64 }

// Component is one law of a mixture with its share.
type Component struct {
	Weight float64
	Law    Law
}

// Empirical takes each of the values with its weight. Values are finite and not
// negative; weights are greater than 0 and add to 1 (to 10⁻⁶, then exactly 1 is made of them).
func Empirical(values []Weighted) (Law, error) {
	errs := make([]error, 0, len(values))
	weights := make([]float64, 0, len(values))
	sorted := slices.SortedFunc(slices.Values(values), func(x, y Weighted) int { return cmp.Compare(x.Value, y.Value) })
	l := Law{kind: empirical, scale: 1}
	for _, v := range sorted {
		errs = append(errs, notNegative("a value", v.Value))
		weights = append(weights, v.Weight)
		l.values = append(l.values, v.Value)
	}
	upTo, err := shares(weights)
	if err := errors.Join(append(errs, err)...); err != nil {
		return Law{}, err
	}
	l.upTo = upTo
	l.mean, l.sd = moments(upTo, func(i int) (float64, float64) { return l.values[i], 0 })
	return l, nil
}

// EmpiricalSample takes each of the observed values with the same weight.
func EmpiricalSample(values []float64) (Law, error) {
	weighted := make([]Weighted, len(values))
	for i, v := range values {
		weighted[i] = Weighted{Value: v, Weight: 1 / float64(len(values))}
	}
	return Empirical(weighted)
}

// Mixture draws from one of the laws, chosen by weight. The rules for the
// weights are those of Empirical.
func Mixture(parts []Component) (Law, error) {
	errs := make([]error, 0, len(parts))
	weights := make([]float64, 0, len(parts))
	l := Law{kind: mixture, scale: 1}
	for i, p := range parts {
		if p.Law.IsZero() {
			errs = append(errs, fmt.Errorf("part %d of the mixture has no law", i+1))
		}
		weights = append(weights, p.Weight)
		l.parts = append(l.parts, p.Law)
	}
	upTo, err := shares(weights)
	if err := errors.Join(append(errs, err)...); err != nil {
		return Law{}, err
	}
	l.upTo = upTo
	l.mean, l.sd = moments(upTo, func(i int) (float64, float64) {
		mean := l.parts[i].Mean()
		return mean, mean * l.parts[i].CV()
	})
	return l, nil
}

// shares makes cumulative shares of weights.
func shares(weights []float64) ([]float64, error) {
	if len(weights) == 0 {
		return nil, errors.New("at least one entry is needed")
	}
	upTo := make([]float64, len(weights))
	sum := 0.0
	for i, w := range weights {
		if !(w > 0) || math.IsInf(w, 0) {
			return nil, fmt.Errorf("every weight must be greater than 0; one is %g", w)
		}
		sum += w
		upTo[i] = sum
	}
	if !(math.Abs(sum-1) <= 1e-6) {
		return nil, fmt.Errorf("the weights must add to 1; they add to %.7g", sum)
	}
	for i := range upTo {
		upTo[i] /= sum
	}
	upTo[len(upTo)-1] = 1
	return upTo, nil
}

// moments are mean and standard deviation of entries with their own mean and
// standard deviation, of which one is drawn by its share. Deviations are taken
// from the mean, so that large means with small spread keep their digits.
func moments(upTo []float64, entry func(i int) (mean, sd float64)) (mean, sd float64) {
	share := func(i int) float64 {
		if i == 0 {
			return upTo[0]
		}
		return upTo[i] - upTo[i-1]
	}
	for i := range upTo {
		m, _ := entry(i)
		mean += share(i) * m
	}
	variance := 0.0
	for i := range upTo {
		m, s := entry(i)
		variance += share(i) * (s*s + (m-mean)*(m-mean))
	}
	return mean, math.Sqrt(variance)
}
