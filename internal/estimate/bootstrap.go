package estimate

import (
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// resamples is the number of bootstrap samples: enough that the ends of a 95 %
// interval move by less than a twentieth of its width from one seed to another.
const resamples = 2000

// bootstrap gives the sorted values of a statistic over resamples of n whole
// replications, drawn with replacement from a generator that always starts alike.
func bootstrap(n int, statistic func(chosen []int) float64) []float64 {
	source := rand.New(rand.NewPCG(0x7475636b, 0x6c696e65))
	values := make([]float64, resamples)
	chosen := make([]int, n)
	for i := range values {
		for j := range chosen {
			chosen[j] = source.IntN(n)
		}
		values[i] = statistic(chosen)
	}
	slices.Sort(values)
	return values
}

// Spread is the standard deviation of single values (of shifts, say) over all
// replications, with a bootstrap interval (BCa) over whole replications, since values of
// one replication may depend on each other. Each entry of groups has the values
// of one replication. SD is the standard error of the standard deviation, N the
// number of replications. With fewer than 2 replications there is no interval.
func Spread(groups [][]float64, confidence float64) Interval {
	sums := make([]moments, len(groups))
	centre := stat.Mean(slices.Concat(groups...), nil)
	for i, g := range groups {
		for _, x := range g {
			sums[i].add(moments{1, x - centre, (x - centre) * (x - centre)})
		}
	}
	var all moments
	for _, m := range sums {
		all.add(m)
	}
	value := all.sd()
	result := Interval{Mean: value, Low: value, High: value, N: len(groups)}
	if len(groups) < 2 {
		return result
	}
	values := bootstrap(len(groups), func(chosen []int) float64 {
		var drawn moments
		for _, i := range chosen {
			drawn.add(sums[i])
		}
		return drawn.sd()
	})
	left := make([]float64, len(groups))
	for i, m := range sums {
		rest := moments{all.n - m.n, all.sum - m.sum, all.squares - m.squares}
		left[i] = rest.sd()
	}
	result.Low, result.High = bca(values, value, left, confidence)
	result.SD = stat.StdDev(values, nil)
	return result
}

// moments are number, sum and sum of squares of values.
type moments struct{ n, sum, squares float64 }

func (m *moments) add(o moments) {
	m.n += o.n
	m.sum += o.sum
	m.squares += o.squares
}

func (m moments) sd() float64 {
	if m.n < 2 {
		return 0
	}
	return math.Sqrt(max(m.squares-m.sum*m.sum/m.n, 0) / (m.n - 1))
}

// percentiles is the plain bootstrap interval.
func percentiles(sorted []float64, confidence float64) (low, high float64) {
	return quantileOfSorted(sorted, (1-confidence)/2), quantileOfSorted(sorted, (1+confidence)/2)
}

// bca is the bias-corrected and accelerated interval (Efron and Tibshirani, An
// Introduction to the Bootstrap, 14.3; from memory). left holds the statistic
// with each replication left out.
func bca(sorted []float64, value float64, left []float64, confidence float64) (low, high float64) {
	below, _ := slices.BinarySearch(sorted, value)
	if sorted[0] == sorted[len(sorted)-1] {
		return value, value
	}
	n := float64(len(sorted))
	bias := distuv.UnitNormal.Quantile(min(max(float64(below), 0.5), n-0.5) / n)
	acceleration := 0.0
	mean, squares, cubes := stat.Mean(left, nil), 0.0, 0.0
	for _, x := range left {
		squares += (mean - x) * (mean - x)
		cubes += (mean - x) * (mean - x) * (mean - x)
	}
	if squares > 0 {
		acceleration = cubes / (6 * math.Pow(squares, 1.5))
	}
	end := func(p float64) float64 {
		z := bias + distuv.UnitNormal.Quantile(p)
		if stretch := 1 - acceleration*z; stretch > 0 {
			return quantileOfSorted(sorted, distuv.UnitNormal.CDF(bias+z/stretch))
		}
		return quantileOfSorted(sorted, p)
	}
	return end((1 - confidence) / 2), end((1 + confidence) / 2)
}
