package plain

import "tuckline/sim/internal/plan"

// takeInput takes the input of a cycle; it returns the level before that, for speed steps.
func (e *Engine) takeInput(s *station) (level int64) {
	if in := s.in; in != nil {
		level = in.level
		if s.simple {
			e.take(in, s.plan.Takes)
		} else {
			e.takeAll(s)
		}
	} else if s.supply > 0 {
		s.supply -= s.plan.Takes
		if s.head != nil {
			e.draw(s)
		}
	}
	s.rec.Taken += s.plan.Takes
	if e.follows {
		e.took(s)
	}
	s.lacked, s.startable, s.waited = plan.Never, false, false
	return level
}

// takeAll takes the input of a cycle from all places.
func (e *Engine) takeAll(s *station) {
	e.readDelays(s)
	s.inARow = 0
	e.take(s.in, s.plan.Takes)
	for i := range s.also {
		e.take(s.also[i].link, s.also[i].takes)
	}
}

// passOn lets one piece go from a link to the next.
func (e *Engine) passOn(l, next *link) {
	e.take(l, 1)
	if e.ages != nil {
		e.ages.passOn()
	}
	e.put(next, 1)
}

// moveOn passes arrived pieces of a link on to the next, one by one.
func (e *Engine) moveOn(n *node) {
	l, next := n.link, n.outs[0].link
	for e.there(l) > 0 {
		if l.since == plan.Never {
			l.since = e.now
		}
		may, taker := e.mayPut(n, 0, 1, l.since, 1)
		if !may {
			return
		}
		l.since = plan.Never
		e.passOn(l, next)
		e.tookTurn(next, n.index)
		if taker != plan.None {
			e.startTaker(&e.nodes[taker])
		}
		if next.store != nil && next.store.plan.Beside {
			e.spill(next, 1)
		}
	}
	l.since = plan.Never
	e.lacksDirect(l)
	e.wakeHolders(l)
}
