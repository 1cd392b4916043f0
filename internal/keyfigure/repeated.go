package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// repeated is the time of work that fails now and then at its end and is done again: the sum of
// one draw of its law for each try, the number of tries geometric.
type repeated struct {
	law   sim.Law
	fails float64
	// sums are, for two tries and more, points of equal weight of the sum.
	sums [][]float64
}

// sumPoints is how many points of equal weight stand for a sum; mostTries is after how many tries no more are looked at.
const sumPoints, mostTries = 256, 12

func newRepeated(law sim.Law, fails float64) repeated {
	r := repeated{law: law, fails: fails}
	if fails <= 0 || law.IsZero() {
		return r
	}
	one := make([]float64, sumPoints)
	for k := range one {
		one[k] = law.Quantile((float64(k) + 0.5) / sumPoints)
	}
	last := one
	for share := fails; share > 1e-6 && len(r.sums) < mostTries; share *= fails {
		all := make([]float64, 0, sumPoints*sumPoints)
		for _, a := range last {
			for _, b := range one {
				all = append(all, a+b)
			}
		}
		slices.Sort(all)
		r.sums = append(r.sums, all)
		last = make([]float64, sumPoints)
		for k := range last {
			last[k] = all[k*sumPoints+sumPoints/2]
		}
	}
	return r
}

func (r repeated) mean() float64 { return r.law.Mean() / (1 - r.fails) }

// over adds up what a value is over all numbers of tries, given that for one and for sums.
func (r repeated) over(one float64, more func(sum []float64) float64) float64 {
	sum, share := one*(1-r.fails), 1-r.fails
	for k, points := range r.sums {
		share *= r.fails
		if k == len(r.sums)-1 {
			share /= 1 - r.fails // those with still more tries count as these
		}
		sum += share * more(points)
	}
	return sum
}

// longer is the share of the work that lasts longer.
func (r repeated) longer(than float64) float64 {
	return r.over(longer(r.law, than), func(sum []float64) float64 {
		k, found := slices.BinarySearch(sum, than)
		for ; found && k < len(sum) && sum[k] == than; k++ {
		}
		return float64(len(sum)-k) / float64(len(sum))
	})
}

// excess is the mean of what it lasts above a value, 0 where it is below.
func (r repeated) excess(above float64) float64 {
	return r.over(excess(r.law, above), func(sum []float64) float64 {
		all := 0.0
		for _, v := range sum {
			all += max(0, v-above)
		}
		return all / float64(len(sum))
	})
}

// quantile is the time that a share of the work does not exceed.
func (r repeated) quantile(share float64) float64 {
	if len(r.sums) == 0 {
		return r.law.Quantile(share)
	}
	low, high := 0.0, r.sums[len(r.sums)-1][sumPoints*sumPoints-1]
	for range 60 {
		if middle := (low + high) / 2; r.longer(middle) > 1-share {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}
