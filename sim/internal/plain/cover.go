package plain

import "tuckline/sim/internal/plan"

// draw lets a station take the input of a cycle from the order of its line. The sources of a line share it.
func (e *Engine) draw(s *station) {
	l := s.order
	rec := &e.rec.Orders[l.record]
	rec.Input += s.head.Uses
	if e.order(l).Batch > 0 {
		l.left -= s.head.Uses
	} else {
		l.left -= s.head.Worth
	}
	e.allot(l)
}

// mostCycles is more than any replication has.
const mostCycles = 1 << 40

// allot says how much each of the sources may still take: all of it, as long as the others take nothing.
func (e *Engine) allot(l *orderLine) {
	byBatch := e.order(l).Batch > 0
	l.dry = true
	for i := range l.plan.Heads {
		h := &l.plan.Heads[i]
		s := &e.stations[h.Station]
		cycles := int64(0)
		switch {
		case byBatch:
			cycles = l.left / h.Uses
		case l.left > 0: // the last cycle may give more than is needed
			cycles = (l.left + h.Worth - 1) / h.Worth
		}
		if cycles > 0 {
			l.dry = false
			if s.supply == 0 {
				e.wake(s.node)
			}
		}
		s.supply = min(cycles, mostCycles) * s.plan.Takes
	}
	if l.dry {
		l.asked = 0
		e.making.watches, e.asked = true, true
	}
}

// missing says that pieces that had been let in for an order by good pieces will not be counted, or will after all: the
// sources make up for them.
func (e *Engine) missing(l *orderLine, worth int64) {
	if l == nil || worth == 0 || l.phase != makes || e.order(l).Good == 0 || e.reachedCount(l) {
		return
	}
	l.left += worth
	e.allot(l)
}

// reachedCount says that the count of an order by good pieces has been reached.
func (e *Engine) reachedCount(l *orderLine) bool {
	return e.rec.Orders[l.record].Finished != plan.Never
}

// countGood counts good pieces that leave a station.
func (e *Engine) countGood(s *station) {
	l := s.order
	if l.record == none {
		return
	}
	rec := &e.rec.Orders[l.record]
	rec.Good += s.out
	if good := e.order(l).Good; good > 0 && rec.Good >= good && !e.reachedCount(l) {
		l.left = 0
		e.allot(l)
		e.finished(l)
	}
}

// fateOf follows what becomes of a cycle in a line with orders, of which so many pieces are good.
func (e *Engine) fateOf(s *station, good int64) {
	if s.flow != nil && good < s.plan.Gives {
		e.missing(s.order, (s.plan.Gives-good)*s.flow.Worth)
	}
	switch {
	case s.short == 0:
		return
	case s.phase == working:
		s.rec.PartCycles++
	default: // a stop has ended it
		s.rec.PartLost += s.short
	}
	s.short = 0
}

// backWorth is what a rejected cycle of a station is worth whose pieces come back to a place.
func (s *station) backWorth(l *link) int64 {
	if s.flow == nil || s.in != l {
		return 0
	}
	return s.plan.Gives * s.flow.Worth
}
