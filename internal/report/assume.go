package report

import (
	"slices"

	"tuckline/sim"
)

// assumptions are what the model takes for granted.
func assumptions(s *subject) []string {
	all := []string{s.assumedStart(), say("assume.cycle", nil), say("assume.stops", nil), say("assume.speed", nil)}
	if s.Scenario.Calendar != nil {
		all = append(all, say("assume.calendar", nil))
	}
	if s.Scenario.Orders != nil {
		all = append(all, say("assume.orders", nil))
	}
	if len(s.Scenario.Line.Crews) > 0 {
		all = append(all, say("assume.crews", nil))
	}
	for _, part := range assumedParts {
		if part.has(&s.Scenario.Line) {
			all = append(all, say("assume."+part.word, nil))
		}
	}
	for _, p := range s.Figures.Places {
		if p.Kind == "hand-over" {
			all = append(all, say("assume.handover", facts{"From": listed(p.From), "To": listed(p.To), "Places": p.Capacity, "Stacks": p.Stacks}))
		}
	}
	return all
}

// assumedStart is how a run begins and what of it is counted.
func (s *subject) assumedStart() string {
	warmUp := s.Scenario.ScheduledWarmUp()
	f := facts{"Window": s.Window.One, "WarmUp": length(warmUp), "None": warmUp == 0, "Measure": roundLength(s.Scenario.ScheduledMeasure())}
	if s.Window.Runs != s.Window.Many {
		f["Window"] = say("window.until", nil)
	}
	if s.Scenario.Run.UntilOrders {
		return say("assume.until", f)
	}
	return say("assume.start", f)
}

// assumedParts are assumptions about what only some lines have.
var assumedParts = []struct {
	word string
	has  func(*sim.Line) bool
}{
	{"refills", anyMaterial(func(m *sim.Material) bool { return m.Alarm.On })},
	{"web.store", anyMaterial(func(m *sim.Material) bool { return m.Store.On })},
	{"runs", anyStation(func(s *sim.Station) bool { return s.Runs.Enter > 0 })},
	{"register", anyStation(func(s *sim.Station) bool { return s.RejectsAfter > 0 })},
	{"lost.packs", anyStation(func(s *sim.Station) bool { return s.LostPerStop > 0 })},
	{"checks", anyStation(func(s *sim.Station) bool { return len(s.Checks) > 0 })},
	{"beside", anyBuffer(func(b *sim.Buffer) bool { return b.Kind != sim.InLine })},
	{"last.in", anyBuffer(func(b *sim.Buffer) bool { return b.LastIn })},
	{"returns", anyBuffer(func(b *sim.Buffer) bool { return b.Returns.Share > 0 })},
}

func anyStation(is func(*sim.Station) bool) func(*sim.Line) bool {
	return func(line *sim.Line) bool {
		return slices.ContainsFunc(line.Stations, func(s sim.Station) bool { return is(&s) })
	}
}

func anyMaterial(is func(*sim.Material) bool) func(*sim.Line) bool {
	return anyStation(func(s *sim.Station) bool {
		return slices.ContainsFunc(s.Materials, func(m sim.Material) bool { return is(&m) })
	})
}

func anyBuffer(is func(*sim.Buffer) bool) func(*sim.Line) bool {
	return func(line *sim.Line) bool {
		return slices.ContainsFunc(line.Buffers, func(b sim.Buffer) bool { return is(&b) })
	}
}
