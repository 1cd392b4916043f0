package plain

import "tuckline/sim/internal/plan"

// free is the number of places that are neither taken nor reserved.
func (l *link) free() int64 { return l.plan.Capacity - l.level - l.reserved }

// mayPut says whether so many pieces of node k, which has waited since then, may
// enter its next link, and which taker they then pass straight through to.
func (e *Engine) mayPut(k int, pieces int64, since plan.Micros, released bool) (bool, int) {
	node := &e.plan.Nodes[k]
	l := &e.links[node.Out]
	if len(l.plan.Feeders) > 1 && !e.longestWaiting(node.Out, k, since) {
		return false, plan.None
	}
	room := &node.Room
	if room.StopLink != plan.None && e.links[room.StopLink].level >= room.Stop {
		return false, plan.None
	}
	if room.Armed && since < e.now && !released {
		e.watched = true
		return false, plan.None
	}
	if pieces <= l.free() {
		return true, plan.None
	}
	if l.plan.Transit > 0 {
		return false, plan.None
	}
	taker := e.through(node.Out, pieces)
	return taker != plan.None, taker
}

// through is the taker, first by name, that so many pieces pass straight
// through to: it is ready, lacks pieces, and after its take the rest fits.
func (e *Engine) through(in int, pieces int64) int {
	l := &e.links[in]
	for _, k := range l.plan.Takers {
		takes := e.takes(k)
		if l.arrived < takes && l.arrived+pieces >= takes && pieces-takes <= l.free() && e.ready(k) {
			return k
		}
	}
	return plan.None
}

// takes is what node k takes at once.
func (e *Engine) takes(k int) int64 {
	if i := e.plan.Nodes[k].Station; i >= 0 {
		return e.stations[i].plan.Takes
	}
	return 1
}

// ready says that node k would start if its input were there.
func (e *Engine) ready(k int) bool {
	node := &e.plan.Nodes[k]
	if node.Station < 0 {
		may, _ := e.mayPut(k, 1, e.now, true)
		return may
	}
	s := &e.stations[node.Station]
	if s.phase != idle || s.own >= 0 || !e.up(node.Station) || s.machine.UsedUp() >= 0 {
		return false
	}
	if !s.plan.BlocksBefore || node.Out == plan.None || s.machine.KnownScrap() {
		return true
	}
	since := min(s.since, e.now)
	may, _ := e.mayPut(k, s.plan.Gives, since, s.released)
	return may && e.links[node.Out].free() >= s.plan.Gives
}

// longestWaiting says whether of all feeders of a link that wait for room node k has
// waited longest, ties by name.
func (e *Engine) longestWaiting(l, k int, since plan.Micros) bool {
	for _, other := range e.links[l].plan.Feeders {
		if other == k {
			continue
		}
		waits := e.waitsSince(other)
		if waits < since || waits == since && e.plan.Nodes[other].Rank < e.plan.Nodes[k].Rank {
			return false
		}
	}
	return true
}

// waitsSince is when node k began to wait for room, or Never.
func (e *Engine) waitsSince(k int) plan.Micros {
	node := &e.plan.Nodes[k]
	if node.Station < 0 {
		return e.links[node.Link].since
	}
	if s := &e.stations[node.Station]; s.reserved == 0 {
		return s.since
	}
	return plan.Never
}

// releaseByLevel lets stations go whose restart level has been reached after all
// moves of the instant; it says whether any was.
func (e *Engine) releaseByLevel() bool {
	e.watched = false
	any := false
	for i := range e.stations {
		s := &e.stations[i]
		room := &e.plan.Nodes[s.plan.Node].Room
		if !room.Armed || s.released || s.since >= e.now {
			continue
		}
		total := int64(0)
		for _, l := range room.Counted {
			total += e.links[l].level
		}
		if total <= room.Restart {
			s.released, any = true, true
			e.dirty.add(s.plan.Node)
		}
	}
	return any
}

// take takes pieces out of a link.
func (e *Engine) take(in int, pieces int64) {
	e.clock(in)
	l := &e.links[in]
	l.level -= pieces
	l.arrived -= pieces
	l.rec.Out += pieces
	e.roomIn(in)
	if l.arrived > 0 && len(l.plan.Takers) > 1 {
		e.wakeTakers(in)
	}
}

// put lets pieces enter a link.
func (e *Engine) put(out int, pieces int64) {
	e.clock(out)
	l := &e.links[out]
	l.level += pieces
	l.rec.In += pieces
	if l.plan.Transit > 0 {
		l.moving.push(batch{at: e.now + l.plan.Transit, pieces: pieces})
		if l.moving.size == 1 {
			e.cal.set(e.timers.transitOf[out], e.now+l.plan.Transit)
		}
	} else {
		l.arrived += pieces
		e.wakeTakers(out)
	}
	if len(l.plan.Feeders) > 1 {
		e.roomIn(out)
	}
}

// arrive ends the transit of the first batch.
func (e *Engine) arrive(i int) {
	l := &e.links[i]
	e.clock(i)
	for l.moving.size > 0 && l.moving.first().at == e.now {
		l.arrived += l.moving.pop().pieces
	}
	next := plan.Never
	if l.moving.size > 0 {
		next = l.moving.first().at
	}
	e.cal.set(e.timers.transitOf[i], next)
	e.wakeTakers(i)
}

// roomIn says that a link may have room: its feeders, and those that watch its
// level, look again.
func (e *Engine) roomIn(l int) {
	p := e.links[l].plan
	for _, k := range p.Feeders {
		e.dirty.add(k)
	}
	for _, k := range p.Watchers {
		e.dirty.add(k)
	}
}

func (e *Engine) wakeTakers(l int) {
	for _, k := range e.links[l].plan.Takers {
		e.dirty.add(k)
	}
}

// wakeOthers lets the other feeders of a link look again.
func (e *Engine) wakeOthers(l, k int) {
	for _, other := range e.links[l].plan.Feeders {
		if other != k {
			e.dirty.add(other)
		}
	}
}

// wakeHolders lets feeders that hold finished pieces look whether they pass straight
// through, now that somebody lacks them.
func (e *Engine) wakeHolders(l int) {
	for _, k := range e.links[l].plan.Feeders {
		node := &e.plan.Nodes[k]
		if node.Station >= 0 && e.stations[node.Station].phase == holding ||
			node.Station < 0 && e.links[node.Link].arrived > 0 {
			e.dirty.add(k)
		}
	}
}
