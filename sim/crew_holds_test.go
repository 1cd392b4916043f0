package sim_test

import "tuckline/sim"

// crew: people are busy as long as the stops that asked for them are worked on, longer where they
// do tasks too, and never more people than there are.
func (h *holder) crew(i int) {
	c, r := &h.line.Crews[i], &h.rec.Crews[i]
	h.atMost(c.Name+" at work", int64(r.Busy+r.Elsewhere), int64(c.People)*int64(h.o.Measure))
	h.atMost(c.Name+" waited", r.Waited, r.Requests)
	if c.ElsewhereShare == 0 {
		h.same(c.Name+" elsewhere", int64(r.Elsewhere), 0)
	}
	busy, tasks := sim.Micros(0), false
	for k := range h.line.Stations {
		tasks = tasks || doesTasks(&h.line.Stations[k], c.Name)
		for j, stop := range h.m.StopNames(k) {
			if waitsForTask(&h.line.Stations[k], stop) {
				continue
			}
			if w := workOf(&h.line.Stations[k], stop); w.Crew == c.Name {
				busy += sim.Micros(max(1, w.People)) * h.rec.Stations[k].Stops[j].Down
			}
		}
	}
	for k := range h.line.Buffers {
		for j, stop := range h.m.StoreStopNames(k) {
			if w := storeWorkOf(&h.line.Buffers[k], stop); w.Crew == c.Name {
				busy += sim.Micros(max(1, w.People)) * h.rec.Buffers[k].Stops[j].Down
			}
		}
	}
	for k := range h.line.Buffers {
		b := &h.line.Buffers[k]
		tasks = tasks || b.Kind == sim.HandMagazine && (b.Hand.Crew.Crew == c.Name || b.Returns.Crew.Crew == c.Name)
	}
	if tasks {
		h.atMost(c.Name+" busy with stops", int64(busy), int64(r.Busy))
		return
	}
	h.same(c.Name+" busy", int64(r.Busy), int64(busy))
}

// doesTasks says that a crew does tasks of a station, or changes that wait for one.
func doesTasks(s *sim.Station, crew string) bool {
	for i := range s.Checks {
		if s.Checks[i].Crew.Crew == crew {
			return true
		}
	}
	for i := range s.Materials {
		m := &s.Materials[i]
		if waitsForTask(s, m.Name) && m.Crew.Crew == crew || m.Prepare.On && m.Prepare.Crew.Crew == crew {
			return true
		}
	}
	return false
}

// waitsForTask says that a cause may wait for a task: its times are not the work of its crew.
func waitsForTask(s *sim.Station, cause string) bool {
	for i := range s.Materials {
		if m := &s.Materials[i]; m.Name == cause {
			return m.Alarm.On || m.Store.On || m.Prepare.On
		}
	}
	return false
}

func storeWorkOf(b *sim.Buffer, stop string) sim.Work {
	for i := range b.Stops {
		if b.Stops[i].Name == stop {
			return b.Stops[i].Crew
		}
	}
	return sim.Work{}
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
		if sim.MisPickName(s.Materials[i].Name) == cause {
			return s.Materials[i].MisPicks.Crew
		}
	}
	if cause == sim.RejectStopName {
		return s.RejectStop.Crew
	}
	return sim.Work{}
}
