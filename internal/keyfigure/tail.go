package keyfigure

import "tuckline/sim"

// longer is the share of a law above a value.
func longer(law sim.Law, than float64) float64 {
	switch {
	case law.IsZero():
		return 0
	case law.IsFixed():
		if law.Mean() > than {
			return 1
		}
		return 0
	}
	low, high := 0.0, 1.0
	for range 50 {
		if middle := (low + high) / 2; law.Quantile(middle) > than {
			high = middle
		} else {
			low = middle
		}
	}
	return 1 - high
}

// excess is the mean of what a law is above a value, 0 where it is below: E(X - x)⁺, the
// integral of the quantiles above it.
func excess(law sim.Law, above float64) float64 {
	share := longer(law, above)
	switch {
	case share <= 0:
		return 0
	case share >= 1:
		return law.Mean() - above
	}
	sum := 0.0
	for k := range raceParts {
		sum += law.Quantile(1-share*(1-(float64(k)+0.5)/raceParts)) - above
	}
	return max(0, share*sum/raceParts)
}
