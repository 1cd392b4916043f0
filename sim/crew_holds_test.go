package sim_test

import "tuckline/sim"

// crew: people are busy as long as the stops that asked for them are worked on, and
// never more people than there are.
func (h *holder) crew(i int) {
	c, r := &h.line.Crews[i], &h.rec.Crews[i]
	h.atMost(c.Name+" at work", int64(r.Busy+r.Elsewhere), int64(c.People)*int64(h.o.Measure))
	h.atMost(c.Name+" waited", r.Waited, r.Requests)
	if c.ElsewhereShare == 0 {
		h.same(c.Name+" elsewhere", int64(r.Elsewhere), 0)
	}
	busy := sim.Micros(0)
	for k := range h.line.Stations {
		for j, stop := range h.m.StopNames(k) {
			if w := workOf(&h.line.Stations[k], stop); w.Crew == c.Name {
				busy += sim.Micros(max(1, w.People)) * h.rec.Stations[k].Stops[j].Down
			}
		}
	}
	h.same(c.Name+" busy", int64(r.Busy), int64(busy))
}

func workOf(s *sim.Station, cause string) sim.Work {
	for i := range s.Stops {
		if s.Stops[i].Name == cause {
			return s.Stops[i].Crew
		}
	}
	for i := range s.Materials {
		if s.Materials[i].Name == cause {
			return s.Materials[i].Crew
		}
	}
	return sim.Work{}
}
