package plain

import "tuckline/sim/internal/plan"

// pause follows the pauses of one station: as long as it could not take anything, because of stops of it or of its group,
// or because it is blocked. A pause of nothing but waits for room up to a cycle at set speed is none.
type pause struct {
	on   bool
	why  origin
	from plan.Micros
	// asked: it began with a wait whose cause is not known yet; only: it has been nothing else.
	asked, only bool
	list        []plan.Pause
}

// followPause begins and ends pauses.
func (e *Engine) followPause(s *station, a *account, state plan.State, by, stop int) {
	p := &a.pause
	blocked := state == plan.Blocked
	on := blocked || state == plan.Waiting || state == plan.Down || state == plan.PlannedStop
	switch {
	case p.on:
		e.knowPause(a)
		p.only = p.only && (blocked || !on)
		if !on {
			p.on = false
			e.endPause(s, p)
		}
	case on:
		p.on, p.from, p.why = true, e.now, origin{source: by, cause: stop}
		p.asked, p.only = blocked, blocked
	}
}

// knowPause takes over what began a pause that began with a wait for room.
func (e *Engine) knowPause(a *account) {
	if a.pause.asked {
		a.pause.asked, a.pause.why = false, a.gap.why
	}
}

// endPause notes a pause that began in the window, up to now.
func (e *Engine) endPause(s *station, p *pause) {
	if p.from < e.t0 || p.only && e.now-p.from <= s.plan.Pace.RampAfter {
		return
	}
	one := plan.Pause{Begin: p.from, Lasted: e.now - p.from}
	one.Station, one.Cause = e.asWritten(&p.why)
	p.list = append(p.list, one)
}

// pausesOf are the pauses of a station, the one that the end of the window cuts included.
func (e *Engine) pausesOf(s *station, a *account) []plan.Pause {
	if a.pause.on {
		e.knowPause(a)
		e.endPause(s, &a.pause)
	}
	if len(a.pause.list) == 0 {
		return nil
	}
	return append([]plan.Pause(nil), a.pause.list...)
}
