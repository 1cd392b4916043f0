package estimate

import "gonum.org/v1/gonum/stat"

// LinearRatio is mean(part) / mean(whole) with the t interval of the linearised ratio: that of
// (part − ratio · whole) / mean(whole) (Cochran, Sampling Techniques, 1977, chapter 6; from memory). It costs far less than
// the resampling of RatioOfMeans and serves for the many ratios of a report; SD and ok are as there.
func LinearRatio(part, whole []float64, confidence float64) (interval Interval, ok bool) {
	n := len(whole)
	if n < 2 || len(part) != n {
		return Interval{N: n}, false
	}
	if base := Of(whole, confidence); base.Low <= 0 && base.High >= 0 {
		return Interval{N: n}, false
	}
	mean := stat.Mean(whole, nil)
	ratio := stat.Mean(part, nil) / mean
	rest := make([]float64, n)
	for i := range rest {
		rest[i] = (part[i] - ratio*whole[i]) / mean
	}
	return byT(ratio, stat.StdDev(rest, nil), n, confidence), true
}
