package sim_test

import (
	"fmt"

	"tuckline/sim"
)

// holder collects what does not hold in a record.
type holder struct {
	line  sim.Line
	m     *sim.Model
	o     sim.Options
	rec   *sim.Record
	trace *sim.Trace
	found []string
}

func (h *holder) fault(format string, args ...any) {
	h.found = append(h.found, fmt.Sprintf(format, args...))
}

func (h *holder) same(what string, a, b int64) {
	if a != b {
		h.fault("%s: %d is not %d", what, a, b)
	}
}

func (h *holder) atMost(what string, a, b int64) {
	if a > b {
		h.fault("%s: %d is more than %d", what, a, b)
	}
}

// faults lists what must hold for every line and does not hold in this record:
// conservation of pieces, times that sum to the window, levels within the
// capacity, and, with a trace, the same figures from the trace.
func faults(line sim.Line, m *sim.Model, o sim.Options, rec *sim.Record, trace *sim.Trace) []string {
	if rec.End == sim.OrdersFinished {
		o.Measure = rec.Window
	}
	h := &holder{line: line, m: m, o: o, rec: rec, trace: trace}
	h.same("window", int64(rec.Window), int64(o.Measure))
	h.same("scheduled", int64(rec.Scheduled), int64(line.Calendar.Scheduled(o.WarmUp+o.Measure)-line.Calendar.Scheduled(o.WarmUp)))
	for i := range rec.Stations {
		h.stationPieces(i)
		h.stationTimes(i)
		h.materials(i)
	}
	for i := range rec.Buffers {
		h.place(i)
	}
	for i := range rec.Crews {
		h.crew(i)
	}
	h.allCrews()
	if trace != nil {
		h.tracedStations()
		h.tracedLevels()
		h.tracedStops()
	}
	return h.found
}

// stationPieces: what is taken is worked or still inside; what cycles give is passed
// on, rejected, scrapped or still held.
func (h *holder) stationPieces(i int) {
	s, r := &h.line.Stations[i], &h.rec.Stations[i]
	if members := h.members(i); len(members) > 1 {
		h.memberPieces(members, i)
		return
	}
	h.taken(s, r)
	h.same(s.Name+" given and scrapped", r.Given+r.Scrapped, s.Gives*r.Cycles)
	h.same(s.Name+" scrapped", r.Scrapped, s.Gives*r.ScrappedCycles)
	h.same(s.Name+" passed", r.Given-r.Rejected-r.Sampled, r.Passed+r.OutputInside[1]-r.OutputInside[0])
	h.atMost(s.Name+" rejected", r.Rejected, r.Given)
	h.rejects(s, r)
	if s.Supply > 0 {
		h.atMost(s.Name+" taken of the supply", r.Taken, s.Supply)
	}
	for edge := range 2 {
		if in := r.InputInside[edge] + r.PartInside[edge]; in != 0 && in != s.Takes {
			h.fault("%s: %d pieces in the cycle under way", s.Name, in)
		}
		h.atMost(s.Name+" output held", r.OutputInside[edge], s.Gives)
		if s.BlocksBefore && !h.mayShut(s.Name) {
			h.same(s.Name+" output held", r.OutputInside[edge], 0)
		}
	}
}

// taken: what cycles have taken, and lacked at the end of an order, is of cycles that have ended, were lost or are under way.
func (h *holder) taken(s *sim.Station, r *sim.StationRecord) {
	h.same(s.Name+" taken", r.Taken+r.PartShort, s.Takes*r.Cycles+r.Lost+r.PartLost+
		r.InputInside[1]+r.PartInside[1]-r.InputInside[0]-r.PartInside[0])
	h.same(s.Name+" lost of whole cycles", (r.Lost+r.PartLost)%s.Takes, 0)
	ended := r.PartShort - r.PartLost + r.PartInside[0] - r.PartInside[1] // what part cycles that have ended lacked
	h.atMost(s.Name+" part cycles", r.PartCycles, ended)
	h.atMost(s.Name+" lacked by part cycles", ended, r.PartCycles*(s.Takes-1))
	if s.LastPart != sim.PartClosed {
		h.same(s.Name+" part cycles of one that rejects", r.PartCycles+r.PartShort+r.PartLost+r.PartInside[0]+r.PartInside[1], 0)
	}
}

// stationTimes: the states sum to the window; stops that do not overlap sum to
// waiting and down; only what is held can block after a cycle.
func (h *holder) stationTimes(i int) {
	s, r := &h.line.Stations[i], &h.rec.Stations[i]
	sum := sim.Micros(0)
	for state, d := range r.States {
		if d < 0 {
			h.fault("%s is %s for less than no time", s.Name, sim.State(state))
		}
		sum += d
	}
	h.same(s.Name+" states", int64(sum), int64(h.o.Measure))
	members := h.members(i)
	if s.BlocksBefore && !h.mayShut(s.Name) {
		h.same(s.Name+" holding", int64(r.Holding), 0)
	} else if !s.BlocksBefore {
		holding := h.rec.Stations[members[len(members)-1]].Holding
		h.atMost(s.Name+" blocked", int64(r.States[sim.Blocked]), int64(holding))
	}
	stopped, overlap, grouped := sim.Micros(0), false, false
	for _, m := range members {
		grouped = grouped || h.inGroup(&h.line.Stations[m])
		for j, c := range h.m.StopNames(m) {
			stopped += h.rec.Stations[m].Stops[j].Waiting + h.rec.Stations[m].Stops[j].Down
			overlap = overlap || isCalendar(&h.line.Stations[m], c)
		}
	}
	stands, off := h.outages()
	h.same(s.Name+" off shift", int64(r.States[sim.OffShift]), int64(off))
	h.atMost(s.Name+" planned stop", int64(stands), int64(r.States[sim.PlannedStop]))
	down := r.States[sim.Waiting] + r.States[sim.Down] + r.States[sim.PlannedStop] - stands
	switch {
	case grouped:
	case overlap, stands+off > 0, r.States[sim.Changeover] > 0:
		h.atMost(s.Name+" down", int64(down), int64(stopped))
	default:
		h.same(s.Name+" down", int64(down), int64(stopped))
	}
}

// outages are the times in the window in which the lines stand, and are off shift.
func (h *holder) outages() (stands, off sim.Micros) {
	h.spans(func(span *sim.Span, lasts sim.Micros) {
		switch span.Line {
		case sim.LineStands:
			stands += lasts
		case sim.LineOff:
			off += lasts
		}
	})
	return stands, off
}

func isCalendar(s *sim.Station, stop string) bool {
	for i := range s.Stops {
		if s.Stops[i].Name == stop {
			return s.Stops[i].Clock == sim.CalendarClock
		}
	}
	return false
}

func (h *holder) inGroup(s *sim.Station) bool {
	for i := range h.line.Stations {
		if h.line.Stations[i].StopsWith == s.Name {
			return true
		}
	}
	return s.StopsWith != ""
}

// place: what enters comes out or stays, and comes from and goes to the neighbours.
func (h *holder) place(i int) {
	p, r := h.m.Places()[i], &h.rec.Buffers[i]
	h.same(p.Name+" level", r.In+r.Returned-r.Out-r.Cleared, r.Level[1]-r.Level[0])
	if p.Capacity != sim.Unlimited {
		h.atMost(p.Name+" level", max(r.Max, r.Level[0], r.Level[1]), p.Capacity)
		h.atMost(p.Name+" level time", r.LevelTime, p.Capacity*int64(h.o.Measure))
	}
	if min(r.Level[0], r.Level[1], r.In, r.Out) < 0 {
		h.fault("%s: a level or a count below 0", p.Name)
	}
	h.stores(i)
	h.atMost(p.Name+" in transit", r.TransitTime, r.LevelTime)
	if !h.chosen(p.From[0]) {
		h.same(p.Name+" in", r.In, h.flow(p.From, func(s *sim.StationRecord) int64 { return s.Passed }))
	}
	if !h.isPlace(p.To[0]) && !h.assembles(p) {
		h.same(p.Name+" out", r.Out, h.flow(p.To, func(s *sim.StationRecord) int64 { return s.Taken + s.PartRejected }))
	}
	sum := sim.Micros(0)
	for _, d := range r.Classes {
		sum += d
	}
	if r.Classes != nil {
		h.same(p.Name+" classes", int64(sum), int64(h.o.Measure))
	}
}

func (h *holder) isPlace(name string) bool {
	for _, p := range h.m.Places() {
		if p.Name == name {
			return true
		}
	}
	return false
}

// flow sums over neighbours: stations by pieces, places by what left them.
func (h *holder) flow(names []string, pieces func(*sim.StationRecord) int64) int64 {
	sum := int64(0)
	for _, name := range names {
		for i := range h.line.Stations {
			if h.line.Stations[i].Name == name {
				sum += pieces(&h.rec.Stations[i])
			}
		}
		for i, p := range h.m.Places() {
			if p.Name == name {
				sum += h.rec.Buffers[i].Out
			}
		}
	}
	return sum
}
