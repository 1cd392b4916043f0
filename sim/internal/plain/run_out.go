package plain

import "tuckline/sim/internal/plan"

// lookAtOrders follows the lines that are running out, after the moves of an instant, up to the beginning of the next order.
func (e *Engine) lookAtOrders() {
	for {
		e.settleMoves()
		any := false
		for i := range e.making.lines {
			any = e.followOrder(&e.making.lines[i]) || any
		}
		if !any && !e.giveOrders() {
			break
		}
		e.moves()
		e.strikes()
	}
	e.making.watches = false
	for i := range e.making.lines {
		l := &e.making.lines[i]
		e.making.watches = e.making.watches || l.phase == makes && l.dry || l.phase == emptying
	}
}

// settleMoves lets pieces go on that only what the moves of the instant have led to lets go.
func (e *Engine) settleMoves() {
	for len(e.stores) > 0 && (e.lookAtFlows() || e.carries || e.lookAtHands()) {
		e.carries = false
		e.moves()
		e.strikes()
	}
}

// followOrder takes the next step of a line that is running out; it says whether anything may move again.
func (e *Engine) followOrder(l *orderLine) bool {
	switch {
	case l.phase == makes && l.dry:
		return e.runsDry(l)
	case l.phase == emptying:
		return e.empties(l)
	}
	return false
}

// runsDry looks whether what the heads have given has gone through: then what has been kept goes, then an input that is not
// complete; at last the line is emptied.
func (e *Engine) runsDry(l *orderLine) bool {
	switch {
	case !e.flowRests(l):
		return false
	case e.lapseAll(l):
		return true
	case e.order(l).Good > 0 && !e.reachedCount(l):
		l.left = 1 // what lies about makes no piece: one more cycle
		e.allot(l)
		return true
	case e.lastParts(l):
		return true
	}
	l.phase, l.since, l.asked = emptying, e.now, 0
	e.stopSupply(l)
	return true
}

// flowRests says that nothing can move any more of what the heads have given.
func (e *Engine) flowRests(l *orderLine) bool {
	stations, all := len(l.plan.Flow), len(l.plan.Flow)+len(l.plan.Fed)
	for i := range all {
		k := (l.asked + i) % all
		rests := false
		if k < stations {
			rests = e.rests(&e.stations[l.plan.Flow[k].Station])
		} else {
			rests = e.lies(&e.links[l.plan.Fed[k-stations]])
		}
		if !rests {
			l.asked = k
			return false
		}
	}
	return true
}

// rests says that a station can do nothing more with what the heads have given, whatever ends or goes on elsewhere.
func (e *Engine) rests(s *station) bool {
	switch {
	case s.phase == working:
		return false
	case s.phase == loaded:
		return e.up(s)
	case s.phase == holding || s.in == nil:
		return true
	case s.lastPart > 0:
		return e.up(s) && s.since != plan.Never // as long as it waits for room, what is behind it goes on
	}
	for i := range 1 + len(s.also) {
		if in := s.input(i); in.link.fed && e.thereAtLast(in.link) < in.takes && !e.atTheDoor(in.link) {
			return true
		}
	}
	if !e.up(s) {
		return false
	}
	for i := range s.also {
		if in := s.input(1 + i); !in.link.fed && e.thereAtLast(in.link) < in.takes {
			return false // that will come
		}
	}
	return s.in.fed || e.thereAtLast(s.in) >= s.plan.Takes
}

// lies says that nothing of what is in a place moves by itself.
func (e *Engine) lies(l *link) bool {
	st := l.store
	if st == nil {
		return l.moving.size == 0
	}
	return !l.onItsWay() && !e.keptByStop(l) && !st.hand.open && !st.back.open && !e.movesLater(l)
}

// keptByStop says that a stop of a place keeps pieces in it, or out of it.
func (e *Engine) keptByStop(l *link) bool {
	return l.store.open > 0 && (l.level > 0 || e.awaited(l))
}

// takenOut says that what a place keeps at the end of an order is taken out by hand.
func (e *Engine) takenOut(l *link) bool { return l.plan.TakenOut && e.making.plan != nil }

// lapseAll lets everything go that stores keep, and that waits for a start level: nothing comes any more.
func (e *Engine) lapseAll(l *orderLine) bool {
	any := false
	for _, k := range l.plan.Fed {
		link := &e.links[k]
		if st := link.store; st != nil && st.keeps > 0 && link.arrived > 0 && !link.plan.TakenOut {
			st.keeps = 0
			e.wakeTakers(link)
			e.note(link)
			any = true
		}
	}
	for i := range l.plan.Flow {
		s := &e.stations[l.plan.Flow[i].Station]
		if s.start != nil && s.start.fed && !s.startable && s.phase == idle && s.start.arrived > 0 && !s.start.plan.TakenOut {
			s.startable = true
			e.wake(s.node)
			any = true
		}
	}
	return any
}

// empties takes out of a line what is left in it; it says whether anything may move again. What machines hold goes into
// the places behind them, and is taken out there.
func (e *Engine) empties(l *orderLine) bool {
	if !e.machinesRest(l) {
		return false
	}
	any := false
	for _, k := range l.plan.Links {
		if e.links[k].level > 0 {
			e.clearOut(&e.links[k])
			any = true
		}
	}
	if any {
		return true
	}
	rest := false
	for _, i := range l.plan.Stations {
		switch s := &e.stations[i]; s.phase {
		case holding:
			e.clearHeld(s)
			any = true
		case idle:
		default:
			rest = true
		}
	}
	if any || rest {
		return any
	}
	l.phase, l.since = free, e.now
	if !e.reachedCount(l) {
		e.finished(l)
	}
	return true
}

// machinesRest says that no machine of a line is at work, and that nothing keeps what lies in the places from being taken out.
func (e *Engine) machinesRest(l *orderLine) bool {
	stations, all := len(l.plan.Stations), len(l.plan.Stations)+len(l.plan.Links)
	for i := range all {
		k := (l.asked + i) % all
		rests := false
		if k < stations {
			s := &e.stations[l.plan.Stations[k]]
			rests = s.phase != working && (s.phase != loaded || e.up(s))
		} else {
			link := &e.links[l.plan.Links[k-stations]]
			st := link.store
			rests = st == nil || !e.keptByStop(link) && !st.hand.open && !st.back.open
		}
		if !rests {
			l.asked = k
			return false
		}
	}
	return true
}

// clearOut takes all pieces out of a place.
func (e *Engine) clearOut(l *link) {
	e.clock(l)
	l.rec.Cleared += l.level
	l.level, l.arrived, l.since = 0, 0, plan.Never
	if l.plan.Transit > 0 {
		l.moving.clear()
		e.cal.set(l.timer, plan.Never)
	}
	if e.ages != nil {
		e.ages.clearOut(l)
	}
	if st := l.store; st != nil {
		st.stored, st.atHand = 0, 0
		e.thaw(l)
		e.note(l)
	}
	e.roomIn(l)
}

// clearHeld takes out what a machine holds that does not find its way into a place: it counts as if it had.
func (e *Engine) clearHeld(s *station) {
	next := e.nodes[s.node].outs[0].link
	e.clock(next)
	if s.reserved > 0 {
		e.unreserve(s)
	}
	e.gave(s)
	next.rec.In += s.out
	next.rec.Cleared += s.out
	s.rec.Passed += s.out
	s.rec.Holding += e.now - s.heldFrom
	s.out, s.phase, s.since = 0, idle, plan.Never
	e.touched.add(s.index)
	e.wake(s.node)
}
