package plain

import "tuckline/sim/internal/plan"

// moves lets pieces go on until nothing changes: passes from the last node to
// the first over those that may move, then the levels that release a stopped station.
func (e *Engine) moves() {
	for {
		for e.pass() {
		}
		if !e.levels && !e.noted {
			return
		}
		if !(e.levels && e.releaseByLevel()) && !(e.noted && e.lookAtNoted()) {
			return
		}
	}
}

// wake lets a node look whether it may move.
func (e *Engine) wake(k int) {
	if !e.busy[k] {
		e.dirty.add(k)
	}
}

// pass goes once from the last node that may move to the first; it says whether
// any is left that a later one has woken.
func (e *Engine) pass() bool {
	for w := range e.dirty {
		// Above are the nodes of this word that the pass has not come to yet.
		for above := ^uint64(0); ; {
			bit := lowest(e.dirty[w] & above)
			if bit == 0 {
				break
			}
			e.dirty[w] &^= bit
			above = -(bit << 1)
			n := &e.nodes[w<<6+position(bit)]
			s := n.station
			if s == nil {
				e.moveOn(n)
				continue
			}
			e.moveStation(s)
			if s.phase != working || s.state != plan.Running {
				e.touched.add(s.index)
			}
		}
	}
	return e.dirty.any()
}

// moveStation lets finished output leave, then starts a change of material or a cycle.
func (e *Engine) moveStation(s *station) {
	if s.phase == working {
		return
	}
	if s.phase == holding && !e.handOver(s) {
		return
	}
	if s.own < 0 {
		if cause := s.machine.UsedUp(); cause >= 0 {
			e.openNext(s, cause)
		}
	}
	switch {
	case s.phase == loaded && e.up(s):
		e.beginLoaded(s)
	case e.up(s):
		if s.eager && s.in.arrived >= s.plan.Takes {
			e.startCycle(s)
			return
		}
		e.tryStart(s)
	default:
		s.waited = s.waited || s.since < e.now && s.released == 0
		e.waitNoMore(s)
		if s.plan.Loads && s.phase == idle {
			e.load(s)
		}
	}
}

// waitNoMore says that a station does not wait for room before a cycle; who waited behind it
// looks again.
func (e *Engine) waitNoMore(s *station) {
	if s.since == plan.Never {
		return
	}
	s.since = plan.Never
	if !s.alone {
		e.wakeFeeders(s.next)
	}
}

// handOver lets the finished pieces leave if they may.
func (e *Engine) handOver(s *station) bool {
	next, taker := s.next, plan.None
	switch n := &e.nodes[s.node]; {
	case next != nil && s.reserved > 0:
		if next.store != nil {
			var may bool
			if may, taker = e.lets(next, s.out, s.reserved); !may {
				return false
			}
		}
	case next != nil:
		if !(s.alone && s.out <= next.free()) {
			var may bool
			if may, taker = e.mayPut(n, 0, s.out, s.since, s.released); !may {
				return false
			}
		}
	case len(n.outs) > 1:
		var o int
		if o, taker = e.choose(n, s); o < 0 {
			return false
		}
		next = n.outs[o].link
	}
	if e.follows {
		e.gave(s)
	}
	if next != nil {
		e.put(next, s.out)
		if next.plan.Alternate {
			e.tookTurn(next, s.node)
		}
	}
	s.rec.Passed += s.out
	s.rec.Holding += e.now - s.heldFrom
	reserved, out := s.reserved, s.out
	s.out, s.phase, s.since = 0, idle, plan.Never
	if reserved > 0 {
		s.reserved = 0
		next.reserved -= reserved
		if reserved > out {
			e.roomIn(next)
		}
	}
	if taker != plan.None {
		e.startTaker(&e.nodes[taker])
	}
	if !s.alone && next != nil && next.store != nil && next.store.plan.Beside {
		e.spill(next, out)
	}
	return true
}

// startTaker starts the station, or moves the belt, to which the pieces passed
// straight through: it is known to be ready.
func (e *Engine) startTaker(n *node) {
	s := n.station
	if s == nil {
		e.moveOn(n)
		return
	}
	e.touched.add(s.index)
	switch {
	case !e.up(s):
		e.loadNow(s)
	case !s.plan.BlocksBefore || e.reserve(s):
		e.startCycle(s)
	case s.plan.Loads:
		e.loadNow(s)
	}
}

// tryStart starts a cycle if the input is there and, where it blocks before the cycle,
// the room.
func (e *Engine) tryStart(s *station) {
	if !e.inputThere(s) {
		if s.lastPart > 0 && e.startPart(s) {
			return
		}
		s.waited = false
		e.waitNoMore(s)
		if s.plan.EmptyPockets > 0 {
			e.mayPocket(s)
		}
		return
	}
	switch {
	case !s.plan.BlocksBefore || e.reserve(s):
		e.startCycle(s)
	case s.plan.Loads:
		e.loadNow(s)
	}
}

// inputThere says whether the station can take all its input now, before all others that
// take from the same places.
func (e *Engine) inputThere(s *station) bool {
	switch {
	case s.in == nil:
		return !s.exhausted()
	case !e.canTake(s, s.in, s.plan.Takes):
		return false
	case len(s.also) == 0 && s.start == nil:
		return true
	}
	for i := range s.also {
		if !e.canTake(s, s.also[i].link, s.also[i].takes) {
			return false
		}
	}
	return e.mayStart(s)
}

// canTake says whether so many pieces are there for the station.
func (e *Engine) canTake(s *station, l *link, takes int64) bool {
	if e.there(l) < takes {
		e.lacksDirect(l)
		if s.lacked == plan.Never {
			s.lacked = e.now
		}
		e.wakeHolders(l)
		return false
	}
	return len(l.plan.Takers) == 1 || e.firstTaker(l, s.node)
}

// mayStart says that no start level keeps a station: it does so once the station
// has been starved for more than no time, or is new.
func (e *Engine) mayStart(s *station) bool {
	return s.start == nil || s.startable || s.lacked >= e.now
}

// firstTaker says whether no taker that goes before could take now; if one could,
// it is looked at next.
func (e *Engine) firstTaker(l *link, k int) bool {
	for _, other := range l.plan.Takers {
		if other == k {
			return true
		}
		if e.there(l) >= e.takes(other, l) && e.otherInputs(other, l) && e.ready(other) {
			e.wake(other)
			return false
		}
	}
	return true
}

// reserve keeps places in the next link for all that the cycle gives; a cycle
// that is known to be scrapped needs none.
func (e *Engine) reserve(s *station) bool {
	next := s.next
	if next == nil || s.machine.KnownScrap() {
		return true
	}
	if s.since == plan.Never {
		s.since, s.released = e.now, 0
		if s.waited { // before the stop that has just ended
			s.since--
		}
	}
	if !e.mayReserve(s, s.since) {
		return false
	}
	e.clock(next)
	next.reserved += s.plan.Gives
	s.reserved = s.plan.Gives
	if !s.alone {
		e.wakeFeeders(next)
	}
	return true
}

// startCycle takes the input and starts work.
func (e *Engine) startCycle(s *station) {
	e.begin(s, e.takeInput(s))
}

// begin starts the work of a cycle whose input has been taken.
func (e *Engine) begin(s *station, level int64) {
	s.phase, s.since = working, plan.Never
	e.busy[s.node] = true
	e.atWork++
	pause := e.pause(s)
	e.work(s, s.machine.Start(level, pause), pause)
}

// pause is the time since the last work of a station, 0 before the first.
func (e *Engine) pause(s *station) plan.Micros {
	if s.rested == fromNew {
		return 0
	}
	return e.now - s.rested
}

// work goes on for so long, up to the next stop in the cycle or to its end.
func (e *Engine) work(s *station, work, pause plan.Micros) {
	if work == 0 {
		e.fresh = append(e.fresh, s.index)
		return
	}
	s.begun = e.now
	if pause > s.plan.Pace.RampAfter {
		s.rec.Restarts++
	}
	e.cal.set(s.index, e.now+work)
}
