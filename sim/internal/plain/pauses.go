package plain

import "tuckline/sim/internal/plan"

// pause follows the pauses of one station: from the beginning of a stop of it or of its group until none
// is open. Planned stops are none; what the calendar of working time cuts out of a pause is no part of it.
type pause struct {
	on  bool
	why origin
	// from is its beginning, lasted its length up to mark, where it ceased to count if it does not.
	from, lasted, mark plan.Micros
	counts             bool
	list               []plan.Pause
}

// followPause begins and ends pauses.
func (e *Engine) followPause(p *pause, state plan.State, why origin) {
	stopped := state == plan.Waiting || state == plan.Down
	if p.on && p.counts {
		p.lasted += e.now - p.mark
		p.mark = e.now
	}
	switch {
	case stopped && p.on && (p.counts || why.since <= p.mark):
		p.counts, p.mark = true, e.now
	case stopped:
		p.end(e)
		p.on, p.counts, p.from, p.lasted, p.mark, p.why = true, true, e.now, 0, e.now, why
	case why.source != none && why.cause == plan.CauseOutage:
		p.counts = false
	default:
		p.end(e)
	}
}

// end notes a pause that began in the window, up to where it counts.
func (p *pause) end(e *Engine) {
	if !p.on {
		return
	}
	p.on = false
	if p.from < e.t0 {
		return
	}
	one := plan.Pause{Begin: p.from, Lasted: p.lasted}
	one.Station, one.Cause = e.asWritten(&p.why)
	p.list = append(p.list, one)
}

// pausesOf are the pauses of a station, the one that the end of the window cuts included.
func (e *Engine) pausesOf(a *account) []plan.Pause {
	if p := &a.pause; p.on && p.counts {
		p.lasted += e.now - p.mark
	}
	a.pause.end(e)
	if len(a.pause.list) == 0 {
		return nil
	}
	return append([]plan.Pause(nil), a.pause.list...)
}
