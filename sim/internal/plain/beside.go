package plain

import "tuckline/sim/internal/plan"

// direct is how many pieces lie on the direct way past a store beside the line.
func (l *link) direct() int64 { return l.arrived - l.store.stored }

// letsBeside says whether so many pieces may enter: over the direct way, straight through to a
// taker, or into the store.
func (e *Engine) letsBeside(l *link, pieces, reserved int64) (bool, int) {
	free := l.free() + reserved
	if pieces <= min(free, l.store.plan.Direct-l.direct()) {
		return true, plan.None
	}
	if taker := e.through(l, pieces); taker != plan.None {
		return true, taker
	}
	if pieces <= min(free, e.roomBeside(l, reserved)) {
		return true, plan.None
	}
	return false, plan.None
}

// roomBeside is the number of places that may be filled now: those of the direct way, and those of
// the store while it takes pieces in.
func (e *Engine) roomBeside(l *link, reserved int64) int64 {
	st := l.store
	room := max(0, st.plan.Direct-l.direct())
	if st.open == 0 && e.now >= st.in.from {
		room += st.takesIn(l.plan.Capacity - st.plan.Direct - st.stored)
	}
	return min(room, l.free()+reserved)
}

// spill puts into the store what finds no place on the direct way, of so many pieces that have come.
func (e *Engine) spill(l *link, came int64) {
	st := l.store
	over := min(came, l.direct()-st.plan.Direct)
	if over <= 0 {
		return
	}
	st.stored += over
	if e.ages != nil {
		e.ages.spills(l, over)
	}
	l.rec.Kept += over
	st.byHand(l, over)
	e.countIn(l, over)
}

// wentBeside takes from the store what the direct way lacked.
func (e *Engine) wentBeside(l *link) {
	st := l.store
	st.taken = e.now
	if lack := -l.direct(); lack > 0 {
		st.stored -= lack
		if st.plan.Hand != plan.None {
			e.tookByHand(l, lack)
		} else {
			l.rec.GivenBack += lack
		}
		e.passReady(&st.out, lack, l.plan.Takes-st.plan.Keeps)
	}
	e.note(l)
}

// tookByHand takes pieces of a hand magazine: those that were carried out before, counted then, and beyond them the last
// part of an order, which is taken as it is.
func (e *Engine) tookByHand(l *link, pieces int64) {
	st := l.store
	carried := min(pieces, st.atHand)
	st.atHand -= carried
	l.rec.GivenBack += pieces - carried
	l.rec.ByHand += pieces - carried
}

// lacksDirect notes a store beside the line when a taker lacks pieces.
func (e *Engine) lacksDirect(l *link) {
	if l.store != nil && l.store.plan.Beside && l.store.stored > 0 {
		e.note(l)
	}
}

// givesBack is how many pieces may go on out of a store: of a hand magazine those that have been carried out.
func (st *store) givesBack() int64 {
	if st.plan.Hand != plan.None {
		return st.atHand
	}
	return st.stored - st.keeps
}

// giveBack lets the first taker that lacks pieces have them from the store: after all moves of the
// instant, so that what comes straight goes first.
func (e *Engine) giveBack(l *link) bool {
	st := l.store
	there := st.givesBack()
	if there <= 0 || st.open > 0 || e.now < st.out.from {
		return false
	}
	for _, k := range l.plan.Takers {
		lack := e.takes(k, l) - l.direct()
		if lack <= 0 || lack > there || !e.otherInputs(k, l) || !e.ready(k) {
			continue
		}
		st.gives = true
		before := l.level
		e.startTaker(&e.nodes[k])
		st.gives = false
		if l.level < before {
			e.note(l) // others may lack more
			return true
		}
	}
	return false
}

// lookAtFlows says whether pieces come straight, after all moves of the instant, for stores whose way out
// then is slower; it says whether any may give back now what it could not before.
func (e *Engine) lookAtFlows() bool {
	any := false
	for _, l := range e.stores {
		st := l.store
		if st.plan.Surplus == 0 {
			continue
		}
		if flows := e.flowsInto(l); flows != st.flows {
			st.flows = flows
			every := st.plan.Out
			if flows {
				every = max(every, st.plan.Surplus)
			}
			e.spaceGate(&st.out, every)
			e.wakeTakers(l)
			any = true
		}
	}
	return any
}

// flowsInto says that pieces come straight: a station before it runs, or a belt before it moves
// pieces.
func (e *Engine) flowsInto(l *link) bool {
	for _, k := range l.plan.Feeders {
		n := &e.nodes[k]
		if n.station != nil {
			if state, _, _ := e.stateOf(n.station); state == plan.Running {
				return true
			}
		} else if n.link.onItsWay() || n.link.plan.Transit == 0 && e.flowsInto(n.link) {
			return true
		}
	}
	return false
}

// clockDry counts the time in which the exit lacked pieces and the store had none.
func (e *Engine) clockDry(l *link) {
	st := l.store
	if st.dry != plan.Never {
		l.rec.RanDry += e.now - st.dry
		st.dry = e.now
	}
}

// lookDry says whether the exit lacks pieces now that the store has none: a station behind is starved.
func (e *Engine) lookDry(l *link) {
	st := l.store
	dry := false
	if l.arrived-st.keeps < l.plan.Takes-st.plan.Keeps {
		for _, i := range st.plan.Exits {
			dry = dry || e.stations[i].state == plan.Starved
		}
	}
	e.clockDry(l)
	switch {
	case !dry:
		st.dry = plan.Never
	case st.dry == plan.Never:
		st.dry = e.now
	}
}
