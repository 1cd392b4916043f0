package scenario

import (
	"math"

	"tuckline/sim"
)

// station makes a station of the model.
func (b *resolver) station(e *entryWords) {
	w := e.station
	name := e.name.value
	station := sim.Station{
		Name: name, From: b.feeder(name), Supply: w.From.limit.pieces(),
		Takes: max(1, w.Takes.pieces()), Gives: max(1, w.Gives.pieces()),
		Cycle: w.Cycle.law.law, Group: sim.Group{Every: int64(w.Group.Every.value), Adds: micros(w.Group.Adds.value)},
		Ramp: micros(w.Ramp.value), BlocksBefore: w.Blocks.value != "", RejectShare: w.Rejects.value,
		AfterStop: scrapRules(w.AfterStop.list), AfterStandstill: scrapRules(w.AfterStandstill.list),
		Also: b.also(name, &w.Takes), Sends: sim.Sends{To: b.sendsOf(w), Rule: sendRules[w.Sends.Rule.value]},
		Priority: int(w.Priority.value), Coupled: w.Coupled.value, RandomAs: w.RandomNumbersAs.value,
		LoadsWhileStopped: w.Loads.value != "",
	}
	b.law(w.Cycle.law)
	extra := Station{
		TakesUnit: b.unit(inPort(name)), GivesUnit: b.unit(outPort(name)),
		SetCycle: w.Cycle.law.law.Mean(), Forming: w.Forming.value,
		Web:     Web{micrometres(w.Web.Width), micrometres(w.Web.Index), int64(w.Web.Across.value), int64(w.Web.Along.value)},
		Sealing: Sealing{w.Sealing.DwellShare.value, micros(w.Sealing.QualifiedDwell.low), micros(w.Sealing.QualifiedDwell.high)},
	}
	extra.TopCycle = extra.SetCycle
	if w.TopSpeed.given() && w.TopSpeed.value > 0 {
		extra.TopCycle = w.TopSpeed.value
	}
	if extra.TopCycle > extra.SetCycle*(1+1e-9) && b.read(w.Cycle.at) {
		b.complain(w.TopSpeed.at, "top speed is lower than the set speed, cycle: %s", w.Cycle.text())
	}
	for i := range w.Stops.list {
		station.Stops = append(station.Stops, b.stop(w, &w.Stops.list[i], extra.GivesUnit))
	}
	for i := range w.Consumes.list {
		material, more := b.material(&w.Consumes.list[i])
		station.Materials = append(station.Materials, material)
		extra.Materials = append(extra.Materials, more)
	}
	b.inside(w, &station, &extra)
	b.checkCauses(w)
	b.checkWeb(w, station.Gives)
	b.checkSamples(w, &station)
	b.s.Line.Stations = append(b.s.Line.Stations, station)
	b.s.Stations = append(b.s.Stations, extra)
}

// feeder is what a station takes from; empty is supply.
func (b *resolver) feeder(name string) string {
	if feeders := b.flow.feeders[name]; len(feeders) > 0 {
		return feeders[0]
	}
	return ""
}

// also are the further places that a station takes from.
func (b *resolver) also(name string, w *takesWords) []sim.Input {
	feeders := b.flow.feeders[name]
	if len(feeders) != len(w.inputs) {
		return nil // a name was wrong, or there is one place only
	}
	var also []sim.Input
	for k := 1; k < len(feeders); k++ {
		also = append(also, sim.Input{From: feeders[k], Takes: max(1, w.inputs[k].pieces())})
	}
	return also
}

// law notes a law for the hash.
func (b *resolver) law(l law) { b.s.laws = append(b.s.laws, l.path+": "+l.canon) }

func scrapRules(words []scrapWords) []sim.ScrapRule {
	var rules []sim.ScrapRule
	for _, w := range words {
		rule := sim.ScrapRule{LongerThan: micros(w.IfLongerThan.value)}
		if w.Scrap.inTime {
			rule.Lasts = micros(w.Scrap.value)
		} else {
			rule.Cycles = int64(w.Scrap.value)
		}
		rules = append(rules, rule)
	}
	return rules
}

// checkWeb holds the format of the web against gives and the reels.
func (b *resolver) checkWeb(w *stationWords, gives int64) {
	up := w.Web.Across.value * w.Web.Along.value
	if up > 0 && int64(up) != gives {
		b.complain(w.Web.at, "%d across times %d along are %d, but %q gives %d", int64(w.Web.Across.value), int64(w.Web.Along.value), int64(up), w.Name.value, gives)
	}
	for _, m := range w.Consumes.list {
		use := m.value.PerCycle
		if use.web && w.Web.Index.value > 0 && math.Abs(use.value-w.Web.Index.value) > 0.5 {
			b.complain(use.at, "a cycle draws one index, %s, but here %s of %s", w.Web.Index.text(), use.text(), m.name)
		}
	}
}

// micros rounds to whole microseconds.
func micros(value float64) sim.Micros { return sim.Micros(math.Round(value)) }

func micrometres(l length) sim.Micrometres { return sim.Micrometres(math.Round(l.value)) }
