package plain

import "tuckline/sim/internal/plan"

// pause follows the pauses of one station: from the beginning of a stop of it or of its group until none
// is open. Planned stops are none.
type pause struct {
	on   bool
	why  origin
	from plan.Micros
	list []plan.Pause
}

// followPause begins and ends pauses.
func (e *Engine) followPause(a *account, state plan.State, by, stop int) {
	p := &a.pause
	on := state == plan.Waiting || state == plan.Down
	switch {
	case on && !p.on:
		p.on, p.from, p.why = true, e.now, origin{source: by, cause: stop}
	case !on && p.on:
		p.on = false
		e.endPause(p)
	}
}

// endPause notes a pause that began in the window, up to now.
func (e *Engine) endPause(p *pause) {
	if p.from < e.t0 {
		return
	}
	one := plan.Pause{Begin: p.from, Lasted: e.now - p.from}
	one.Station, one.Cause = e.asWritten(&p.why)
	p.list = append(p.list, one)
}

// pausesOf are the pauses of a station, the one that the end of the window cuts included.
func (e *Engine) pausesOf(a *account) []plan.Pause {
	if a.pause.on {
		e.endPause(&a.pause)
	}
	if len(a.pause.list) == 0 {
		return nil
	}
	return append([]plan.Pause(nil), a.pause.list...)
}
