package proof

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/internal/estimate"
)

// Row is one figure beside its exact value.
type Row struct {
	Case     *Case
	Quantity string
	Exact    float64
	Source   string
	// Known says how the value is known, in words; Published is the figure of the source where it is
	// another, and Drawn says that the value is itself drawn.
	Known, Published string
	Drawn            bool
	// Low to High is our interval; for a figure without chance both are our figure.
	Low, High, Ours float64
	// Allowance is added on both sides; it is 0 unless the line comes near to the model only.
	Allowance float64
	// Tolerance is that of the source, for a figure without chance.
	Tolerance    float64
	Replications int
	// Primary figures are counted; the others are judged together.
	Primary, Sure bool
	Inside        bool
	// Again is the repetition of a miss, with nine times the replications; nil without.
	Again *Row
	Fault bool

	p    float64
	says string
}

// compared puts an interval beside the exact value.
func compared(c *Case, f *figure, own estimate.Interval) *Row {
	r := &Row{
		Case: c, Quantity: f.quantity, Exact: f.exact, Source: f.source, Known: f.knownWords(), Published: f.published,
		Ours: own.Mean, Low: own.Low, High: own.High, Allowance: f.allowance, Replications: own.N,
	}
	if f.exact == 0 && f.kind == ratio { // what never happens has no interval
		r.Sure, r.Inside = true, own.Mean == 0
		r.Low, r.High, r.Fault = own.Mean, own.Mean, own.Mean != 0
		return r
	}
	slack := f.allowance + rounding*math.Abs(f.exact)
	r.Inside = r.Low-slack <= f.exact && f.exact <= r.High+slack
	r.p = pValue(own, f)
	return r
}

// rounding is for figures that cannot miss but for the last digits of a sum.
const rounding = 1e-9

// WithoutAllowance says that the value lies inside although nothing is added.
func (r *Row) WithoutAllowance() bool {
	slack := rounding * math.Abs(r.Exact)
	return r.Low-slack <= r.Exact && r.Exact <= r.High+slack
}

// pValue is the probability of a figure at least so far from the exact value, by chance alone. The
// allowance is taken off the distance.
func pValue(own estimate.Interval, f *figure) float64 {
	off := math.Max(math.Abs(own.Mean-f.exact)-f.allowance-rounding*math.Abs(f.exact), 0)
	if off == 0 {
		return 1
	}
	error := own.SD
	if f.kind != spread { // the bootstrap gives the standard error itself
		error /= math.Sqrt(float64(own.N))
	}
	if error == 0 {
		return 0
	}
	return 2 * distuv.StudentsT{Sigma: 1, Nu: float64(own.N - 1)}.Survival(off/error)
}

// chance is the share of intervals that miss a right value.
const chance = 1 - confidence
