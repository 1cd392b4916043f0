package plain

import (
	"cmp"
	"slices"

	"tuckline/sim/internal/plan"
)

// halts add up the time of a station under its stops.
type halts struct {
	on    int // the row under way, or none
	state plan.State
	rows  []halt
}

// halt is the time under one stop; the station and the cause are those of the plan until the end.
type halt struct {
	by, stop int
	sum      plan.StoppedBy
}

// begin follows a change of state.
func (h *halts) begin(state plan.State, by, stop int) {
	h.state, h.on = state, none
	if by == none {
		return
	}
	h.on = slices.IndexFunc(h.rows, func(row halt) bool { return row.by == by && row.stop == stop })
	if h.on < 0 {
		h.on = len(h.rows)
		h.rows = append(h.rows, halt{by: by, stop: stop})
	}
}

func (h *halts) count(lasted plan.Micros) {
	if h.on == none {
		return
	}
	switch sum := &h.rows[h.on].sum; h.state {
	case plan.Waiting:
		sum.Waiting += lasted
	case plan.Down:
		sum.Down += lasted
	case plan.PlannedStop:
		sum.Planned += lasted
	}
}

// clear begins the window.
func (h *halts) clear() {
	for i := range h.rows {
		h.rows[i].sum = plan.StoppedBy{}
	}
}

// asWritten are the times in the terms of the line as written.
func (h *halts) asWritten(e *Engine) []plan.StoppedBy {
	var all []plan.StoppedBy
	for i := range h.rows {
		row := &h.rows[i]
		if row.sum != (plan.StoppedBy{}) {
			one := row.sum
			one.Station, one.Cause = e.asWritten(&origin{source: row.by, cause: row.stop})
			all = append(all, one)
		}
	}
	slices.SortFunc(all, func(a, b plan.StoppedBy) int {
		return cmp.Or(cmp.Compare(a.Station, b.Station), cmp.Compare(a.Cause, b.Cause))
	})
	return all
}
