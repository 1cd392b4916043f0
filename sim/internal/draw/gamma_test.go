package draw

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mathext"
)

// Over all shapes that a law can have, both tails lead back to u with all the
// digits that the incomplete gamma function of the library has.
func TestGammaQuantileOverAllShapes(t *testing.T) {
	for shape := 1.0 / (largestCV * largestCV); shape <= 1.0001/(smallestCV*smallestCV); shape *= 1.07 {
		lnGamma, _ := math.Lgamma(shape + 1)
		for _, u := range grid {
			x := gammaQuantile(shape, lnGamma, u)
			if !(x >= 0) || math.IsInf(x, 0) {
				t.Fatalf("shape %g, u %g: %g is not a finite number from 0", shape, u, x)
			}
			if x < 1e-300 {
				continue // below the smallest numbers there is nothing to compare
			}
			back := mathext.GammaIncReg(shape, x) / u
			if u > 0.5 {
				back = mathext.GammaIncRegComp(shape, x) / (1 - u)
			}
			// P itself is computed through e^y with y up to thousands: about 10⁻¹² of P.
			// A last digit of x moves P by up to 40 √shape last digits.
			if allowed := 1e-12 + 1e-14*math.Sqrt(shape); !(math.Abs(back-1) <= allowed) {
				t.Errorf("shape %g, u %.17g: x = %g leads back to %.17g times u", shape, u, x, back)
			}
		}
	}
}

// The solver takes over from the series at 10⁻⁵ without a step back.
func TestGammaQuantileIsSmoothAtTheSeries(t *testing.T) {
	for _, shape := range []float64{0.1, 0.25, 0.5, 1, 1.7} {
		lnGamma, _ := math.Lgamma(shape + 1)
		u := math.Exp(shape*math.Log(1e-5) - lnGamma)
		below, above := gammaQuantile(shape, lnGamma, u*(1-1e-12)), gammaQuantile(shape, lnGamma, u*(1+1e-12))
		if rise := above/below - 1; !(rise > 0 && rise < 1e-11/shape) {
			t.Errorf("shape %g: from %.17g to %.17g", shape, below, above)
		}
	}
}
