package stoplog

import (
	"fmt"
	"math"
	"slices"
)

// Distances are two measures of how far a log lies from a law.
type Distances struct {
	// AndersonDarling is A² = −n − Σ (2i − 1)(ln F(xᵢ) + ln(1 − F(xₙ₊₁₋ᵢ)))/n, which looks at
	// the tails more than the other (Anderson and Darling, JASA 49 (1954) 765).
	AndersonDarling float64
	// KolmogorovSmirnov is D, the largest distance between the law and the steps of the log.
	KolmogorovSmirnov float64
}

// DistancesOf measures a log against a law; F is given the threshold of each value.
// Open observations cannot be ranked: a log that has some is refused, leave them out first.
func DistancesOf(law Law, log []Observation) (Distances, error) {
	if err := check(log); err != nil {
		return Distances{}, err
	}
	if n := len(log) - ended(log); n > 0 {
		return Distances{}, fmt.Errorf("%d of %d observations are open: a test of fit needs those that ended, leave the others out", n, len(log))
	}
	return distances(law, log), nil
}

func distances(law Law, log []Observation) Distances {
	lasting := make([]float64, len(log))
	for i, o := range log {
		ln := law.LogSurvival(o.Value)
		if o.Above > 0 {
			ln -= law.LogSurvival(o.Above)
		}
		lasting[i] = min(ln, 0)
	}
	slices.Sort(lasting)
	slices.Reverse(lasting) // the smallest value lasts with the highest chance
	return distancesOfChances(lasting)
}

// smallestChance keeps logarithms finite for a value that the law all but excludes.
const smallestChance = 1e-300

// distancesOfChances takes ln(1 − F) of the values in ascending order of values.
func distancesOfChances(lasting []float64) Distances {
	n := float64(len(lasting))
	sum, d := 0.0, 0.0
	for i, ln := range lasting {
		f := -math.Expm1(ln)
		rank := float64(i)
		d = max(d, (rank+1)/n-f, f-rank/n)
		sum += (2*rank + 1) * math.Log(max(f, smallestChance))
		sum += (2*(n-rank) - 1) * max(ln, math.Log(smallestChance))
	}
	return Distances{AndersonDarling: -n - sum/n, KolmogorovSmirnov: d}
}
