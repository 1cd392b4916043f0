package sim_test

import (
	"math"

	"tuckline/sim"
)

// inWindow is the part of [from, to) that lies in the window.
func (h *holder) inWindow(from, to sim.Micros) sim.Micros {
	return max(0, min(to, h.o.WarmUp+h.o.Measure)-max(from, h.o.WarmUp))
}

func (h *holder) counts(at sim.Micros) bool {
	end := h.o.WarmUp + h.o.Measure
	return at >= h.o.WarmUp && (at < end || at == end && h.rec.End == sim.OrdersFinished)
}

// tracedStations: the states in the trace last as long as the record says, and
// begin as often.
func (h *holder) tracedStations() {
	times := make([][sim.NumStates]sim.Micros, len(h.line.Stations))
	begins := make([][sim.NumStates]int64, len(h.line.Stations))
	restarts := make([]int64, len(h.line.Stations))
	last := make([]*sim.StateChange, len(h.line.Stations))
	rested := make([]sim.Micros, len(h.line.Stations)) // the end of the last work, -1 before the first
	for i := range rested {
		rested[i] = -1
	}
	end := h.o.WarmUp + h.o.Measure
	for k := range h.trace.States {
		c := &h.trace.States[k]
		i := c.Station
		if before := last[i]; before != nil {
			times[i][before.State] += h.inWindow(before.At, c.At)
			if before.At >= c.At {
				h.fault("%s: a state that lasts no time at %d", h.line.Stations[i].Name, c.At)
			}
		}
		if fresh := last[i] == nil || last[i].State != c.State; fresh && h.counts(c.At) {
			begins[i][c.State]++
			if c.State == sim.Running && rested[i] >= 0 && c.At-rested[i] > h.setCycle(i) {
				restarts[i]++
			}
		}
		if last[i] != nil && last[i].State == sim.Running && c.State != sim.Running {
			rested[i] = c.At
		}
		last[i] = c
	}
	for i, r := range h.rec.Stations {
		name := h.line.Stations[i].Name
		if last[i] == nil {
			h.fault("%s has no state", name)
			continue
		}
		times[i][last[i].State] += h.inWindow(last[i].At, end)
		for s := range sim.State(sim.NumStates) {
			h.same(name+" "+s.String()+" by the trace", int64(times[i][s]), int64(r.States[s]))
		}
		h.same(name+" blocked spells by the trace", begins[i][sim.Blocked], r.BlockedSpells)
		h.same(name+" starved spells by the trace", begins[i][sim.Starved], r.StarvedSpells)
		h.same(name+" restarts by the trace", restarts[i], r.Restarts)
	}
}

// setCycle is one cycle at set speed, the longest of a drive: a longer pause is a standstill.
func (h *holder) setCycle(i int) sim.Micros {
	longest := sim.Micros(1)
	for _, m := range h.members(i) {
		longest = max(longest, sim.Micros(math.Round(h.line.Stations[m].Cycle.Mean())))
	}
	return longest
}

// tracedLevels: the levels in the trace give the level integral and the highest level.
func (h *holder) tracedLevels() {
	integral := make([]int64, len(h.rec.Buffers))
	highest := make([]int64, len(h.rec.Buffers))
	add := func(c *sim.LevelChange, to sim.Micros) {
		d := h.inWindow(c.At, to)
		integral[c.Buffer] += c.Level * int64(d)
		if d > 0 {
			highest[c.Buffer] = max(highest[c.Buffer], c.Level)
		}
	}
	last := make([]*sim.LevelChange, len(h.rec.Buffers))
	for k := range h.trace.Levels {
		c := &h.trace.Levels[k]
		if before := last[c.Buffer]; before != nil {
			add(before, c.At)
		}
		last[c.Buffer] = c
	}
	for i, r := range h.rec.Buffers {
		name := h.m.Places()[i].Name
		if last[i] == nil {
			h.fault("%s has no level", name)
			continue
		}
		add(last[i], h.o.WarmUp+h.o.Measure)
		h.same(name+" level time by the trace", integral[i], r.LevelTime)
		h.same(name+" highest level by the trace", highest[i], r.Max)
	}
}

// tracedStops: the stops in the trace begin as often and last as long as the record says.
func (h *holder) tracedStops() {
	end := h.o.WarmUp + h.o.Measure
	sums := make([][]sim.StopRecord, len(h.line.Stations))
	for i := range sums {
		sums[i] = make([]sim.StopRecord, len(h.rec.Stations[i].Stops))
	}
	for _, c := range h.trace.Stops {
		sum := &sums[c.Station][c.Stop]
		if h.counts(c.Begin) && !c.Again {
			sum.Count++
		}
		work := min(c.Work, end)
		sum.Waiting += h.inWindow(c.Begin, min(work, c.Done))
		sum.Down += h.inWindow(work, c.Done)
	}
	for i := range sums {
		for j, stop := range h.m.StopNames(i) {
			if sums[i][j] != h.rec.Stations[i].Stops[j] {
				h.fault("%s %s: by the trace %+v, by the record %+v", h.line.Stations[i].Name, stop, sums[i][j], h.rec.Stations[i].Stops[j])
			}
		}
	}
}
