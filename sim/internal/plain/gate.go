package plain

import "tuckline/sim/internal/plan"

// gate lets pieces pass at most so fast: after n pieces the next may go after n times every.
type gate struct {
	every plan.Micros
	// from is when the next piece may go: so much later than base as the last pieces take.
	from, base plan.Micros
	pieces     int64
	timer      int // or none
}

func (g *gate) reset(every plan.Micros) {
	g.every, g.from, g.base, g.pieces = every, 0, 0, 0
}

// passGate lets pieces pass. What passes straight through with others may come before its time; the next then waits
// for longer.
func (e *Engine) passGate(g *gate, pieces int64) {
	if g.timer == none {
		return
	}
	g.base, g.pieces = max(g.from, e.now), pieces
	e.spaceGate(g, g.every)
}

// passReady lets pieces pass of which up to so many lie ready at the exit: while the station behind was at work, they came
// out at the rate of the gate.
func (e *Engine) passReady(g *gate, pieces, ready int64) {
	if g.timer == none {
		return
	}
	g.base, g.pieces = max(g.from, e.now-plan.Micros(ready-1)*g.every), pieces
	e.spaceGate(g, g.every)
}

// spaceGate sets how fast a gate lets pieces pass, after those too that went last.
func (e *Engine) spaceGate(g *gate, every plan.Micros) {
	g.every = every
	g.from = g.base + plan.Micros(g.pieces)*every
	if g.from > e.now {
		e.cal.set(g.timer, g.from)
	} else {
		e.cal.set(g.timer, plan.Never)
	}
}

// lapses lets go what a store keeps when no more input can come.
func (e *Engine) lapses(l *link) bool {
	st := l.store
	if st.keeps == 0 || e.takenOut(l) || !e.runsOut(l) {
		return false
	}
	st.keeps = 0
	e.wakeTakers(l)
	return true
}
