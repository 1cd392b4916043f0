package stoplog

import "math"

// AndersonDarlingKnown is P(A² < z) of a law whose parameters are known, for many
// values (from about 5 on the size hardly matters): the series of Anderson and Darling, Annals
// of Mathematical Statistics 23 (1952) 193 (from memory; it gives the asymptotic 1 % value
// 3.8781 of Marsaglia and Marsaglia 2004). It is of no use for fitted parameters.
func AndersonDarlingKnown(z float64) float64 {
	switch {
	case !(z > 0):
		return 0
	case z > 40:
		return 1 // to the last digit: the rest falls as exp(−z)
	}
	sum, weight := 0.0, 1.0 // weight is (−1)^j Γ(j+½)/(Γ(½) j!)
	for j := 0; ; j++ {
		m := float64(4*j + 1)
		a := m * m * math.Pi * math.Pi / (8 * z)
		term := weight * m * math.Exp(-a) * andersonDarlingIntegral(z, a)
		sum += term
		if a > 40 {
			break
		}
		weight *= -(float64(j) + 0.5) / float64(j+1)
	}
	return min(max(math.Sqrt(2*math.Pi)/z*sum, 0), 1)
}

// andersonDarlingIntegral is ∫ exp(z/(8(w²+1)) − a w²) dw from 0 on. The trapezoidal rule on a smooth
// even function is good to the last digits once its step is short beside the width of the function.
func andersonDarlingIntegral(z, a float64) float64 {
	step := min(0.05, 0.5/math.Sqrt(a))
	sum := math.Exp(z/8) / 2
	for k := 1; ; k++ {
		w := float64(k) * step
		if a*w*w > 45 {
			return step * sum
		}
		sum += math.Exp(z/(8*(w*w+1)) - a*w*w)
	}
}

// KolmogorovKnown is P(√n D < z) of a law whose parameters are known, for many values:
// 1 − 2 Σ (−1)^(k−1) exp(−2k²z²) (Kolmogorov 1933); see KolmogorovModified for few.
func KolmogorovKnown(z float64) float64 {
	if z < 0.2 {
		return 0 // below 1e-12
	}
	sum := 0.0
	for k := 1; k <= 100; k++ {
		term := math.Exp(-2 * float64(k*k) * z * z)
		if k%2 == 0 {
			term = -term
		}
		sum += term
		if math.Abs(term) < 1e-17 {
			break
		}
	}
	return min(max(1-2*sum, 0), 1)
}

// KolmogorovModified is (√n + 0.12 + 0.11/√n) · D, which follows KolmogorovKnown for
// any n (Stephens, JASA 69 (1974) 730).
func KolmogorovModified(d float64, n int) float64 {
	root := math.Sqrt(float64(n))
	return (root + 0.12 + 0.11/root) * d
}

// CriticalKnown is the value that a statistic passes with probability alpha, 0 < alpha < 1,
// if its law is below, one of AndersonDarlingKnown and KolmogorovKnown.
func CriticalKnown(below func(z float64) float64, alpha float64) float64 {
	low, high := 0.0, 1.0
	for below(high) < 1-alpha && high < 1e3 {
		low, high = high, 2*high
	}
	for range 60 {
		if middle := (low + high) / 2; below(middle) < 1-alpha {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
