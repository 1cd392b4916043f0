package plain

import (
	"cmp"
	"slices"

	"tuckline/sim/internal/plan"
)

// store is what a link does beside holding pieces; most links have none.
type store struct {
	plan *plan.Store
	// standing: nothing moves on the belt since stoodFrom.
	standing  bool
	stoodFrom plan.Micros
	// stopped: its sensor has reported full, and not clear since. Seen is when what the next report
	// waits for began or will begin, Never if it does not hold; reached is, while stopped, when the queue
	// reaches a sensor again.
	stopped       bool
	seen, reached plan.Micros
	in, out       gate
	// keeps is what has to stay: nothing once no more input can come.
	keeps int64
	// stored are the pieces that lie beside the line, of those that have arrived; atHand are those of them that
	// somebody has carried out and that have not gone on yet.
	stored, atHand int64
	// gives: it gives back now, to a taker that lacks pieces after all moves of the instant.
	gives bool
	// flows: pieces come straight from the line.
	flows bool
	// dry is since when the exit has lacked pieces while it had none, Never if it does not.
	dry   plan.Micros
	stops []storeStop
	// open are its stops under way, stoppedFrom is when the first of them began.
	open        int
	stoppedFrom plan.Micros
	// noted: it is on the list of those to look at after the moves.
	noted bool
	hand  hand
	need
	back back
	// sensorTimer is the timer of the next report.
	sensorTimer int
}

// shut is far below any number of pieces.
const shut = -plan.NoLimit

// connectStores makes what the links need that are more than a place, and their timers.
func (e *Engine) connectStores() {
	for i := range e.links {
		p := e.plan.Links[i].Store
		if p == nil {
			continue
		}
		st := &store{plan: p}
		for _, behind := range p.Returns.Stations {
			e.stations[behind].returns = append(e.stations[behind].returns, &e.links[i])
		}
		e.links[i].store, e.links[i].index = st, i
		e.stores = append(e.stores, &e.links[i])
		if p.Full.At > 0 {
			st.sensorTimer = e.timers.storeTimer(i, sensorDue, 0)
		}
		st.in.timer, st.out.timer = none, none
		if p.In > 0 || p.Hand != plan.None {
			st.in.timer = e.timers.storeTimer(i, inDue, 0)
		}
		if p.Hand != plan.None {
			e.connectNeed(&e.links[i])
		}
		if p.Out > 0 || p.Surplus > 0 {
			st.out.timer = e.timers.storeTimer(i, outDue, 0)
		}
		for j := range p.Stops {
			stop := storeStop{plan: &p.Stops[j], timer: none}
			if p.Stops[j].Clock == plan.CalendarClock {
				stop.timer = e.timers.storeTimer(i, stopDue, j)
			}
			st.stops = append(st.stops, stop)
		}
	}
	slices.SortFunc(e.stores, func(a, b *link) int {
		x, y := &e.plan.Links[a.index], &e.plan.Links[b.index]
		return cmp.Or(cmp.Compare(x.Takers[0], y.Takers[0]), cmp.Compare(x.Name, y.Name))
	})
	for _, l := range e.stores {
		if l.store.plan.Hand != plan.None {
			e.hands = append(e.hands, l)
		}
	}
}

// connectNeed makes what tells whether somebody has to carry.
func (e *Engine) connectNeed(l *link) {
	n := &l.store.need
	n.timer = e.timers.storeTimer(l.index, handDue, 0)
	for _, i := range l.store.plan.Exits {
		n.cycle = max(n.cycle, e.plan.Stations[i].Pace.RampAfter)
	}
}

// timedStore is what a timer of a store is due for.
type timedStore struct {
	link int
	what storeEvent
	stop int
}

type storeEvent uint8

const (
	sensorDue storeEvent = iota
	inDue
	outDue
	stopDue
	handDue // somebody may have to carry: all hand magazines are looked at in every instant
)

// storeTimer adds a timer. They lie behind those of transit.
func (t *timers) storeTimer(link int, what storeEvent, stop int) int {
	t.stores = append(t.stores, timedStore{link: link, what: what, stop: stop})
	return t.transit + len(t.links) + len(t.stores) - 1
}

// storeDue does what a timer of a store is due for.
func (e *Engine) storeDue(timer int) {
	t := e.timers.stores[timer-e.timers.store]
	l := &e.links[t.link]
	e.cal.set(timer, plan.Never)
	switch t.what {
	case sensorDue:
		e.sensorReports(l)
	case inDue:
		e.roomIn(l)
	case outDue:
		e.wakeTakers(l)
	case stopDue:
		e.begins = append(e.begins, timer)
	}
}

func (e *Engine) resetStores(o Options) {
	e.noted, e.carries, e.jams, e.shutStores = false, false, e.jams[:0], 0
	for _, l := range e.stores {
		st := l.store
		p := st.plan
		st.standing, st.stoodFrom, l.stood = p.Stands && l.arrived > 0, 0, 0
		st.stopped, st.seen, st.reached = false, plan.Never, plan.Never
		st.in.reset(p.In + p.PerPiece) // one of them
		st.out.reset(p.Out)
		st.keeps, st.stored, st.atHand, st.gives, st.flows = p.Keeps, 0, 0, false, false
		if p.Beside {
			st.stored = l.arrived
		}
		st.dry, st.open, st.noted = plan.Never, 0, false
		st.hand = hand{}
		st.need.reset()
		st.back.reset(p, o)
		e.note(l)
		e.resetStoreStops(l, o)
	}
}

// settleStores lets pieces go on that only what the moves of the instant have led to lets go, then compares the
// states.
func (e *Engine) settleStores() {
	for e.lookAtFlows() || e.carries || e.lookAtHands() {
		e.carries = false
		e.moves()
		e.afterMoves()
	}
	e.settleStates()
	for _, l := range e.stores {
		if l.store.plan.Beside {
			e.lookDry(l)
		}
	}
}

// there is how many pieces may be taken from a link now: few or none where its rules hold them back.
func (e *Engine) there(l *link) int64 {
	if l.store == nil {
		return l.arrived
	}
	return e.thereIn(l)
}

func (e *Engine) thereIn(l *link) int64 {
	st := l.store
	switch {
	case !st.plan.Beside && (st.open > 0 || e.now < st.out.from):
		return shut
	case !st.plan.Beside:
		return l.arrived - st.keeps
	case st.gives:
		return e.withStore(l)
	}
	return l.direct()
}

// withStore is how many pieces a taker may have from a link now, what lies beside the line included.
func (e *Engine) withStore(l *link) int64 {
	st := l.store
	switch {
	case st == nil || !st.plan.Beside:
		return e.there(l)
	case st.plan.Hand != plan.None:
		return l.direct() + st.atHand
	case st.open > 0 || e.now < st.out.from:
		return l.direct()
	}
	return l.direct() + max(0, st.stored-st.keeps)
}

// lets says whether the rules of a link let so many pieces in, beside places that are reserved for
// them, and which taker they then pass straight through to.
func (e *Engine) lets(l *link, pieces, reserved int64) (bool, int) {
	st := l.store
	if st.plan.Beside {
		return e.letsBeside(l, pieces, reserved)
	}
	switch {
	case !st.moves() || e.now < st.in.from:
		return false, plan.None
	case pieces <= l.free()+reserved:
		return true, plan.None
	case l.plan.Transit > 0:
		return false, plan.None
	}
	taker := e.through(l, pieces)
	return taker != plan.None, taker
}

// moves says that nothing keeps pieces out of a link but its gate and its places.
func (st *store) moves() bool { return st.plan.Beside || st.open == 0 && !st.standing }

// room is the number of places that may be filled now.
func (e *Engine) room(l *link) int64 {
	if l.store == nil || !l.store.plan.Beside {
		return l.free()
	}
	return e.roomBeside(l, 0)
}

// came lets the rules of a link follow what has gone in.
func (e *Engine) came(l *link, pieces int64) {
	st := l.store
	st.nothingCame, st.goesOn = false, false
	if !st.plan.Beside {
		e.countIn(l, pieces)
	}
	if st.plan.Full.At > 0 {
		e.note(l)
	}
}

// went lets the rules of a link follow what has gone out.
func (e *Engine) went(l *link, pieces int64) {
	st := l.store
	if st.plan.Beside {
		e.wentBeside(l)
		return
	}
	e.passGate(&st.out, pieces)
	if st.plan.Stands && l.arrived == 0 {
		e.thaw(l)
	}
	if st.plan.Full.At > 0 {
		e.note(l)
	}
}

// countIn counts pieces that have gone into a store.
func (e *Engine) countIn(l *link, pieces int64) {
	st := l.store
	e.passGate(&st.in, pieces)
	if len(st.stops) > 0 {
		e.ageStoreStops(l, pieces)
	}
}

// note lets a link be looked at when all moves of the instant are done.
func (e *Engine) note(l *link) {
	l.store.noted, e.noted = true, true
}

// lookAtNoted looks at the sensors of links on which something has changed, and at what stores
// beside the line give back, the last of the line first; it says whether anything may move again.
func (e *Engine) lookAtNoted() bool {
	e.noted = false
	any := false
	for _, l := range e.stores {
		st := l.store
		if !st.noted {
			continue
		}
		if any && st.plan.Beside {
			e.noted = true // what moves now comes first
			continue
		}
		st.noted = false
		any = st.plan.Full.At > 0 && e.lookAtSensors(l) || st.plan.Beside && e.giveBack(l) || any
	}
	return any
}
