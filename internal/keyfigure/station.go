package keyfigure

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

const minute = float64(sim.Minute)

// newStation derives what a station says by itself, without its neighbours.
func newStation(line *sim.Station, people *scenario.Station) Station {
	s := Station{
		Name: line.Name, TakesUnit: people.TakesUnit, GivesUnit: people.GivesUnit,
		Takes: max(line.Takes, 1), Gives: max(line.Gives, 1),
		Yield: 1, calendar: 1, Guaranteed: people.Guaranteed, Tries: 1 + extraTries(line), restart: newRestart(line, people),
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
	s.addPickStops(line.Materials)
	s.addRejectStop(line)
	s.settle(line)
	s.ownRestarts = s.restarts
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
	tries := 1.0
	for _, m := range line.Materials {
		if m.MisPicks.Share > 0 {
			tries += float64(m.MisPicks.Retries)
		}
	}
	return people.SetCycle/minute*(1+cv*cv)*tries + float64(line.Group.Adds+line.HeatRecovery+line.Ramp)/minute
}

// meanCycle is the mean cycle in minutes at a speed, group addition and further tries included.
func (s *Station) meanCycle(r Rate) float64 { return s.Tries/r.Cycles + s.GroupSeconds/60 }

// running is the mean running time of a cycle in minutes at a speed, with the restarts after own stops.
func (s *Station) running(r Rate) float64 {
	return (s.meanCycle(r) + s.restarts.perCycle) / (1 - min(0.999, s.restarts.perRun))
}

// settle derives what follows from all own stops together.
func (s *Station) settle(line *sim.Station) {
	s.RestartSeconds = 60 * s.restart.lost
	s.restarts = s.restart.takes(s.pauses)
	s.Losses = s.losses(line)
	s.GoodShare, s.mostGood = good(s.Losses), s.leastLost(line)
}

// efficiency is 1/(1 + down time per running time) times the calendar stops.
// Source: isolated efficiency of a machine with operation-dependent failures
// (Gershwin 1994, Manufacturing Systems Engineering; from memory); calendar
// stops run on during other stops and overlap them, hence the product.
func (s *Station) efficiency(r Rate, downPerCycle, calendar float64) float64 {
	if r.Cycles <= 0 {
		return 0
	}
	return calendar / (1 + downPerCycle/s.running(r) + s.downPerRun)
}

// effective is the mean rate of good pieces at a speed and an efficiency.
func (s *Station) effective(r Rate, efficiency float64) Rate {
	if r.Cycles <= 0 {
		return Rate{}
	}
	cycles := efficiency / s.running(r)
	given := cycles * float64(s.Gives)
	return Rate{Cycles: cycles, Pieces: given * s.GoodShare, Answer: given * s.PerPiece * s.Yield}
}

// value fills in what depends on the worth of a piece at the count.
func (s *Station) value() {
	for _, r := range []*Rate{&s.Set, &s.Top, &s.Fastest} {
		r.Answer = r.Pieces * s.PerPiece
	}
	s.Effective = s.effective(s.Set, s.Alone)
}
