package study

import "tuckline/internal/result"

// recovered is (now - none) / (unlimited - none) of the means, with an
// interval by bootstrap over whole replications.
func recovered(now, none, unlimited []float64, confidence float64) result.Estimate {
	return result.Estimate{}
}
