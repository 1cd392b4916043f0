package estimate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// ClopperPearson is the share of hits in n independent tries with the exact
// interval (Clopper and Pearson, Biometrika 26 (1934) 404): it never covers less
// than the confidence and is therefore wider than Wilson's. Fields as in Wilson.
func ClopperPearson(hits, n int, confidence float64) Interval {
	interval := Wilson(hits, n, confidence)
	if interval.N == 0 {
		return interval
	}
	tail := (1 - confidence) / 2
	k, rest := float64(hits), float64(n-hits)
	interval.Low, interval.High = 0, 1
	if hits > 0 {
		interval.Low = distuv.Beta{Alpha: k, Beta: rest + 1}.Quantile(tail)
	}
	if hits < n {
		interval.High = distuv.Beta{Alpha: k + 1, Beta: rest}.Quantile(1 - tail)
	}
	return interval
}

// likeness is how much more probable than the count seen a count may be and still
// be summed as equal: the two sides of a symmetric law differ by rounding.
const likeness = 1 + 1e-7

// BinomialTest is the exact two-sided test that hits of n independent tries come
// from the given share: the probability of all counts that are no more probable than
// the one seen, from 0 to 1 (the method of small probabilities; Clopper and Pearson
// 1934; common practice in statistical programs). ok is false without tries, with
// hits outside 0 to n or a share outside 0 to 1.
func BinomialTest(hits, n int, share float64) (p float64, ok bool) {
	if n <= 0 || hits < 0 || hits > n || !(share >= 0 && share <= 1) {
		return 0, false
	}
	if share == 0 || share == 1 {
		if float64(hits) == share*float64(n) {
			return 1, true
		}
		return 0, true
	}
	law := distuv.Binomial{N: float64(n), P: share}
	seen := law.LogProb(float64(hits)) + math.Log(likeness)
	for k := range n + 1 {
		if l := law.LogProb(float64(k)); l <= seen {
			p += math.Exp(l)
		}
	}
	return min(p, 1), true
}
