package draw

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// gammaQuantile is the x with P(shape, x) = u, P being the regularised incomplete
// gamma function; lnGamma is ln Γ(shape + 1).
//
// P is the library's. Its inverse there allocates, takes microseconds and, near
// zero, works to an absolute 10⁻¹⁶ (it returns 0 for a shape of 1/4 and u = 10⁻⁶);
// therefore the inverse is found here.
func gammaQuantile(shape, lnGamma, u float64) float64 {
	// Near zero P(a, x) ≈ x^a / Γ(a+1), and the inverse is a series in
	// r = (u Γ(a+1))^(1/a): x = r + r²/(a+1) + (3a+5) r³ / (2 (a+1)² (a+2)) + …
	// (DiDonato and Morris, ACM TOMS 12 (1986) 377; from memory, held against P in the tests).
	r := math.Exp((math.Log(u) + lnGamma) / shape)
	if r < 1e-5 {
		return r + r*r/(shape+1) + (3*shape+5)*r*r*r/(2*(shape+1)*(shape+1)*(shape+2))
	}
	return refineGamma(shape, lnGamma, u, firstGamma(shape, r, u))
}

// firstGamma is a first guess: for shapes from 1 the cube of Wilson and Hilferty
// (1931), or r where that is small; below 1 a power law below 1 joined to an exponential tail.
func firstGamma(shape, r, u float64) float64 {
	if shape >= 1 {
		cube := 1 - 1/(9*shape) + normalQuantile(u)/(3*math.Sqrt(shape))
		return max(shape*cube*cube*cube, r)
	}
	body := mathext.GammaIncReg(shape, 1)
	if u < body {
		return math.Pow(u/body, 1/shape)
	}
	return 1 - math.Log((1-u)/(1-body))
}

// refineGamma takes Newton steps in ln x, on ln P below the median and on ln(1 − P)
// above it. Both are concave in ln x, so that after the first step all come from
// one side and cannot miss; each step doubles the number of right digits.
func refineGamma(shape, lnGamma, u, x float64) float64 {
	for range 50 {
		density := shape * math.Exp(shape*math.Log(x)-x-lnGamma) // x times the density
		var step float64
		if u <= 0.5 {
			p := mathext.GammaIncReg(shape, x)
			step = math.Log(u/p) * p / density
		} else {
			q := aboveGamma(shape, x)
			step = -math.Log((1-u)/q) * q / density
		}
		x *= math.Exp(step)
		if math.Abs(step) < 1e-9 {
			break
		}
	}
	return x
}

// aboveGamma is 1 − P(shape, x). Below 1.1 the library takes microseconds for it;
// there the difference is taken, which costs at most three of its digits.
func aboveGamma(shape, x float64) float64 {
	if x < 1.1 {
		return 1 - mathext.GammaIncReg(shape, x)
	}
	return mathext.GammaIncRegComp(shape, x)
}
