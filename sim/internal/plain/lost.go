package plain

import "tuckline/sim/internal/plan"

// losePacks takes their place from the packs between printing and rejecting when a station stops, or
// when it has been blocked for longer than one cycle at set speed. From starved nothing is lost: they have run
// out; a new station has none.
func (e *Engine) losePacks(s *station, next plan.State) {
	stops := next == plan.Waiting || next == plan.Down
	switch s.state {
	case plan.Running:
		if !stops {
			return
		}
	case plan.Blocked:
		if !stops && (next == plan.Blocked || e.now-s.entered <= s.plan.Pace.RampAfter) {
			return
		}
	default:
		return
	}
	s.machine.LosePacks(s.phase == working)
}
