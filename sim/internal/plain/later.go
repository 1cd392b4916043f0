package plain

import "tuckline/sim/internal/plan"

// comes says that a link lets pieces in or out later, whoever moves: a stop of it will end, a gate opens, a
// sensor reports.
func (e *Engine) comes(l *link) bool {
	st := l.store
	return st != nil && (st.open > 0 || e.mayCarry(st) || e.opens(&st.in) || e.opens(&st.out) || st.seen != plan.Never ||
		st.hand.open || st.back.open)
}

// thereAtLast is how many pieces may be taken from a link in the end: what lies beside the line too.
func (e *Engine) thereAtLast(l *link) int64 {
	if l.store != nil && l.store.plan.Beside {
		return l.arrived - l.store.keeps
	}
	return e.there(l)
}

// mayCarry says that somebody will carry if nothing changes until then. In an outage nobody sees whether that is needed.
func (e *Engine) mayCarry(st *store) bool {
	return st.plan.Hand != plan.None && (e.cal.next[st.need.timer] != plan.Never || e.hours.lifted)
}

// opens says that a gate is closed and will open.
func (e *Engine) opens(g *gate) bool { return g.timer != none && e.cal.next[g.timer] != plan.Never }

// movesLater says that pieces wait for what a link does later.
func (e *Engine) movesLater(l *link) bool {
	st := l.store
	if st == nil {
		return false
	}
	return e.opens(&st.out) && l.arrived-st.keeps >= l.plan.Takes-st.plan.Keeps ||
		(e.opens(&st.in) || e.opens(&st.out)) && e.awaited(l) ||
		e.mayCarry(st) || st.hand.open || st.back.open ||
		st.stopped && st.seen != plan.Never && e.waitsForSensor(l)
}

// awaited says that somebody waits to put pieces into a link: finished ones, those of a link before it, or those that a
// station will not begin before there is room.
func (e *Engine) awaited(l *link) bool {
	for _, k := range l.plan.Feeders {
		if n := &e.nodes[k]; n.station == nil && (e.thereAtLast(n.link) > 0 || e.awaited(n.link)) || n.station != nil && e.waitsForRoom(n.station) {
			return true
		}
	}
	return false
}

// waitsForRoom says that a station waits for room, or would if what is held before it came straight through.
func (e *Engine) waitsForRoom(s *station) bool {
	return s.phase == holding || s.since != plan.Never || s.plan.BlocksBefore && s.phase == idle && s.in != nil && e.atTheDoor(s.in)
}

// waitsForSensor says that a station has something for a belt whose sensor has stopped it.
func (e *Engine) waitsForSensor(l *link) bool {
	for k := range e.nodes {
		s := e.nodes[k].station
		if s == nil || s.phase != holding && s.since == plan.Never {
			continue
		}
		for _, out := range e.nodes[k].outs {
			for _, sensor := range out.plan.Sensors {
				if sensor == l.index {
					return true
				}
			}
		}
	}
	return false
}
