package keyfigure

import (
	"slices"

	"gonum.org/v1/gonum/floats"
)

// gauge says what every station lets through: the time of each, and the share of what it gives that is good.
type gauge struct {
	rows []timeRow
	good func(station int) float64
}

// less is the same with a hundredth less time for one station.
func (g *gauge) less(slower int) *gauge {
	less := &gauge{good: g.good, rows: slices.Clone(g.rows)}
	for k := range less.rows {
		if less.rows[k].station == slower {
			less.rows[k].limit *= 0.99
		}
	}
	return less
}

// greatest is the greatest number of counted pieces per minute that the stations
// let through, with buffers without limit between them: what comes into a place has to be
// taken from it, an assembly needs all it takes, branches in turn get the same number of
// pieces, and where a flow divides otherwise it does so in the best way. In a line without
// branches that is the smallest of the rates. It is 0 if the flow cannot be followed.
// Source: linear programme of flows with gains, solved by the simplex method.
func (f *flow) greatest(c *counting, g *gauge) float64 {
	value := make([]float64, len(f.line.Stations))
	for _, i := range c.stations {
		value[i] = g.good(i) * float64(max(f.line.Stations[i].Gives, 1))
	}
	return f.most(value, g)
}

// mostCycles is the greatest number of cycles a minute of one station.
func (f *flow) mostCycles(station int, g *gauge) float64 {
	value := make([]float64, len(f.line.Stations))
	value[station] = 1
	return f.most(value, g)
}

// most is the greatest value a minute, given that of a cycle of each station.
func (f *flow) most(value []float64, g *gauge) float64 {
	p := &programme{flow: f, g: g, n: len(f.line.Stations)}
	for joint := range f.joints {
		p.balance(joint)
	}
	p.dropRepeated()
	for k, limit := range g.rows {
		row := p.row()
		copy(row, limit.minutes)
		row[p.n+k] = 1 // what is left of the time
		p.limits = append(p.limits, limit.limit)
	}
	return p.solve(append(value, make([]float64, len(g.rows))...))
}

// programme is the equations of the flow; the unknowns are the cycles of the stations, then
// what is left of the time in each row.
type programme struct {
	*flow
	g      *gauge
	n      int
	rows   [][]float64
	limits []float64
}

func (p *programme) row() []float64 {
	p.rows = append(p.rows, make([]float64, p.n+len(p.g.rows)))
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
			row[i] -= p.takesFrom(i, joint) * (1 - p.backShare(i, joint, p.g.good(i)))
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
		if limit := i - (len(p.rows) - len(p.g.rows)); limit >= 0 {
			ready[i] = p.n + limit
		}
	}
	return most(value, p.rows, p.limits, ready)
}
