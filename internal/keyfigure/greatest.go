package keyfigure

import (
	"slices"

	"gonum.org/v1/gonum/floats"
)

// gauge says what every station lets through.
type gauge struct {
	// cycles are those that it makes a minute at most, good the share of what it gives.
	cycles, good func(station int) float64
}

// less is the same with one station slower by a hundredth.
func (g *gauge) less(slower int) *gauge {
	return &gauge{good: g.good, cycles: func(i int) float64 {
		if i == slower {
			return 0.99 * g.cycles(i)
		}
		return g.cycles(i)
	}}
}

// greatest is the greatest number of counted pieces per minute that the stations
// let through, with buffers without limit between them: what comes into a place has to be
// taken from it, an assembly needs all it takes, branches in turn get the same number of
// pieces, and where a flow divides otherwise it does so in the best way. In a line without
// branches that is the smallest of the rates. It is 0 if the flow cannot be followed.
// Source: linear programme of flows with gains, solved by the simplex method.
func (f *flow) greatest(c *counting, g *gauge) float64 {
	p := &programme{flow: f, g: g, n: len(f.line.Stations)}
	for joint := range f.joints {
		p.balance(joint)
	}
	p.dropRepeated()
	for i := range p.n {
		row := p.row()
		row[i], row[p.n+i] = 1, 1 // cycles and what is left of them
		p.limits = append(p.limits, max(0, g.cycles(i)))
	}
	value := make([]float64, 2*p.n)
	for _, i := range c.stations {
		value[i] = g.good(i) * float64(max(f.line.Stations[i].Gives, 1))
	}
	return p.solve(value)
}

// programme is the equations of the flow; the unknowns are the cycles of the stations, then
// what is left of the most that they could make.
type programme struct {
	*flow
	g      *gauge
	n      int
	rows   [][]float64
	limits []float64
}

func (p *programme) row() []float64 {
	p.rows = append(p.rows, make([]float64, 2*p.n))
	return p.rows[len(p.rows)-1]
}

// balance says that what comes into a joint is taken from it, branch by branch where it comes in turn.
func (p *programme) balance(joint int) {
	j := &p.joints[joint]
	branches := j.turns
	if branches == nil {
		branches = [][]int{j.takers}
	}
	for _, branch := range branches {
		if len(branch) == 0 {
			continue
		}
		row := p.row()
		for _, i := range j.feeders {
			row[i] += p.g.good(i) * float64(max(p.line.Stations[i].Gives, 1)) / float64(len(branches))
		}
		for _, i := range branch {
			row[i] -= p.takesFrom(i, joint)
		}
	}
}

// dropRepeated drops equations that follow from others, as where branches in turn are put
// together again: the solver wants each to say something of its own.
func (p *programme) dropRepeated() {
	var kept, reduced [][]float64
	for _, row := range p.rows {
		rest := slices.Clone(row)
		for _, other := range reduced {
			floats.AddScaled(rest, -floats.Dot(rest, other), other)
		}
		if size := floats.Norm(rest, 2); size > 1e-9*floats.Norm(row, 2) {
			floats.Scale(1/size, rest)
			kept, reduced = append(kept, row), append(reduced, rest)
		}
	}
	p.rows, p.limits = kept, make([]float64, len(kept))
}

// solve is the greatest flow.
func (p *programme) solve(value []float64) float64 {
	if p.n == 0 || !slices.ContainsFunc(value, func(v float64) bool { return v != 0 }) {
		return 0
	}
	// Of a balance nothing is known before; a limit is solved by what is left of it.
	ready := make([]int, len(p.rows))
	for i := range ready {
		ready[i] = -1
		if station := i - (len(p.rows) - p.n); station >= 0 {
			ready[i] = p.n + station
		}
	}
	return most(value, p.rows, p.limits, ready)
}
