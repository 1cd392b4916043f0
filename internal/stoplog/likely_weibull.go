package stoplog

import "math"

// likelyWeibull solves the equation of the shape k that is left when the scale is
// Σ(t^k − a^k)/d (t values, a thresholds, d number ended):
//
//	1/k + mean(ln t of those ended) − Σ(t^k ln t − a^k ln a) / Σ(t^k − a^k) = 0
//
// (Lawless, Statistical Models and Methods for Lifetime Data; the thresholds as in
// left truncation). It is found by Newton's method kept within a bracket.
func likelyWeibull(log []Observation) (Law, error) {
	e := newShapeEquation(log)
	low, high := widestShape, narrowestShape
	if value, _ := e.at(low); !(value > 0) {
		return nil, ErrNoMaximum
	}
	k := 1.0
	for range 200 {
		value, slope := e.at(k)
		if value > 0 {
			low = k
		} else {
			high = k
		}
		next := k - value/slope
		if !(next > low && next < high) {
			next = math.Sqrt(low * high)
		}
		if math.Abs(next-k) <= 1e-14*k {
			break
		}
		k = next
	}
	if !(k > widestShape*1.001 && k < narrowestShape/1.001) {
		return nil, ErrNoMaximum
	}
	return Weibull{k, e.largest * math.Pow(e.sum(k)/float64(e.ended), 1/k)}, nil
}

// shapeEquation holds the logarithms of values and thresholds over the largest
// value, so that no power passes 1.
type shapeEquation struct {
	values, thresholds []float64
	largest, meanLog   float64
	ended              int
}

func newShapeEquation(log []Observation) *shapeEquation {
	e := &shapeEquation{values: make([]float64, len(log)), ended: ended(log)}
	for _, o := range log {
		e.largest = max(e.largest, o.Value)
	}
	for i, o := range log {
		e.values[i] = math.Log(o.Value / e.largest)
		if o.Above > 0 {
			e.thresholds = append(e.thresholds, math.Log(o.Above/e.largest))
		}
		if !o.Open {
			e.meanLog += e.values[i] / float64(e.ended)
		}
	}
	return e
}

// at is the left side of the equation and its slope.
func (e *shapeEquation) at(k float64) (value, slope float64) {
	p, pl, pll := powers(e.values, k)
	a, al, all := powers(e.thresholds, k)
	p, pl, pll = p-a, pl-al, pll-all
	ratio := pl / p
	return 1/k + e.meanLog - ratio, -1/(k*k) - (pll/p - ratio*ratio)
}

// sum is Σ(t^k − a^k).
func (e *shapeEquation) sum(k float64) float64 {
	p, _, _ := powers(e.values, k)
	a, _, _ := powers(e.thresholds, k)
	return p - a
}

// powers are Σ x^k, Σ x^k ln x and Σ x^k ln² x of logarithms ln x.
func powers(logs []float64, k float64) (sum, first, second float64) {
	for _, l := range logs {
		p := math.Exp(k * l)
		sum += p
		first += p * l
		second += p * l * l
	}
	return sum, first, second
}
