package plain

import "tuckline/sim/internal/plan"

// mayPocket notes a station whose input is not complete: if that is still so after all moves
// of the instant, a pocket runs through empty.
func (e *Engine) mayPocket(s *station) {
	if s.inARow < s.plan.EmptyPockets {
		e.pockets = append(e.pockets, s.index)
	}
}

// startPockets lets empty pockets run through where nothing but input is missing: no station that
// its start level holds is ready.
func (e *Engine) startPockets() {
	for _, i := range e.pockets {
		s := &e.stations[i]
		if s.phase != idle || !e.ready(s.node) {
			continue
		}
		s.phase, s.since, s.lacked = working, plan.Never, plan.Never
		s.pocket = true
		s.inARow++
		e.busy[s.node] = true
		e.atWork++
		e.touched.add(i)
		pause := e.pause(s)
		e.work(s, s.machine.Pocket(pause), pause)
	}
	e.pockets = e.pockets[:0]
}

// pocketOver ends an empty pocket: the next cycle, or pocket, may start.
func (e *Engine) pocketOver(s *station) {
	s.machine.PocketOver()
	s.pocket = false
	s.rec.EmptyPockets++
	if e.because != nil {
		e.because.noInput(e, s)
	}
	e.cal.set(s.index, plan.Never)
	e.atWork--
	s.rested, s.phase = e.now, idle
	e.busy[s.node] = false
	e.dirty.add(s.node)
}
