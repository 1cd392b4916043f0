package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// leftOut names losses that the efficiency does not contain: they depend on what happens around
// the station.
func leftOut(line *sim.Station) []string {
	var out []string
	add := func(has bool, what string) {
		if has {
			out = append(out, what)
		}
	}
	material := func(has func(*sim.Material) bool) bool {
		return slices.ContainsFunc(line.Materials, func(m sim.Material) bool { return has(&m) })
	}
	add(line.Ramp+line.HeatRecovery > 0, "restarts after other standstills")
	add(line.HeatUp > 0, "heat-up at the beginning")
	add(len(line.AfterStop)+len(line.AfterStandstill) > 0, "restart scrap")
	add(slices.ContainsFunc(line.Stops, func(s sim.Stop) bool { return s.Scraps }), "cycles lost by stops")
	add(line.LostPerStop > 0, "packs lost when others stop it")
	add(line.EmptyPockets.On, "empty pockets")
	add(material(func(m *sim.Material) bool { return m.Alarm.On }), "late refills")
	add(material(func(m *sim.Material) bool { return m.Store.On }), "splices that last longer than the web store")
	add(material(func(m *sim.Material) bool { return m.Prepare.On }), "reels that are not prepared in time")
	for i, renewed := range renewals(line.Stops, max(line.Gives, 1)) {
		add(renewed.unknown, line.Stops[i].Name+" with its renewed clock")
	}
	add(waitsForCrew(line), "waiting for crew")
	return out
}

// waitsForCrew says that a stop, a change at standstill or a test asks for people.
func waitsForCrew(line *sim.Station) bool {
	asks := func(w sim.Work) bool { return w.Crew != "" }
	return slices.ContainsFunc(line.Stops, func(s sim.Stop) bool { return asks(s.Crew) }) ||
		slices.ContainsFunc(line.Checks, func(c sim.Check) bool { return asks(c.Crew) }) ||
		line.RejectStop.After > 0 && asks(line.RejectStop.Crew) ||
		slices.ContainsFunc(line.Materials, func(m sim.Material) bool {
			return asks(m.Crew) && !m.Alarm.On && !m.Store.On || m.MisPicks.Stops && asks(m.MisPicks.Crew)
		})
}
