package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// newBounds derives the two ends between which the long-run output lies.
func newBounds(f *flow, stations []Station, c *counting) Bounds {
	b := Bounds{Buffered: slices.ContainsFunc(f.line.Buffers, func(x sim.Buffer) bool { return x.Holds != 0 })}
	b.AtSet = f.greatest(c, &gauge{rows: atSetSpeed(stations), good: func(int) float64 { return 1 }})
	good := mostGood(stations)
	atMost := &gauge{rows: append(withStops(f.line, stations), f.gates(good)...), good: good}
	b.Unlimited = f.greatest(c, atMost)
	b.rigid(f, stations)
	var narrow []int
	for i := range stations {
		if b.Unlimited > 0 && f.greatest(c, atMost.less(i)) < b.Unlimited*(1-1e-6) {
			narrow = append(narrow, i)
			b.Constraint = append(b.Constraint, stations[i].Name)
		}
	}
	for j := range f.line.Buffers {
		if b.Unlimited > 0 && f.greatest(c, atMost.less(placeRow(j))) < b.Unlimited*(1-1e-6) {
			b.Constraint = append(b.Constraint, f.line.Buffers[j].Name)
			b.Gated = true
		}
	}
	b.together = !b.Gated && (f.apart(narrow, narrow) || oneDrive(f.line, narrow))
	return b
}

// mostGood is the share of good pieces by station, with the least that is lost.
func mostGood(stations []Station) func(int) float64 {
	return func(i int) float64 { return stations[i].mostGood }
}

// apart says that no pieces get from a station of one side to one of the other.
func (f *flow) apart(one, other []int) bool {
	for _, i := range one {
		before, after := make([]bool, len(f.before)), make([]bool, len(f.before))
		mark(before, i, f.before)
		mark(after, i, f.after)
		for _, k := range other {
			if k != i && (before[k] || after[k]) {
				return false
			}
		}
	}
	return true
}
