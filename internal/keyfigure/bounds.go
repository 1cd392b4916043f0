package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// newBounds derives the two ends between which the long-run output lies.
func newBounds(f *flow, stations []Station, c *counting) Bounds {
	b := Bounds{Buffered: slices.ContainsFunc(f.line.Buffers, func(x sim.Buffer) bool { return x.Holds != 0 })}
	b.rigid(stations)
	b.AtSet = f.greatest(c, &gauge{
		cycles: func(i int) float64 { return stations[i].Set.Cycles },
		good:   func(int) float64 { return 1 },
	})
	atMost := &gauge{
		cycles: func(i int) float64 { return stations[i].AtMost.Cycles },
		good:   func(i int) float64 { return stations[i].GoodShare },
	}
	b.Unlimited = f.greatest(c, atMost)
	var narrow []int
	for i := range stations {
		if b.Unlimited > 0 && f.greatest(c, atMost.less(i)) < b.Unlimited*(1-1e-6) {
			narrow = append(narrow, i)
			b.Constraint = append(b.Constraint, stations[i].Name)
		}
	}
	b.together = f.apart(narrow, narrow) || oneDrive(f.line, narrow)
	return b
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

// rigid derives the output of the line without any buffer, all stations tied
// to one speed: 1/(1 + sum of down shares). Source: bufferless chain with
// operation-dependent stops (Buzacott 1967; from memory). A station with only
// part of the flow beside others makes fewer cycles a piece, and its stops stop
// only that part.
func (b *Bounds) rigid(stations []Station) {
	down, calendar := 0.0, 1.0
	for i := range stations {
		s := &stations[i]
		cycles := s.cycles
		if cycles == 0 || s.Set.Cycles <= 0 {
			continue
		}
		if rate := 1 / (s.meanCycle(s.Set) * cycles); b.Tied == 0 || rate < b.Tied {
			b.Tied = rate
		}
		part := min(1, cycles*float64(s.Gives)*s.PerPiece*s.Yield)
		down += part * cycles * (s.downPerCycle + s.downPerRun*s.meanCycle(s.Set))
		calendar *= 1 - part*(1-s.calendar)
	}
	b.RigidEfficiency = calendar / (1 + down*b.Tied)
	b.Rigid = b.Tied * b.RigidEfficiency
}
