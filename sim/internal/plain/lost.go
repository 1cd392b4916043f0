package plain

import "tuckline/sim/internal/plan"

// longAgo is when a new station was emptied: nothing is on its way in it.
const longAgo = -plan.Never / 2

// losePacks takes their place from the packs between printing and rejecting when a station stops, for a break too, or
// when it has been blocked for longer than one cycle at set speed. An empty infeed lets them run out, cycle by cycle.
func (e *Engine) losePacks(s *station, next plan.State) {
	stops := next == plan.Waiting || next == plan.Down || !e.hours.works()
	switch s.state {
	case plan.Running, plan.Starved:
	case plan.Blocked:
		stops = stops || next != plan.Blocked && e.now-s.entered > s.plan.Pace.RampAfter
	default:
		stops = false
	}
	if stops {
		s.machine.LosePacks(s.phase == working, e.emptyFor(s))
	}
	switch {
	case next == plan.Running:
		s.emptied = plan.Never
	case next == plan.Starved && s.emptied == plan.Never:
		s.emptied = e.now
	}
}

// emptyFor is for how long a station has had nothing to work on: no time if it has only been stopped or blocked.
func (e *Engine) emptyFor(s *station) plan.Micros {
	if s.emptied == plan.Never {
		return 0
	}
	return e.now - s.emptied
}
