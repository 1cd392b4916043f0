package estimate

import "gonum.org/v1/gonum/stat"

// batchOfMSER is the batch that gives MSER-5 its name.
const batchOfMSER = 5

// Truncation says how much of the start of a series to leave out.
type Truncation struct {
	// Batches and Observations are what is left out.
	Batches, Observations int
	// Criterion is its smallest value, AtStart the one with nothing left out.
	Criterion, AtStart float64
	// Mean is the mean of the whole batches kept.
	Mean float64
	// AtHalf says that the search ended at its bound, half of the series: the series
	// is then too short to tell where the start ends.
	AtHalf bool
}

// MSER5 finds the end of the warm-up: over d = 0 … ⌊n/2⌋ left-out batches of five
// values the smallest Σ(zᵢ − mean)² / (n − d)² of the n − d batch means kept; the
// first of equals; an incomplete last batch is dropped (White, Simulation 69(6)
// (1997); White, Cobb and Spratt, WSC 2000). ok is false for fewer than 2 batches.
func MSER5(series []float64) (cut Truncation, ok bool) {
	z := batchMeans(series, batchOfMSER)
	n := len(z)
	if n < 2 {
		return Truncation{}, false
	}
	// From the end back, by Welford's recursion: each step takes one batch more.
	mean, squares := 0.0, 0.0
	for d := n - 1; d >= 0; d-- {
		kept := float64(n - d)
		off := z[d] - mean
		mean += off / kept
		squares += off * (z[d] - mean)
		criterion := squares / (kept * kept)
		if d == n/2 || d < n/2 && criterion <= cut.Criterion {
			cut = Truncation{Batches: d, Observations: d * batchOfMSER, Criterion: criterion, Mean: mean, AtHalf: d == n/2}
		}
		if d == 0 {
			cut.AtStart = criterion
		}
	}
	return cut, true
}

// batchMeans are the means of whole batches.
func batchMeans(series []float64, size int) []float64 {
	means := make([]float64, len(series)/size)
	for i := range means {
		means[i] = stat.Mean(series[i*size:(i+1)*size], nil)
	}
	return means
}
