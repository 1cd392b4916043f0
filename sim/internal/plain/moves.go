package plain

import "tuckline/sim/internal/plan"

// moves lets pieces go on until nothing changes: passes from the last node to
// the first over those that may move, then the levels that release a stopped station.
func (e *Engine) moves() {
	for {
		for k := e.dirty.from(0); k >= 0; k = e.dirty.from(0) {
			e.pass(k)
		}
		if !e.watched || !e.releaseByLevel() {
			return
		}
	}
}

// pass goes once from node k to the first node of the line.
func (e *Engine) pass(k int) {
	for ; k >= 0; k = e.dirty.from(k + 1) {
		e.dirty.remove(k)
		if i := e.plan.Nodes[k].Station; i >= 0 {
			e.moveStation(i)
		} else {
			e.moveOn(k)
		}
	}
}

// moveStation lets finished output leave, then starts a change of material or a cycle.
func (e *Engine) moveStation(i int) {
	s := &e.stations[i]
	if s.phase == working {
		return
	}
	e.touched.add(i)
	if s.phase == holding && !e.handOver(i) {
		return
	}
	if s.own < 0 {
		if cause := s.machine.UsedUp(); cause >= 0 {
			e.open(i, cause)
		}
	}
	if !e.up(i) {
		s.since = plan.Never
		return
	}
	e.tryStart(i)
}

// handOver lets the finished pieces leave if they may.
func (e *Engine) handOver(i int) bool {
	s := &e.stations[i]
	k := s.plan.Node
	out := e.plan.Nodes[k].Out
	taker := plan.None
	if out != plan.None && s.reserved == 0 {
		var may bool
		if may, taker = e.mayPut(k, s.out, s.since, s.released); !may {
			return false
		}
	}
	s.rec.Passed += s.out
	s.rec.Holding += e.now - s.heldFrom
	if out != plan.None {
		e.put(out, s.out)
	}
	short := s.reserved > s.out
	if s.reserved > 0 {
		e.links[out].reserved -= s.reserved
		s.reserved = 0
	}
	s.out, s.phase, s.since = 0, idle, plan.Never
	if short {
		e.roomIn(out)
	}
	e.startTaker(taker)
	return true
}

// startTaker starts the station, or moves the belt, to which the pieces passed
// straight through: it is known to be ready.
func (e *Engine) startTaker(k int) {
	if k == plan.None {
		return
	}
	i := e.plan.Nodes[k].Station
	if i < 0 {
		e.moveOn(k)
		return
	}
	e.touched.add(i)
	if !e.stations[i].plan.BlocksBefore || e.reserve(i) {
		e.startCycle(i)
	}
}

// tryStart starts a cycle if the input is there and, where it blocks before the cycle,
// the room.
func (e *Engine) tryStart(i int) {
	s := &e.stations[i]
	if !e.inputThere(i) {
		s.since = plan.Never
		return
	}
	if s.plan.BlocksBefore && !e.reserve(i) {
		return
	}
	e.startCycle(i)
}

// inputThere says whether the station can take its input now, before all others that
// take from the same place.
func (e *Engine) inputThere(i int) bool {
	s := &e.stations[i]
	in := s.plan.In
	if in == plan.None {
		return s.supply < 0 || s.supply >= s.plan.Takes
	}
	l := &e.links[in]
	if l.arrived < s.plan.Takes {
		e.wakeHolders(in)
		return false
	}
	return len(l.plan.Takers) == 1 || e.firstTaker(in, s.plan.Node)
}

// firstTaker says whether no taker with an earlier name could take now; if one could,
// it is looked at next.
func (e *Engine) firstTaker(l, k int) bool {
	for _, other := range e.links[l].plan.Takers {
		if other == k {
			return true
		}
		if e.ready(other) && e.links[l].arrived >= e.takes(other) {
			e.dirty.add(other)
			return false
		}
	}
	return true
}

// reserve keeps places in the next link for all that the cycle gives; a cycle
// that is known to be scrapped needs none.
func (e *Engine) reserve(i int) bool {
	s := &e.stations[i]
	k := s.plan.Node
	out := e.plan.Nodes[k].Out
	if out == plan.None || s.machine.KnownScrap() {
		return true
	}
	if s.since == plan.Never {
		s.since, s.released = e.now, false
	}
	l := &e.links[out]
	if may, _ := e.mayPut(k, s.plan.Gives, s.since, s.released); !may || l.free() < s.plan.Gives {
		return false
	}
	e.clock(out)
	l.reserved += s.plan.Gives
	s.reserved = s.plan.Gives
	e.wakeOthers(out, k)
	return true
}

// startCycle takes the input and starts work.
func (e *Engine) startCycle(i int) {
	s := &e.stations[i]
	var level int64
	if in := s.plan.In; in != plan.None {
		level = e.links[in].level
		e.take(in, s.plan.Takes)
	} else if s.supply > 0 {
		s.supply -= s.plan.Takes
	}
	s.rec.Taken += s.plan.Takes
	s.phase, s.since = working, plan.Never
	e.atWork++
	pause := plan.Micros(0)
	if s.rested != fromNew {
		pause = e.now - s.rested
	}
	e.work(i, s.machine.Start(level, pause), pause)
}

// work goes on for so long, up to the next stop in the cycle or to its end.
func (e *Engine) work(i int, work, pause plan.Micros) {
	if work == 0 {
		e.fresh = append(e.fresh, i)
		return
	}
	if pause > 0 {
		e.stations[i].rec.Restarts++
	}
	e.cal.set(i, e.now+work)
}

// moveOn passes arrived pieces of a link on to the next, one by one.
func (e *Engine) moveOn(k int) {
	node := &e.plan.Nodes[k]
	l := &e.links[node.Link]
	for l.arrived > 0 {
		if l.since == plan.Never {
			l.since = e.now
		}
		may, taker := e.mayPut(k, 1, l.since, true)
		if !may {
			return
		}
		l.since = plan.Never
		e.take(node.Link, 1)
		e.put(node.Out, 1)
		e.startTaker(taker)
	}
	e.wakeHolders(node.Link)
}
