package plain

import "tuckline/sim/internal/plan"

// traceState notes a change of state at every member of the station.
func (e *Engine) traceState(s *station) {
	by, stop := none, none
	if s.by != none {
		c := e.plan.Stations[s.by].Causes[s.stop]
		by, stop = c.Declared, c.Index
	}
	for _, m := range s.plan.Members {
		e.trace.States = append(e.trace.States, plan.StateChange{
			At: e.now, Station: m.Declared, State: s.state, By: by, Stop: stop,
		})
	}
}

// traceLevel notes the level that lasted from the mark of a link up to now.
func (e *Engine) traceLevel(l *link) {
	e.trace.Levels = append(e.trace.Levels, plan.LevelChange{At: l.mark, Buffer: l.index, Level: l.level})
}

// traceStop notes a stop that is over, or that the horizon cuts.
func (e *Engine) traceStop(sp *spell) {
	c := e.plan.Stations[sp.station].Causes[sp.cause]
	e.trace.Stops = append(e.trace.Stops, plan.StopSpell{
		Station: c.Declared, Stop: c.Index,
		Begin: sp.from, Work: sp.work, Done: e.now, Again: sp.from > sp.begin,
	})
}
