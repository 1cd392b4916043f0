package plain

import "slices"

// usedUp says that nothing will move any more because supply has come to its end: nobody is at work
// or stopped, nothing is on its way. Stations whose pieces lack a partner that has come to its end may
// hold them.
func (e *Engine) usedUp() bool {
	for i := range e.links {
		if l := &e.links[i]; l.onItsWay() || e.movesLater(l) {
			return false
		}
	}
	ended := false
	for i := range e.stations {
		s := &e.stations[i]
		if e.scrapComes(s) {
			return false
		}
		ended = ended || s.exhausted()
	}
	return ended
}

// exhausted says that the outside has not enough left for a cycle.
func (s *station) exhausted() bool {
	return s.in == nil && s.supply >= 0 && s.supply < s.plan.Takes
}

// runsOut says that no more pieces can come into a link: all before it is empty, and
// supply has come to its end.
func (e *Engine) runsOut(l *link) bool {
	if l.moving.size > 0 || l.store != nil && l.store.back.open {
		return false
	}
	for _, k := range l.plan.Feeders {
		if n := &e.nodes[k]; !e.bringsNoMore(n) {
			return false
		}
	}
	return true
}

// bringsNoMore says that a feeder has nothing and will have nothing: one of its inputs
// has come to its end.
func (e *Engine) bringsNoMore(n *node) bool {
	s := n.station
	switch {
	case s == nil:
		return n.link.arrived == 0 && e.runsOut(n.link) // what is kept goes when no more comes
	case s.phase != idle:
		return false
	case s.in == nil:
		return s.exhausted()
	case s.in.arrived < s.plan.Takes && e.runsOut(s.in):
		return true
	}
	return slices.ContainsFunc(s.also, func(in input) bool { return in.link.arrived < in.takes && e.runsOut(in.link) })
}
