package plain

import "tuckline/sim/internal/plan"

// pause follows the pauses of one station: as long as it could not take anything, because of stops of it or of its group,
// or because it is blocked. A pause of nothing but waits for room up to a cycle at set speed is none. What the calendar of
// working time cuts out of a pause is no part of it.
type pause struct {
	on  bool
	why origin
	// from is its beginning, lasted its length up to mark, where it ceased to count if it does not.
	from, lasted, mark plan.Micros
	counts             bool
	// asked: it began with a wait whose cause is not known yet; only: it has been nothing else.
	asked, only bool
	list        []plan.Pause
}

// followPause begins and ends pauses.
func (e *Engine) followPause(s *station, a *account, state plan.State, why origin) {
	p := &a.pause
	e.lastPause(p)
	blocked := state == plan.Blocked
	outage := why.source != none && why.cause == plan.CauseOutage
	on := !outage && (blocked || state == plan.Waiting || state == plan.Down || state == plan.PlannedStop)
	if p.on {
		e.knowPause(a)
	}
	switch {
	case on && p.on && (p.counts || blocked || why.since <= p.mark):
		p.counts, p.mark, p.only = true, e.now, p.only && blocked
	case on:
		e.endPause(s, p)
		p.on, p.counts, p.from, p.lasted, p.mark, p.why = true, true, e.now, 0, e.now, why
		p.asked, p.only = blocked, blocked
	case outage:
		p.counts = false
	default:
		e.endPause(s, p)
	}
}

// lastPause counts a pause up to now.
func (e *Engine) lastPause(p *pause) {
	if p.on && p.counts {
		p.lasted += e.now - p.mark
		p.mark = e.now
	}
}

// knowPause takes over what began a pause that began with a wait for room.
func (e *Engine) knowPause(a *account) {
	if a.pause.asked {
		a.pause.asked, a.pause.why = false, a.gap.why
	}
}

// endPause notes a pause that began in the window, up to where it counts.
func (e *Engine) endPause(s *station, p *pause) {
	if !p.on {
		return
	}
	p.on = false
	if p.from < e.t0 || p.only && p.lasted <= s.plan.Pace.RampAfter {
		return
	}
	one := plan.Pause{Begin: p.from, Lasted: p.lasted}
	one.Station, one.Cause = e.asWritten(&p.why)
	p.list = append(p.list, one)
}

// pausesOf are the pauses of a station, the one that the end of the window cuts included.
func (e *Engine) pausesOf(s *station, a *account) []plan.Pause {
	if p := &a.pause; p.on {
		e.knowPause(a)
		e.lastPause(p)
		e.endPause(s, p)
	}
	if len(a.pause.list) == 0 {
		return nil
	}
	return append([]plan.Pause(nil), a.pause.list...)
}
