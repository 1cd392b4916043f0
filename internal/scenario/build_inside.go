package scenario

import (
	"tuckline/internal/quantity"
	"tuckline/sim"
)

// inside makes what happens inside a station beside its cycles: rejects, tests, pockets, heat.
func (b *resolver) inside(w *stationWords, station *sim.Station, extra *Station) {
	station.HeatRecovery = micros(w.HeatRecovery.value)
	station.NoReads, station.LostPerStop = w.NoReads.value, w.LostPerStop.pieces()
	station.RejectsAfter = int64(w.Inspection.RejectsAfter.value)
	extra.Guaranteed = w.Guaranteed.value
	b.rejects(w, station)
	b.pockets(w, station)
	b.closing(w, station)
	for i := range w.Checks.list {
		station.Checks = append(station.Checks, b.check(w, &w.Checks.list[i], extra.GivesUnit))
	}
}

// check makes an in-process test.
func (b *resolver) check(w *stationWords, e *entry[checkWords], gives string) sim.Check {
	c := &e.value
	b.law(c.Every.law)
	b.law(c.Lasts.law)
	b.countsPieces("test", w.Name.value, &c.Every, gives)
	return sim.Check{
		Name: e.name, Every: c.Every.law.law, Clock: clocks[c.Every.age.clock], Takes: c.Takes.pieces(),
		Lasts: c.Lasts.law.law, Crew: b.work(&c.Crew, usualPriority),
	}
}

// checkSamples refuses tests that take all that the station gives from one to the next.
func (b *resolver) checkSamples(w *stationWords, station *sim.Station) {
	for i := range station.Checks {
		check := &station.Checks[i]
		between := check.Every.Mean()
		switch check.Clock {
		case sim.CycleClock:
			between *= float64(station.Gives)
		case sim.RunningClock, sim.CalendarClock:
			between *= float64(station.Gives) / station.Cycle.Mean()
		}
		if between > 0 && float64(check.Takes) >= between {
			b.complain(w.Checks.list[i].value.Takes.at, "%q takes %d at a time, but only %.4g come from one test to the next: nothing would go on", check.Name, check.Takes, between)
		}
	}
}

// countsPieces wants an age in pieces to count those that the station gives.
func (b *resolver) countsPieces(what, station string, every *ageLaw, gives string) {
	if unit := every.age.pieces; every.age.clock == quantity.Pieces && !quantity.SameUnit(unit, gives) {
		b.complain(every.at, "the %s counts %s, but %q gives %s; write %s or cycles", what, quantity.Plural(unit), station, gives, gives)
	}
}

// pockets lets a station run on empty.
func (b *resolver) pockets(w *stationWords, station *sim.Station) {
	s := &w.IncompleteStack
	if !s.empty {
		return
	}
	if len(b.flow.feeders[station.Name]) == 0 {
		b.complain(s.at, "%q is fed by supply, which is always complete; leave it out, or write wait", station.Name)
	}
	station.EmptyPockets = sim.EmptyPockets{On: true, Most: int64(s.EmptyPocket.value)}
}

// closing is heated up, or has nothing to heat.
func (b *resolver) closing(w *stationWords, station *sim.Station) {
	c := &w.Closing
	switch {
	case c.By.value == "tuck-in" && c.HeatUp.given():
		b.complain(c.HeatUp.at, "tuck-in has nothing to heat; leave heat-up out, or write by: hot melt")
	case c.By.value == "hot melt" && !c.HeatUp.given():
		b.complain(c.By.at, "hot melt has to be heated up; write heat-up: 45 min beside it, or heat-up: none if it is kept hot")
	}
	station.HeatUp = micros(c.HeatUp.value)
	if run := &b.words.Run; station.HeatUp > 0 && !run.WarmUp.auto && run.WarmUp.value >= c.HeatUp.value {
		b.warn("The heat-up of %s, %s, lies within the warm-up of the run, %s: the measured window does not show it.", station.Name, c.HeatUp.text(), run.WarmUp.text())
	}
}

// checkCauses refuses a stop, a material and a test of the same name: reports list them
// together. Some stops get their names from the program.
func (b *resolver) checkCauses(w *stationWords) {
	seen := map[string]cause{}
	see := func(name, what string, place at) {
		other, twice := seen[name]
		if !twice {
			seen[name] = cause{what, place}
			return
		}
		b.complain(place, "%q is also the name of %s of %q (line %d); reports list both together, so name one differently", name, other.what, w.Name.value, other.place.line())
	}
	for _, s := range w.Stops.list {
		see(s.name, "a stop", s.place)
	}
	for _, m := range w.Consumes.list {
		see(m.name, "a material", m.place)
		if m.value.MisPicks.given() {
			see(sim.MisPickName(m.name), "the stop after mis-picks", m.value.MisPicks.at)
		}
	}
	for _, c := range w.Checks.list {
		see(c.name, "a test", c.place)
	}
	if w.StopAfter.given() {
		see(sim.RejectStopName, "the stop after rejects in a row", w.StopAfter.at)
	}
	if w.Closing.HeatUp.value > 0 {
		see(sim.HeatUpName, "the heat-up", w.Closing.HeatUp.at)
	}
}

// cause is what has a name at a station, and where.
type cause struct {
	what  string
	place at
}
