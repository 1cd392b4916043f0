package plain

import "tuckline/sim/internal/plan"

func (e *Engine) traceState(s *station) {
	by := none
	if s.by != none {
		by = e.plan.Stations[s.by].Declared
	}
	e.trace.States = append(e.trace.States, plan.StateChange{
		At: e.now, Station: s.plan.Declared, State: s.state, By: by, Stop: s.stop,
	})
}

// traceLevel notes the level that lasted from the mark of a link up to now.
func (e *Engine) traceLevel(l *link) {
	e.trace.Levels = append(e.trace.Levels, plan.LevelChange{At: l.mark, Buffer: l.index, Level: l.level})
}

// traceStop notes a stop that is over, or that the horizon cuts.
func (e *Engine) traceStop(sp *spell) {
	e.trace.Stops = append(e.trace.Stops, plan.StopSpell{
		Station: e.plan.Stations[sp.station].Declared, Stop: sp.cause,
		Begin: sp.begin, Work: sp.work, Done: e.now,
	})
}
