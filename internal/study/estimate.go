package study

import (
	"tuckline/internal/estimate"
	"tuckline/internal/result"
)

// leastReplications is how many an interval needs.
const leastReplications = 2

// estimateOf is the mean with its t interval. Below two values there is no
// interval: low and high are the mean, and N tells.
func estimateOf(values []float64, confidence float64) result.Estimate {
	return result.Estimate(estimate.Of(values, confidence))
}

// runningMean has the estimate after 2, 3, … values.
func runningMean(values []float64, confidence float64) []result.Estimate {
	var means []result.Estimate
	for _, one := range estimate.RunningMean(values, confidence) {
		means = append(means, result.Estimate(one))
	}
	return means
}
