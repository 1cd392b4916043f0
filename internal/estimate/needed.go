package estimate

import "math"

// mostNeeded bounds the search for a number of replications.
const mostNeeded = 10_000_000

// Needed is the smallest number of replications, at least those there are, whose
// interval would have this half-width or less if the standard deviation stays
// what it is now (Law, Simulation Modeling and Analysis, ch. 9). It is 0 if no
// interval is given yet, so that nothing can be said, or if more than 10 million were needed.
func Needed(now Interval, halfWidth, confidence float64) int {
	if !now.Given() || !(halfWidth > 0) {
		return 0
	}
	enough := func(n int) bool {
		return StudentQuantile(n-1, (1+confidence)/2)*now.SD/math.Sqrt(float64(n)) <= halfWidth
	}
	if enough(now.N) {
		return now.N
	}
	if !enough(mostNeeded) {
		return 0
	}
	low, high := now.N, mostNeeded
	for high-low > 1 {
		if middle := low + (high-low)/2; enough(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// NeededRelative is Needed for a half-width of the share relative of the true
// mean. Since only the mean of the sample is known, the half-width may be at most
// relative / (1 + relative) of that (Law, ch. 9). 0 for a mean of 0.
func NeededRelative(now Interval, relative, confidence float64) int {
	return Needed(now, relative/(1+relative)*math.Abs(now.Mean), confidence)
}
