package plain

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// connectLevels finds the stations that levels hold.
func (e *Engine) connectLevels() {
	for i := range e.stations {
		s := &e.stations[i]
		if s.start != nil || slices.ContainsFunc(e.nodes[s.node].outs, func(o out) bool { return len(o.plan.Restarts) > 0 }) {
			e.held = append(e.held, s)
		}
	}
	e.levels = len(e.held) > 0 || e.ends
}

// releaseByLevel lets stations go whose restart or start level is reached after all moves of the instant, if they have
// waited for more than no time; it says whether any was.
func (e *Engine) releaseByLevel() bool {
	any := false
	for _, s := range e.held {
		if s.since < e.now && e.restarts(s) || s.lacked < e.now && e.starts(s) {
			any = true
			e.wake(s.node)
		}
	}
	if e.ends {
		for _, l := range e.stores {
			any = e.lapses(l) || any
		}
	}
	return any
}

// releaseLater lets stations go, from the next instant on, that have begun to wait in this one, for something else, while
// their level was reached.
func (e *Engine) releaseLater() {
	for _, s := range e.held {
		if s.since == e.now {
			e.restarts(s)
		}
		if s.lacked == e.now {
			e.starts(s)
		}
	}
}

// restarts releases a station that waits for room on all ways whose levels allow it.
func (e *Engine) restarts(s *station) bool {
	any := false
	outs := e.nodes[s.node].outs
	for o := range outs {
		if s.released&(1<<o) == 0 && e.restartReached(outs[o].plan.Restarts) {
			s.released |= 1 << o
			any = true
		}
	}
	return any
}

// restartReached says that there are restart levels and all of them are reached.
func (e *Engine) restartReached(restarts []plan.RestartLevel) bool {
	for _, r := range restarts {
		total := int64(0)
		for _, l := range r.Links {
			total += e.links[l].level
		}
		if total > r.Level {
			return false
		}
	}
	return len(restarts) > 0
}

// starts lets a station start that lacks input, when its start level is reached or no more can come.
func (e *Engine) starts(s *station) bool {
	if s.start == nil || s.phase != idle || s.startable {
		return false
	}
	s.startable = e.startReached(s)
	return s.startable
}

// startReached says that the start level of a station is reached, or that no more input can come.
func (e *Engine) startReached(s *station) bool {
	return s.start.arrived >= s.plan.Start || e.ends && !e.takenOut(s.start) && e.runsOut(s.start)
}
