package plain

import "tuckline/sim/internal/plan"

// standstill follows the standstills of one station: from when it stops running until it runs again or a
// changeover begins. Breaks, planned stops and the time off shift within one do not end it and are no part of it.
type standstill struct {
	state    plan.State
	material bool        // the state is under a stop for material
	mark     plan.Micros // up to when it is counted
	// length is that of the standstill so far, also before the window; parts are its times in the window, without stops for material.
	length plan.Micros
	parts  plan.Standstills
	short  []plan.Standstills // by limit
}

// stands says that the time in a state is part of a standstill.
func stands(state plan.State) bool {
	switch state {
	case plan.Waiting, plan.Down, plan.Blocked, plan.Starved:
		return true
	}
	return false
}

// count counts the present state up to now.
func (h *standstill) count(now plan.Micros) {
	lasted := now - h.mark
	h.mark = now
	if !stands(h.state) {
		return
	}
	h.length += lasted
	switch {
	case h.material:
	case h.state == plan.Waiting:
		h.parts.Waiting += lasted
	case h.state == plan.Down:
		h.parts.Down += lasted
	case h.state == plan.Blocked:
		h.parts.Blocked += lasted
	default:
		h.parts.Starved += lasted
	}
}

// enter follows a change of state; limits are the lengths below which standstills are short.
func (h *standstill) enter(now plan.Micros, state plan.State, material bool, limits []plan.Micros) {
	h.count(now)
	if state == plan.Running || state == plan.Changeover {
		h.end(limits)
	}
	h.state, h.material = state, material
}

// end ends the standstill under way, if there is one.
func (h *standstill) end(limits []plan.Micros) {
	for i := range h.short {
		if short := &h.short[i]; h.length > 0 && h.length < limits[i] {
			short.Count++
			short.Waiting += h.parts.Waiting
			short.Down += h.parts.Down
			short.Blocked += h.parts.Blocked
			short.Starved += h.parts.Starved
		}
	}
	h.length, h.parts = 0, plan.Standstills{}
}

// clear begins the window.
func (h *standstill) clear() {
	h.parts = plan.Standstills{}
	clear(h.short)
}

// forMaterial says that a stop, or the change of a stock, is for material.
func (e *Engine) forMaterial(by, stop int) bool {
	if by == none || stop < 0 {
		return false
	}
	stops := e.stations[by].plan.Stops
	return stop >= len(stops) || stops[stop].Class == plan.MaterialClass
}
