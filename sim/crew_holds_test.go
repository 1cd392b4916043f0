package sim_test

import (
	"slices"

	"tuckline/sim"
)

// crew: people are busy as long as the stops that asked for them are worked on, longer where they
// do tasks too or walk, and never more people than there are.
func (h *holder) crew(i int) {
	c, r := &h.line.Crews[i], &h.rec.Crews[i]
	h.atMost(c.Name+" at work", int64(r.Busy-r.Overtime+r.Elsewhere), int64(r.Present))
	h.atMost(c.Name+" present", int64(r.Present), h.onDuty(c))
	h.atMost(c.Name+" overtime", int64(r.Overtime), int64(r.Busy))
	h.atMost(c.Name+" walking", int64(r.Walking), int64(r.Busy))
	h.atMost(c.Name+" waited", r.Waited, r.Requests)
	if !h.haveBreaks() {
		h.same(c.Name+" present", int64(r.Present), h.onDuty(c))
	}
	if len(h.line.Calendar.Spans) == 0 {
		h.same(c.Name+" overtime", int64(r.Overtime), 0)
	}
	if c.Walk.IsZero() && c.Response.IsZero() && !h.help() {
		h.same(c.Name+" walking", int64(r.Walking), 0)
	}
	if c.ElsewhereShare == 0 {
		h.same(c.Name+" elsewhere", int64(r.Elsewhere), 0)
	}
	if !h.help() {
		h.busy(c.Name, r.Busy-r.Walking, c.Name)
	}
}

// allCrews: the same for all crews together where they help each other.
func (h *holder) allCrews() {
	if !h.help() {
		return
	}
	var sum sim.Micros
	var names []string
	for i := range h.line.Crews {
		sum += h.rec.Crews[i].Busy - h.rec.Crews[i].Walking
		names = append(names, h.line.Crews[i].Name)
	}
	h.busy("all crews", sum, names...)
}

// busy compares the work of crews with the stops that they have worked on.
func (h *holder) busy(what string, got sim.Micros, crews ...string) {
	busy, tasks := sim.Micros(0), false
	work := func(w sim.Work, stop *sim.StopRecord) {
		if slices.Contains(crews, w.Crew) {
			busy += sim.Micros(max(1, w.People)) * stop.Down
		}
	}
	for k := range h.line.Stations {
		s := &h.line.Stations[k]
		tasks = tasks || slices.ContainsFunc(crews, func(crew string) bool { return doesTasks(s, crew) })
		for j, stop := range h.m.StopNames(k) {
			if !waitsForTask(s, stop) {
				work(workOf(s, stop), &h.rec.Stations[k].Stops[j])
			}
		}
	}
	for k := range h.line.Buffers {
		b := &h.line.Buffers[k]
		for j, stop := range h.m.StoreStopNames(k) {
			work(storeWorkOf(b, stop), &h.rec.Buffers[k].Stops[j])
		}
		tasks = tasks || b.Kind == sim.HandMagazine && (slices.Contains(crews, b.Hand.Crew.Crew) || slices.Contains(crews, b.Returns.Crew.Crew))
	}
	if tasks || h.changeovers(crews) {
		h.atMost(what+" busy with stops", int64(busy), int64(got))
		return
	}
	h.same(what+" busy", int64(got), int64(busy))
}

// help says that any crew can do the work of another.
func (h *holder) help() bool {
	return slices.ContainsFunc(h.line.Crews, func(c sim.Crew) bool { return len(c.CanAlso) > 0 })
}

func (h *holder) haveBreaks() bool {
	return slices.ContainsFunc(h.line.Calendar.Spans, func(s sim.Span) bool { return s.Crews == sim.CrewsRest })
}

// spans calls for every span of the calendar the part of it that lies in the window.
func (h *holder) spans(each func(span *sim.Span, lasts sim.Micros)) {
	spans := h.line.Calendar.Spans
	if len(spans) == 0 {
		each(&sim.Span{Shift: -1}, h.o.Measure)
		return
	}
	for at, i := sim.Micros(0), 0; at < h.o.WarmUp+h.o.Measure; i++ {
		span := &spans[i%len(spans)]
		each(span, h.inWindow(at, at+span.Lasts))
		at += span.Lasts
	}
}

// onDuty is the time of people that a crew has by the calendar.
func (h *holder) onDuty(c *sim.Crew) int64 {
	sum := int64(0)
	h.spans(func(span *sim.Span, lasts sim.Micros) {
		people := 0
		switch {
		case span.Crews == sim.CrewsRest:
			people = c.InBreaks
		case span.Crews == sim.CrewsAway || c.Relief:
		case c.ByShift == nil:
			people = c.People
		case span.Shift >= 0:
			people = c.ByShift[span.Shift]
		}
		sum += int64(people) * int64(lasts)
	})
	return sum
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
