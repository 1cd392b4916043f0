package stoplog

import "math"

// quantileAbove is the quantile of the values above a threshold. With one it is
// searched on the logarithm of the survival, so that it holds where nearly all of the
// law lies under the threshold.
func quantileAbove(law Law, p, above float64) float64 {
	if above == 0 {
		return law.Quantile(p)
	}
	target := law.LogSurvival(above) + math.Log1p(-p)
	low, high := math.Log(above), math.Log(above)+1
	for range 60 {
		if law.LogSurvival(math.Exp(high)) < target {
			break
		}
		low, high = high, high+2*(high-low)
	}
	at := low
	for range 200 {
		x := math.Exp(at)
		ln := law.LogSurvival(x)
		if ln > target {
			low = at
		} else {
			high = at
		}
		// d ln S / d ln x = −x f / S
		next := at + (ln-target)/(x*math.Exp(law.LogDensity(x)-ln))
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-at) < 1e-14 || high-low < 1e-14 {
			break
		}
		at = next
	}
	return max(math.Exp(at), above)
}
