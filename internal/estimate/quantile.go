package estimate

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// Quantile is the value below which the share p (0 to 1) of a sample lies, by
// linear interpolation at 1 + (n − 1)p: type 7 of Hyndman and Fan (The American
// Statistician 50 (1996) 361), the usual one of spreadsheets. 0 for an empty sample.
func Quantile(sample []float64, p float64) float64 {
	return quantileOfSorted(slices.Sorted(slices.Values(sample)), p)
}

func quantileOfSorted(sorted []float64, p float64) float64 {
	if len(sorted) == 0 {
		return 0
	}
	at := float64(len(sorted)-1) * min(max(p, 0), 1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}

// QuantileInterval is Quantile with the interval between two values of the
// sample that holds the true quantile with at least the confidence, whatever the
// law: rank l is the largest with P(B < l) ≤ α/2, rank u the smallest with
// P(B < u) ≥ 1 − α/2, B binomial(n, p), α = 1 − confidence (David and Nagaraja,
// Order Statistics, 7.1; from memory). SD is that of the sample. ok is false,
// and Low = High = Mean, when the sample is too small to have both ranks: for P90
// at 95 % it takes 36 values. The values must be independent.
func QuantileInterval(sample []float64, p, confidence float64) (interval Interval, ok bool) {
	sorted := slices.Sorted(slices.Values(sample))
	interval = Of(sorted, confidence)
	interval.Mean = quantileOfSorted(sorted, p)
	interval.Low, interval.High = interval.Mean, interval.Mean
	low, high := ranks(len(sorted), p, confidence)
	if low < 1 || high > len(sorted) {
		return interval, false
	}
	interval.Low, interval.High = sorted[low-1], sorted[high-1]
	return interval, true
}

// ranks are the ranks (from 1) of the ends; 0 or n + 1 where none is far enough out.
func ranks(n int, p, confidence float64) (low, high int) {
	if !(p > 0 && p < 1) || n == 0 {
		return 0, n + 1
	}
	tail := (1 - confidence) / 2
	below := distuv.Binomial{N: float64(n), P: p}
	middle := int(math.Round(float64(n) * p))
	for low = middle; low > 0 && below.CDF(float64(low-1)) > tail; {
		low--
	}
	for high = middle; high <= n && (high < 1 || below.CDF(float64(high-1)) < 1-tail); {
		high++
	}
	return low, high
}
