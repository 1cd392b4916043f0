package estimate

// LinearRatio is mean(part) / mean(whole) with the t interval of the linearised ratio: that of
// (part − ratio · whole) / mean(whole) (Cochran, Sampling Techniques, 1977, chapter 6; from memory). It costs far less than
// the resampling of RatioOfMeans and serves for the many ratios of a report; SD and ok are as there.
func LinearRatio(part, whole []float64, confidence float64) (interval Interval, ok bool) {
	ratio, ok := linearised(part, whole, confidence)
	if !ok {
		return ratio, false
	}
	return byT(ratio.Mean, ratio.SD, ratio.N, confidence), true
}
