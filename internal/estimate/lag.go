package estimate

import "gonum.org/v1/gonum/stat"

// Lag1 is the first autocorrelation of a series, Σ(yᵢ − m)(yᵢ₊₁ − m) / Σ(yᵢ − m)²,
// from −1 to 1 (definition of the NIST Statistical Reference Datasets). ok is
// false for fewer than 2 values and for values that are all equal.
func Lag1(series []float64) (r float64, ok bool) {
	if len(series) < 2 {
		return 0, false
	}
	mean := stat.Mean(series, nil)
	above, below := 0.0, 0.0
	for i, y := range series {
		below += (y - mean) * (y - mean)
		if i > 0 {
			above += (series[i-1] - mean) * (y - mean)
		}
	}
	if below == 0 {
		return 0, false
	}
	return above / below, true
}
