package estimate

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Interval is an estimate with its confidence interval from Low to High, the
// standard deviation SD of single replications (divisor n − 1) and their number
// N. With N below 2 there is no interval: Low = High = Mean and SD = 0, and Given
// says so. The fields are those of result.Estimate, one can be converted to the other.
type Interval struct {
	Mean, Low, High, SD float64
	N                   int
}

// Given says that there were enough replications for an interval.
func (i Interval) Given() bool { return i.N >= 2 }

// HalfWidth is half the distance from Low to High, 0 if there is no interval.
func (i Interval) HalfWidth() float64 { return (i.High - i.Low) / 2 }

// Of is the mean of a sample with Student's t interval: mean ± t(n−1) · sd / √n.
// It holds for means over whole replications, which are independent and near
// enough to normal; see Summarise for the doubts.
func Of(sample []float64, confidence float64) Interval {
	if len(sample) == 0 {
		return Interval{}
	}
	mean, sd := stat.MeanStdDev(sample, nil)
	return byT(mean, sd, len(sample), confidence)
}

// byT makes the t interval from a mean and a standard deviation.
func byT(mean, sd float64, n int, confidence float64) Interval {
	if n < 2 {
		return Interval{Mean: mean, Low: mean, High: mean, N: n}
	}
	half := StudentQuantile(n-1, (1+confidence)/2) * sd / math.Sqrt(float64(n))
	return Interval{Mean: mean, Low: mean - half, High: mean + half, SD: sd, N: n}
}

// StudentQuantile is the quantile of Student's t with the given degrees of freedom
// (at least 1), for 0 < p < 1.
func StudentQuantile(degrees int, p float64) float64 {
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(degrees)}.Quantile(p)
}

// Paired is the mean of the differences a − b, replication by replication, with
// its t interval: the interval for two alternatives that share their random
// numbers. Samples of different length have no pairs; N is then 0.
func Paired(a, b []float64, confidence float64) Interval {
	return Of(differences(a, b), confidence)
}

// differences are a − b, or none if the lengths differ.
func differences(a, b []float64) []float64 {
	if len(a) != len(b) {
		return nil
	}
	d := make([]float64, len(a))
	for i := range a {
		d[i] = a[i] - b[i]
	}
	return d
}

// RunningMean is the t interval after 2, 3, … n replications: the band that
// shows whether more replications would still move the answer. It is empty for
// fewer than 2. Sums of squares are carried forward by Welford's recursion
// (Technometrics 4 (1962) 419; from memory).
func RunningMean(sample []float64, confidence float64) []Interval {
	band := make([]Interval, 0, max(len(sample)-1, 0))
	mean, squares := 0.0, 0.0
	for i, x := range sample {
		n := float64(i + 1)
		off := x - mean
		mean += off / n
		squares += off * (x - mean)
		if i > 0 {
			band = append(band, byT(mean, math.Sqrt(squares/(n-1)), i+1, confidence))
		}
	}
	return band
}
