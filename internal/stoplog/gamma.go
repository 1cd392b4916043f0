package stoplog

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Gamma is the law with density x^(Shape−1) exp(−x/Scale) / (Γ(Shape) Scale^Shape).
type Gamma struct{ Shape, Scale float64 }

// Kind is "gamma".
func (Gamma) Kind() Kind { return GammaKind }

// Parameters are shape and scale.
func (g Gamma) Parameters() []Parameter { return []Parameter{{"shape", g.Shape}, {"scale", g.Scale}} }

// Mean is Shape · Scale.
func (g Gamma) Mean() float64 { return g.Shape * g.Scale }

// SD is √Shape · Scale.
func (g Gamma) SD() float64 { return math.Sqrt(g.Shape) * g.Scale }

// LogDensity is ln f(x).
func (g Gamma) LogDensity(x float64) float64 {
	ln, _ := math.Lgamma(g.Shape)
	return (g.Shape-1)*math.Log(x/g.Scale) - x/g.Scale - ln - math.Log(g.Scale)
}

// LogSurvival is ln Q(Shape, x/Scale). Where Q is too small for a number it is the
// first terms of the asymptotic series (Abramowitz and Stegun 6.5.32).
func (g Gamma) LogSurvival(x float64) float64 {
	z := x / g.Scale
	if z < g.Shape {
		return math.Log1p(-mathext.GammaIncReg(g.Shape, z))
	}
	if q := mathext.GammaIncRegComp(g.Shape, z); q > 1e-290 {
		return math.Log(q)
	}
	ln, _ := math.Lgamma(g.Shape)
	return (g.Shape-1)*math.Log(z) - z - ln + math.Log1p((g.Shape-1)/z)
}

// Quantile inverts the distribution function.
func (g Gamma) Quantile(p float64) float64 { return g.Scale * mathext.GammaIncRegInv(g.Shape, p) }
