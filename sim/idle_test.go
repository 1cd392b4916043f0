package sim_test

import (
	"cmp"
	"fmt"
	"slices"

	"tuckline/sim"
)

// idleness finds stations that wait for what is there: after every instant of a trace
// nobody is starved in front of a take, and nobody is blocked behind a taker that lacks pieces.
func idleness(line sim.Line, m *sim.Model, trace *sim.Trace) []string {
	changes := slices.Clone(trace.States)
	slices.SortStableFunc(changes, func(a, b sim.StateChange) int { return cmp.Compare(a.At, b.At) })
	levels := slices.Clone(trace.Levels)
	slices.SortStableFunc(levels, func(a, b sim.LevelChange) int { return cmp.Compare(a.At, b.At) })
	states := make([]sim.State, len(line.Stations))
	level := make([]int64, len(m.Places()))
	var found []string
	for len(changes) > 0 || len(levels) > 0 {
		at := sim.Micros(1 << 62)
		if len(changes) > 0 {
			at = changes[0].At
		}
		if len(levels) > 0 {
			at = min(at, levels[0].At)
		}
		for len(changes) > 0 && changes[0].At == at {
			states[changes[0].Station] = changes[0].State
			changes = changes[1:]
		}
		for len(levels) > 0 && levels[0].At == at {
			level[levels[0].Buffer] = levels[0].Level
			levels = levels[1:]
		}
		for i, p := range m.Places() {
			if why := idleAt(line, i, p, states, level[i]); why != "" {
				found = append(found, fmt.Sprintf("at %d: %s", at, why))
			}
		}
	}
	return found[:min(len(found), 3)]
}

// idleAt looks at one place without transit. Places that a feeder has reserved before its
// cycle cannot be used by others, nor does anybody overtake a feeder that waits for such room. A level
// may hold either side back, a station that assembles may lack its other input, one that
// chooses may wait for its turn.
func idleAt(line sim.Line, i int, p sim.Place, states []sim.State, level int64) string {
	if p.Transit > 0 || i < len(line.Buffers) && holdsBack(&line.Buffers[i]) {
		return ""
	}
	levels, start := false, false
	if i < len(line.Buffers) {
		b := &line.Buffers[i]
		levels, start = b.StopUpstream > 0 || b.Restart.On, b.Start.On
	}
	blocked, starved, free := "", "", !levels && !start
	for k := range line.Stations {
		st := &line.Stations[k]
		takes, gives := slices.Contains(p.To, st.Name), slices.Contains(p.From, st.Name)
		switch {
		case takes && len(st.Also) > 0:
			free = false
		case takes && states[k] == sim.Starved && level >= st.Takes && !start:
			return fmt.Sprintf("%s is starved before %s, which holds %d", st.Name, p.Name, level)
		case takes && states[k] == sim.Starved && !st.BlocksBefore:
			starved = st.Name
		case gives && (st.BlocksBefore || len(st.Sends.To) > 0):
			free = false
		case gives && states[k] == sim.Blocked:
			blocked = st.Name
		}
	}
	if blocked != "" && starved != "" && free {
		return fmt.Sprintf("%s is blocked and %s starved by %s, which holds %d", blocked, starved, p.Name, level)
	}
	return ""
}
