package draw

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/mathext"
)

// normalQuantile is the inverse of the standard normal distribution function.
func normalQuantile(p float64) float64 { return mathext.NormalQuantile(p) }

// upperNormal is the probability that a standard normal value exceeds z.
func upperNormal(z float64) float64 { return 0.5 * math.Erfc(z/math.Sqrt2) }

// cutNormalQuantile is the height above the cut, in standard deviations, of a
// standard normal value that is known to exceed cut; above is the probability of that.
// Each half of the normal law is inverted from its own end, which keeps all digits.
func cutNormalQuantile(cut, above, u float64) float64 {
	z := 0.0
	if p := upperNormal(-cut) + u*above; p < 0.5 {
		z = normalQuantile(p)
	} else {
		z = -normalQuantile((1 - u) * above)
	}
	return math.Max(z-cut, 0)
}

// triangularQuantile inverts the two parabolas of the triangular law.
func triangularQuantile(low, likely, high, u float64) float64 {
	if u*(high-low) < likely-low {
		return low + math.Sqrt(u*(high-low)*(likely-low))
	}
	return high - math.Sqrt((1-u)*(high-low)*(high-likely))
}

// choose finds the entry whose share contains u, and where in that share u lies,
// rescaled to (0, 1).
func choose(upTo []float64, u float64) (entry int, rest float64) {
	i := sort.SearchFloat64s(upTo, u)
	from := 0.0
	if i > 0 {
		from = upTo[i-1]
	}
	rest = (u - from) / (upTo[i] - from)
	return i, min(max(rest, lowest), highest)
}
