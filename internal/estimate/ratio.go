package estimate

import (
	"math"

	"gonum.org/v1/gonum/stat"
)

// RatioOfMeans is mean(part) / mean(whole) of values that belong together
// replication by replication, with a percentile bootstrap interval over whole
// replications. SD is the standard deviation of a single replication by the delta
// method: that of (part − ratio · whole) / mean(whole).
//
// ok is false when there is nothing to divide by: fewer than 2 replications,
// samples of different length, or a whole whose own t interval does not stay
// clear of 0. The interval is then the zero one, with N alone.
func RatioOfMeans(part, whole []float64, confidence float64) (interval Interval, ok bool) {
	interval, ok = linearised(part, whole, confidence)
	if ok {
		interval.Low, interval.High = percentiles(bootstrap(interval.N, ratioOf(part, whole, interval.Mean)), confidence)
	}
	return interval, ok
}

// linearised is the ratio of means with the standard deviation of its rest, (part − ratio · whole) / mean(whole), and no interval.
func linearised(part, whole []float64, confidence float64) (ratio Interval, ok bool) {
	n := len(whole)
	if n < 2 || len(part) != n {
		return Interval{N: n}, false
	}
	if base := Of(whole, confidence); base.Low <= 0 && base.High >= 0 {
		return Interval{N: n}, false
	}
	mean := stat.Mean(whole, nil)
	ratio = Interval{Mean: stat.Mean(part, nil) / mean, N: n}
	rest := make([]float64, n)
	for i := range rest {
		rest[i] = (part[i] - ratio.Mean*whole[i]) / mean
	}
	ratio.SD = stat.StdDev(rest, nil)
	return ratio, true
}

// ratioOf is the ratio of the sums over chosen replications. A resample whose
// whole comes to 0 counts as the ratio of all.
func ratioOf(part, whole []float64, ratio float64) func(chosen []int) float64 {
	return func(chosen []int) float64 {
		above, below := 0.0, 0.0
		for _, i := range chosen {
			above += part[i]
			below += whole[i]
		}
		if r := above / below; !math.IsNaN(r) && !math.IsInf(r, 0) {
			return r
		}
		return ratio
	}
}

// Recovered is the share of a possible gain that is there now,
// (now − none) / (unlimited − none): "the store recovers 61 % of what a store
// could recover". The three samples share their random numbers, replication by
// replication. ok is false when no gain is possible that the noise would let see;
// see RatioOfMeans.
func Recovered(none, now, unlimited []float64, confidence float64) (interval Interval, ok bool) {
	return RatioOfMeans(differences(now, none), differences(unlimited, none), confidence)
}
