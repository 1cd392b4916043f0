package stoplog

import "math"

// AndersonDarlingKnown is P(A² < z) of a law whose parameters are known, for many
// values (from about 5 on the size hardly matters): the approximation adinf of Marsaglia
// and Marsaglia, Evaluating the Anderson-Darling Distribution, Journal of Statistical
// Software 9 (2) (2004), good to 2 in a million (coefficients from memory). It is of no use
// for fitted parameters.
func AndersonDarlingKnown(z float64) float64 {
	if !(z > 0) {
		return 0
	}
	if z < 2 {
		return math.Exp(-1.2337141/z) / math.Sqrt(z) *
			horner(z, 2.00012, .247105, -.0649821, .0347962, -.0116720, .00168691)
	}
	return math.Exp(-math.Exp(horner(z, 1.0776, -2.30695, .43424, -.082433, .008056, -.0003146)))
}

// horner is the polynomial with these coefficients, lowest power first.
func horner(z float64, coefficients ...float64) float64 {
	sum := 0.0
	for i := len(coefficients) - 1; i >= 0; i-- {
		sum = sum*z + coefficients[i]
	}
	return sum
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
