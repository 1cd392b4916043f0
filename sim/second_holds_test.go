package sim_test

import (
	"cmp"
	"slices"
	"testing"

	"tuckline/sim"
)

// trail follows a line in which pieces are lost, assembled or pass coupled stations: as follow, but
// with the balances of such lines.
func (c course) trail(t *testing.T) sim.Record {
	t.Helper()
	m := compile(t, c.line)
	var trace sim.Trace
	o := sim.Options{Seed: 1, WarmUp: c.warmUp, Measure: c.measure, Trace: &trace}
	rec := m.NewEngine().Run(o)
	sameText(t, "course", plainLines(c.want), timeline(c.line, m, &trace))
	f := figures(m, c.line, &rec)
	for i := range rec.Stations {
		f[c.line.Stations[i].Name+" lost"] = rec.Stations[i].Lost
	}
	f["line all running"] = int64(rec.AllRunning)
	compareCounts(t, f, c.counts)
	if end := cmp.Or(c.end, "horizon"); rec.End.String() != end {
		t.Errorf("the run ended with %q, not %q", rec.End, end)
	}
	for _, fault := range balances(c.line, m, o, &rec, &trace) {
		t.Error(fault)
	}
	return rec
}

// balances lists what must hold for every line, the newer parts included.
func balances(line sim.Line, m *sim.Model, o sim.Options, rec *sim.Record, trace *sim.Trace) []string {
	h := &holder{line: line, m: m, o: o, rec: rec, trace: trace}
	h.same("window", int64(rec.Window), int64(o.Measure))
	for i := range rec.Stations {
		h.balance(i)
		h.statesSum(i)
	}
	for i := range rec.Buffers {
		h.placeBalance(i)
	}
	for i := range rec.Crews {
		h.crew(i)
	}
	h.allCrews()
	h.tracedTimes()
	h.tracedLevels()
	h.tracedStops()
	h.tracedTogether()
	return h.found
}

// unitOf is the stations on one drive with station i, in the order of the flow.
func (h *holder) unitOf(i int) []int {
	unit := []int{i}
	for grows := h.line.Stations[i].Coupled != ""; grows; {
		grows = false
		for k := range h.line.Stations {
			s := &h.line.Stations[k]
			if s.Coupled != h.line.Stations[i].Coupled || slices.Contains(unit, k) {
				continue
			}
			switch first, last := unit[0], unit[len(unit)-1]; {
			case s.From == h.line.Stations[last].Name:
				unit, grows = append(unit, k), true
			case h.line.Stations[first].From == s.Name:
				unit, grows = slices.Insert(unit, 0, k), true
			}
		}
	}
	return unit
}

// balance: what a station has taken is worked, lost or still inside; what it gives is passed on,
// rejected, scrapped or held. Within a unit one takes what the one before has passed.
func (h *holder) balance(i int) {
	s, r := &h.line.Stations[i], &h.rec.Stations[i]
	unit := h.unitOf(i)
	first, last := unit[0] == i, unit[len(unit)-1] == i
	if first {
		h.same(s.Name+" taken", r.Taken, s.Takes*r.Cycles+r.Lost+r.InputInside[1]-r.InputInside[0])
		h.same(s.Name+" given and scrapped", r.Given+r.Scrapped, s.Gives*r.Cycles)
		h.same(s.Name+" scrapped", r.Scrapped, s.Gives*r.ScrappedCycles)
	} else {
		before := &h.rec.Stations[unit[slices.Index(unit, i)-1]]
		h.same(s.Name+" taken on the drive", r.Taken, before.Passed)
		h.same(s.Name+" lost on the drive", r.Lost+r.Scrapped+r.InputInside[1], 0)
		if s.Takes == s.Gives {
			h.same(s.Name+" given one for one", r.Given, r.Taken)
		}
	}
	inside := int64(0)
	if last {
		inside = r.OutputInside[1] - r.OutputInside[0]
	}
	h.same(s.Name+" passed", r.Given-r.Rejected-r.Sampled, r.Passed+inside)
	h.atMost(s.Name+" rejected", r.Rejected, r.Given)
	h.atMost(s.Name+" lost", 0, r.Lost)
	if s.Supply > 0 {
		h.atMost(s.Name+" taken of the supply", r.Taken, s.Supply)
	}
}

func (h *holder) statesSum(i int) {
	s, r := &h.line.Stations[i], &h.rec.Stations[i]
	sum := sim.Micros(0)
	for _, d := range r.States {
		h.atMost(s.Name+" a state", 0, int64(d))
		sum += d
	}
	h.same(s.Name+" states", int64(sum), int64(h.o.Measure))
	for _, k := range h.unitOf(i) {
		if h.rec.Stations[k].States != r.States {
			h.fault("%s and %s are on one drive, but not in one state", s.Name, h.line.Stations[k].Name)
		}
	}
	if len(h.unitOf(i)) == 1 && !h.inGroup(s) {
		h.stopsSum(s, r, i)
	}
}

func (h *holder) stopsSum(s *sim.Station, r *sim.StationRecord, i int) {
	stopped, overlap := sim.Micros(0), false
	for j, c := range h.m.StopNames(i) {
		stopped += r.Stops[j].Waiting + r.Stops[j].Down
		overlap = overlap || isCalendar(s, c)
	}
	stands, off := h.outages()
	if down := r.States[sim.Waiting] + r.States[sim.Down] + r.States[sim.PlannedStop] - stands; overlap || stands+off > 0 {
		h.atMost(s.Name+" down", int64(down), int64(stopped))
	} else {
		h.same(s.Name+" down", int64(down), int64(stopped))
	}
}

// placeBalance: what enters comes out or stays; it comes from the neighbours, and goes to those that
// take from nowhere else.
func (h *holder) placeBalance(i int) {
	p, r := h.m.Places()[i], &h.rec.Buffers[i]
	h.same(p.Name+" level", r.In-r.Out, r.Level[1]-r.Level[0])
	if p.Capacity != sim.Unlimited {
		h.atMost(p.Name+" highest level", max(r.Max, r.Level[0], r.Level[1]), p.Capacity)
	}
	h.atMost(p.Name+" lowest level", 0, min(r.Level[0], r.Level[1], r.In, r.Out))
	h.atMost(p.Name+" in transit", r.TransitTime, r.LevelTime)
	if !slices.ContainsFunc(p.From, h.splits) {
		h.same(p.Name+" in", r.In, h.flow(h.lastOf(p.From), func(s *sim.StationRecord) int64 { return s.Passed }))
	}
	if !h.isPlace(p.To[0]) {
		h.same(p.Name+" out", r.Out, h.takenFrom(p))
	}
}

func (h *holder) station(name string) int {
	return slices.IndexFunc(h.line.Stations, func(s sim.Station) bool { return s.Name == name })
}

func (h *holder) splits(name string) bool {
	if i := h.station(name); i >= 0 {
		return slices.ContainsFunc(h.unitOf(i), func(k int) bool { return len(h.line.Stations[k].Sends.To) > 0 })
	}
	return false
}

// lastOf names, for stations on one drive, the last of them, which passes the output on.
func (h *holder) lastOf(names []string) []string {
	var last []string
	for _, name := range names {
		if i := h.station(name); i >= 0 {
			unit := h.unitOf(i)
			name = h.line.Stations[unit[len(unit)-1]].Name
		}
		last = append(last, name)
	}
	return last
}

// takenFrom is what the takers have taken from a place. A station that assembles takes of every input
// in the proportion of its list, and Taken counts the first.
func (h *holder) takenFrom(p sim.Place) int64 {
	sum := int64(0)
	for _, name := range p.To {
		i := h.station(name)
		s, taken := &h.line.Stations[i], h.rec.Stations[i].Taken
		if s.From != p.Name && !p.HandOver || p.HandOver && p.Name != s.From+" to "+s.Name {
			for _, in := range s.Also {
				if in.From == p.Name || in.From+" to "+s.Name == p.Name {
					taken = taken / s.Takes * in.Takes
				}
			}
		}
		sum += taken
	}
	return sum
}

// tracedTimes: the states of the trace last as long as the record says.
func (h *holder) tracedTimes() {
	end := h.o.WarmUp + h.o.Measure
	times := make([][sim.NumStates]sim.Micros, len(h.line.Stations))
	last := make([]*sim.StateChange, len(h.line.Stations))
	for k := range h.trace.States {
		c := &h.trace.States[k]
		if before := last[c.Station]; before != nil {
			times[c.Station][before.State] += h.inWindow(before.At, c.At)
			if before.At >= c.At {
				h.fault("%s: a state that lasts no time at %d", h.line.Stations[c.Station].Name, c.At)
			}
		}
		last[c.Station] = c
	}
	for i := range times {
		times[i][last[i].State] += h.inWindow(last[i].At, end)
		if times[i] != h.rec.Stations[i].States {
			h.fault("%s: states by the trace %v, by the record %v", h.line.Stations[i].Name, times[i], h.rec.Stations[i].States)
		}
	}
}

// tracedTogether: all stations run at once as long as the trace says.
func (h *holder) tracedTogether() {
	changes := slices.Clone(h.trace.States)
	slices.SortStableFunc(changes, func(a, b sim.StateChange) int { return cmp.Compare(a.At, b.At) })
	running := make([]bool, len(h.line.Stations))
	all, since := sim.Micros(0), sim.Micros(0)
	together := func() bool { return !slices.Contains(running, false) }
	for _, c := range changes {
		if together() {
			all += h.inWindow(since, c.At)
		}
		running[c.Station], since = c.State == sim.Running, c.At
	}
	if together() {
		all += h.inWindow(since, h.o.WarmUp+h.o.Measure)
	}
	h.same("all running by the trace", int64(h.rec.AllRunning), int64(all))
}
