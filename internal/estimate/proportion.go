package estimate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Wilson is the share of hits in n independent tries with Wilson's score
// interval (JASA 22 (1927) 209), which stays within 0 to 1 and gives a usable
// interval for 0 and for n hits. SD is that of a single try, √(p(1 − p)). Without
// tries, or with hits outside 0 to n, N is 0.
func Wilson(hits, n int, confidence float64) Interval {
	if n <= 0 || hits < 0 || hits > n {
		return Interval{}
	}
	z := distuv.UnitNormal.Quantile((1 + confidence) / 2)
	size, share := float64(n), float64(hits)/float64(n)
	centre := (share + z*z/(2*size)) / (1 + z*z/size)
	half := z / (1 + z*z/size) * math.Sqrt(share*(1-share)/size+z*z/(4*size*size))
	low, high := centre-half, centre+half
	// The exact ends, which rounding may miss by a last digit.
	if hits == 0 {
		low = 0
	}
	if hits == n {
		high = 1
	}
	return Interval{Mean: share, Low: low, High: high, SD: math.Sqrt(share * (1 - share)), N: n}
}
