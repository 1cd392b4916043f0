package keyfigure

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// often is how much comes with each cycle and with each minute of running.
type often struct{ perCycle, perRun float64 }

// pause is a cause of own stops, as far as what comes after it costs something.
type pause struct {
	often
	lasts sim.Law
	mean  float64 // minutes, of all tries of the work
	// unsure: it can come less often than derived, so that no bound counts it.
	unsure bool
	// random: its clock has no memory, so that it comes together with no other. steady: it comes
	// more evenly than by chance.
	random, steady bool
}

// restart is what the station loses when it starts after a standstill, in minutes of running.
type restart struct {
	// lost is the heat recovery and half the ramp: during the ramp the speed rises in a straight line.
	lost float64
	// whole is the heat recovery and all the ramp, from is how long a standstill must be.
	whole, from float64
}

func newRestart(line *sim.Station, people *scenario.Station) restart {
	return restart{
		lost:  (float64(line.HeatRecovery) + float64(line.Ramp)/2) / minute,
		whole: float64(line.HeatRecovery+line.Ramp) / minute,
		from:  people.SetCycle,
	}
}

// takes is the running time that restarts after own stops take, for each cycle and for each
// minute of running: how often stops come that last longer than a cycle, times what each costs.
func (r restart) takes(pauses []pause) (took often) {
	if r.lost <= 0 {
		return took
	}
	for _, p := range pauses {
		share := longer(p.lasts, r.from)
		took.perCycle += p.perCycle * share * r.lost
		took.perRun += p.perRun * share * r.lost
	}
	return took
}

// surely is what restarts take for each cycle whatever comes together: stops without
// memory have each a restart of their own, others may follow each other at one standstill, so that only the
// most frequent counts; and one that comes during a restart cuts it short.
func (r restart) surely(s *stopper, pauses []pause) float64 {
	if r.lost <= 0 || s.minutes <= 0 {
		return 0
	}
	random, most := 0.0, 0.0
	for _, p := range pauses {
		comes := (p.perCycle + p.perRun*s.minutes) * longer(p.lasts, r.from)
		switch {
		case p.unsure:
		case p.random:
			random += comes
		default:
			most = max(most, comes)
		}
	}
	again := (s.often + s.unsure + s.outagesPerMinute()*s.minutes) * (1 + r.whole/s.minutes)
	return (random + most) * r.lost * max(0, 1-again)
}
