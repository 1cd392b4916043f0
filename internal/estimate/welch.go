package estimate

import "gonum.org/v1/gonum/stat"

// Welch is the moving average of the mean over replications that a person looks
// at to find the end of the warm-up: entry i (from 1) averages 2i − 1 points up to
// i = window, 2 · window + 1 points after it, and ends window points before the
// series does (Welch 1983; Law, Simulation Modeling and Analysis, ch. 9). Series
// of different length are cut to the shortest; it is empty if no entry is left.
func Welch(replications [][]float64, window int) []float64 {
	means := MeanSeries(replications)
	if window < 0 || len(means) <= window {
		return nil
	}
	smooth := make([]float64, len(means)-window)
	for i := range smooth {
		reach := min(i, window)
		smooth[i] = stat.Mean(means[i-reach:i+reach+1], nil)
	}
	return smooth
}

// MeanSeries is the mean over replications at each place of their series, cut to the
// shortest: what MSER5 is given after a pilot.
func MeanSeries(replications [][]float64) []float64 {
	if len(replications) == 0 {
		return nil
	}
	length := len(replications[0])
	for _, series := range replications {
		length = min(length, len(series))
	}
	means := make([]float64, length)
	column := make([]float64, len(replications))
	for i := range means {
		for r, series := range replications {
			column[r] = series[i]
		}
		means[i] = stat.Mean(column, nil)
	}
	return means
}
