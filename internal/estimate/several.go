package estimate

import "slices"

// Simultaneous are the paired differences of each alternative minus the base,
// with intervals that all hold together with the confidence: each has the
// confidence 1 − (1 − confidence) / m for m differences (Bonferroni). An
// alternative whose length differs from the base has no pairs; N is then 0.
func Simultaneous(base []float64, alternatives [][]float64, confidence float64) []Interval {
	intervals := make([]Interval, len(alternatives))
	each := 1 - (1-confidence)/float64(max(len(alternatives), 1))
	for i, a := range alternatives {
		intervals[i] = Paired(a, base, each)
	}
	return intervals
}

// Holm adjusts the p values of several tests, so that each may be held against the
// level for all together: the i-th smallest of m times m − i + 1, never below a
// smaller one's, at most 1 (Holm, Scandinavian Journal of Statistics 6 (1979) 65).
// The order of the values is kept.
func Holm(p []float64) []float64 {
	order := make([]int, len(p))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if p[a] < p[b] {
			return -1
		}
		if p[a] > p[b] {
			return 1
		}
		return 0
	})
	adjusted := make([]float64, len(p))
	largest := 0.0
	for rank, i := range order {
		largest = max(largest, min(1, p[i]*float64(len(p)-rank)))
		adjusted[i] = largest
	}
	return adjusted
}
