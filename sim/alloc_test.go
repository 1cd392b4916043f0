package sim_test

import (
	"testing"

	"tuckline/sim"
)

// After set-up nothing is allocated: a run of a hundred hours asks for no more memory
// than one of an hour. What is left is the record and does not grow with time.
func TestNoAllocationAfterSetUp(t *testing.T) {
	crewed := refLine(t, 600_000, 400_000, 3*sim.Second)
	crewed.Crews = []sim.Crew{{Name: "fitters", People: 1, ElsewhereShare: 0.3, ElsewhereSpell: 5 * sim.Minute}}
	for i := range crewed.Stations {
		for j := range crewed.Stations[i].Stops {
			crewed.Stations[i].Stops[j].Crew = sim.Work{Crew: "fitters"}
		}
	}
	crewed.Stations[0].Stops[0].Clock = sim.CalendarClock
	crewed.Stations[1].StopsWith = "web"
	crewed.Buffers[1].Transit = 10 * sim.Second
	crewed.Buffers[0].Restart = sim.Level{On: true, Level: 200}
	for name, line := range map[string]sim.Line{"reference": refLine(t, 600_000, 400_000, 3*sim.Second), "crewed": crewed} {
		e := compile(t, line).NewEngine()
		e.Run(sim.Options{Seed: 1, Measure: 100 * sim.Hour}) // the queues have their room now
		allocated := func(measure sim.Micros) float64 {
			return testing.AllocsPerRun(3, func() { e.Run(sim.Options{Seed: 1, Measure: measure}) })
		}
		short, long := allocated(sim.Hour), allocated(100*sim.Hour)
		t.Logf("%s: %.0f allocations in an hour, %.0f in a hundred", name, short, long)
		if long > short {
			t.Errorf("%s: %.0f allocations in an hour, %.0f in a hundred", name, short, long)
		}
	}
}
