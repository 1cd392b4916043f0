package keyfigure

import (
	"slices"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

const minute = float64(sim.Minute)

// newStation derives what a station says by itself, without its neighbours.
func newStation(line *sim.Station, people *scenario.Station) Station {
	s := Station{
		Name: line.Name, TakesUnit: people.TakesUnit, GivesUnit: people.GivesUnit,
		Takes: max(line.Takes, 1), Gives: max(line.Gives, 1),
		GoodShare: 1 - line.RejectShare, Yield: 1, calendar: 1,
	}
	s.Set = s.speed(people.SetCycle / minute)
	s.Top = s.speed(people.TopCycle / minute)
	fastest := people.SetCycle
	for _, step := range line.Steps {
		fastest = min(fastest, float64(step.Cycle))
	}
	s.Fastest = s.speed(fastest / minute)
	s.GroupSeconds = groupSeconds(line.Group)
	s.longest = longestCycle(line, people)
	s.addStops(line.Stops)
	s.addMaterials(line.Materials, people.Materials)
	s.Alone = s.efficiency(s.Set, s.downPerCycle, s.calendar)
	s.WebSpeed = webSpeed(&s, line, people)
	s.Dwell = newDwell(people.Sealing, people.SetCycle, fastest)
	s.LeftOut = leftOut(line)
	return s
}

// speed is the rate of a cycle time in minutes.
func (s *Station) speed(cycle float64) Rate {
	if cycle <= 0 {
		return Rate{}
	}
	return Rate{Cycles: 1 / cycle, Pieces: float64(s.Gives) / cycle}
}

// groupSeconds is the long-run addition of a group to the mean cycle.
func groupSeconds(g sim.Group) float64 {
	if g.Every <= 0 {
		return 0
	}
	return float64(g.Adds) / float64(sim.Second) / float64(g.Every)
}

// longestCycle is the mean of the cycle that is under way at some moment, E(c²)/E(c) (inspection
// paradox), with all that can make it longer.
func longestCycle(line *sim.Station, people *scenario.Station) float64 {
	cv := line.Cycle.CV()
	return people.SetCycle/minute*(1+cv*cv) + float64(line.Group.Adds+line.HeatRecovery+line.Ramp)/minute
}

// meanCycle is the mean cycle in minutes at a speed, group addition included.
func (s *Station) meanCycle(r Rate) float64 { return 1/r.Cycles + s.GroupSeconds/60 }

// efficiency is 1/(1 + down time per running time) times the calendar stops.
// Source: isolated efficiency of a machine with operation-dependent failures
// (Gershwin 1994, Manufacturing Systems Engineering; from memory); calendar
// stops run on during other stops and overlap them, hence the product.
func (s *Station) efficiency(r Rate, downPerCycle, calendar float64) float64 {
	if r.Cycles <= 0 {
		return 0
	}
	return calendar / (1 + downPerCycle/s.meanCycle(r) + s.downPerRun)
}

// effective is the mean rate of good pieces at a speed and an efficiency.
func (s *Station) effective(r Rate, efficiency float64) Rate {
	if r.Cycles <= 0 {
		return Rate{}
	}
	return s.rateOf(efficiency / s.meanCycle(r))
}

// value fills in what depends on the worth of a piece at the count.
func (s *Station) value() {
	for _, r := range []*Rate{&s.Set, &s.Top, &s.Fastest} {
		r.Answer = r.Pieces * s.PerPiece
	}
	s.Effective = s.effective(s.Set, s.Alone)
}

// leftOut names losses that the efficiency does not contain.
func leftOut(line *sim.Station) []string {
	var out []string
	if line.Ramp > 0 {
		out = append(out, "ramp")
	}
	if len(line.AfterStop)+len(line.AfterStandstill) > 0 {
		out = append(out, "restart scrap")
	}
	if slices.ContainsFunc(line.Stops, func(s sim.Stop) bool { return s.Scraps }) {
		out = append(out, "cycles lost by stops")
	}
	for i, renewed := range renewals(line.Stops, max(line.Gives, 1)) {
		if renewed.unknown {
			out = append(out, line.Stops[i].Name+" with its renewed clock")
		}
	}
	crew := func(w sim.Work) bool { return w.Crew != "" }
	if slices.ContainsFunc(line.Stops, func(s sim.Stop) bool { return crew(s.Crew) }) ||
		slices.ContainsFunc(line.Materials, func(m sim.Material) bool { return crew(m.Crew) && !m.Alarm.On }) {
		out = append(out, "waiting for crew")
	}
	return out
}
