package plain

import "tuckline/sim/internal/plan"

// moves lets pieces go on until nothing changes: passes from the last node to
// the first over those that may move, then the levels that release a stopped station.
func (e *Engine) moves() {
	for {
		for e.pass() {
		}
		if !e.watched || !e.releaseByLevel() {
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
	left := uint64(0)
	for w := range e.dirty {
		// Above are the nodes of this word that the pass has not come to yet.
		for above := ^uint64(0); ; {
			bit := lowest(e.dirty[w] & above)
			if bit == 0 {
				break
			}
			e.dirty[w] &^= bit
			above = -(bit << 1)
			if n := &e.nodes[w<<6+position(bit)]; n.station != nil {
				e.moveStation(n.station)
			} else {
				e.moveOn(n)
			}
		}
		left |= e.dirty[w]
	}
	return left != 0
}

// moveStation lets finished output leave, then starts a change of material or a cycle.
func (e *Engine) moveStation(s *station) {
	if s.phase == working {
		return
	}
	e.touched.add(s.index)
	if s.phase == holding && !e.handOver(s) {
		return
	}
	if s.own < 0 {
		if cause := s.machine.UsedUp(); cause >= 0 {
			e.open(s, cause)
		}
	}
	if e.up(s) {
		e.tryStart(s)
	} else {
		e.waitNoMore(s)
	}
}

// waitNoMore says that an empty station does not wait for room; who waited behind it
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
	taker := plan.None
	if next := s.next; next != nil {
		if s.reserved == 0 && !(s.alone && s.out <= next.free()) {
			var may bool
			if may, taker = e.mayPut(s.node, s.out, s.since, s.released); !may {
				return false
			}
		}
		e.put(next, s.out)
	}
	s.rec.Passed += s.out
	s.rec.Holding += e.now - s.heldFrom
	reserved, out := s.reserved, s.out
	s.out, s.phase, s.since = 0, idle, plan.Never
	if reserved > 0 {
		s.reserved = 0
		s.next.reserved -= reserved
		if reserved > out {
			e.roomIn(s.next)
		}
	}
	if taker != plan.None {
		e.startTaker(&e.nodes[taker])
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
	if !s.plan.BlocksBefore || e.reserve(s) {
		e.startCycle(s)
	}
}

// tryStart starts a cycle if the input is there and, where it blocks before the cycle,
// the room.
func (e *Engine) tryStart(s *station) {
	if !e.inputThere(s) {
		e.waitNoMore(s)
		return
	}
	if s.plan.BlocksBefore && !e.reserve(s) {
		return
	}
	e.startCycle(s)
}

// inputThere says whether the station can take its input now, before all others that
// take from the same place.
func (e *Engine) inputThere(s *station) bool {
	in := s.in
	if in == nil {
		return s.supply < 0 || s.supply >= s.plan.Takes
	}
	if in.arrived < s.plan.Takes {
		e.wakeHolders(in)
		return false
	}
	return len(in.plan.Takers) == 1 || e.firstTaker(in, s.node)
}

// firstTaker says whether no taker with an earlier name could take now; if one could,
// it is looked at next.
func (e *Engine) firstTaker(l *link, k int) bool {
	for _, other := range l.plan.Takers {
		if other == k {
			return true
		}
		if l.arrived >= e.takes(other) && e.ready(other) {
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
		s.since, s.released = e.now, false
	}
	if may, _ := e.mayPut(s.node, s.plan.Gives, s.since, s.released); !may || next.free() < s.plan.Gives {
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
	var level int64
	if in := s.in; in != nil {
		level = in.level
		e.take(in, s.plan.Takes)
	} else if s.supply > 0 {
		s.supply -= s.plan.Takes
	}
	s.rec.Taken += s.plan.Takes
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
	if pause > 0 {
		s.rec.Restarts++
	}
	e.cal.set(s.index, e.now+work)
}

// moveOn passes arrived pieces of a link on to the next, one by one.
func (e *Engine) moveOn(n *node) {
	l := n.link
	for l.arrived > 0 {
		if l.since == plan.Never {
			l.since = e.now
		}
		may, taker := e.mayPut(n.index, 1, l.since, true)
		if !may {
			return
		}
		l.since = plan.Never
		e.take(l, 1)
		e.put(n.next, 1)
		if taker != plan.None {
			e.startTaker(&e.nodes[taker])
		}
	}
	e.wakeHolders(l)
}
