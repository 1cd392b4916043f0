package study

import (
	"math"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// runLine is a line with names that are not in the order of the alphabet, so that a figure at the
// wrong name is seen: two reels, two tests, a web that rejects, a picker that misses.
func runLine() *scenario.Scenario {
	s := steady()
	s.Run.Replications, s.Run.WarmUp, s.Run.Measure = 4, 10*sim.Minute, 2*sim.Hour
	people := sim.Work{Crew: "operators", People: 1, Priority: 5}
	minute := float64(sim.Minute)
	web, cartoner := &s.Line.Stations[0], &s.Line.Stations[1]
	web.RejectShare = 0.01
	web.Materials = []sim.Material{
		{Name: "top foil", Amount: 1e9, PerCycle: 200e3, Refill: 1e9, Web: true, Lasts: sim.Fixed(minute), Crew: people},
		{Name: "base foil", Amount: 1e9, PerCycle: 100e3, Refill: 1e9, Web: true, Lasts: sim.Fixed(minute), Crew: people},
	}
	web.Checks = []sim.Check{
		{Name: "weight", Every: sim.Fixed(20 * minute), Clock: sim.RunningClock, Takes: 4, Lasts: sim.Fixed(minute), Crew: people},
		{Name: "leak", Every: sim.Fixed(10 * minute), Clock: sim.RunningClock, Takes: 12, Lasts: sim.Fixed(minute), Crew: people},
	}
	cartoner.NoReads = 0.02
	cartoner.Materials = []sim.Material{
		{Name: "leaflets", Amount: 800, PerCycle: 1, Refill: 400, Lasts: sim.Fixed(minute / 4), Crew: people, Alarm: sim.Level{On: true, Level: 300}},
		{Name: "blanks", Amount: 2000, PerCycle: 1, Refill: 500, Lasts: sim.Fixed(minute / 4), Crew: people, Alarm: sim.Level{On: true, Level: 500}},
	}
	s.Stations[0].Materials = []scenario.Material{{Kind: "reel", Unit: "m", AlarmAt: -1}, {Kind: "reel", Unit: "m", AlarmAt: -1}}
	s.Stations[1].Materials = []scenario.Material{{Kind: "magazine", Unit: "leaflets", AlarmAt: 300}, {Kind: "magazine", Unit: "blanks", AlarmAt: 500}}
	s.Line.Crews = []sim.Crew{{Name: "operators", People: 2}}
	return s
}

// What the engine counts arrives at its name, and the ways of pieces add up. Expected values by hand from
// the cycles and the running time that the engine found.
func TestFiguresArriveAtTheirNames(t *testing.T) {
	r := mustRun(t, runLine(), Options{}).Results
	web, cartoner := r.Stations[0], r.Stations[1]
	cycles := web.CyclesPerHour.Mean
	near(t, "top foil, 200 mm a cycle", web.Materials[0].UsedPerHour, 0.2*cycles)
	near(t, "base foil, 100 mm a cycle", web.Materials[1].UsedPerHour, 0.1*cycles)
	near(t, "leaflets", cartoner.Materials[0].UsedPerHour, cartoner.CyclesPerHour.Mean)
	within := func(what string, got, want, tolerance float64) {
		t.Helper()
		if math.Abs(got-want) > tolerance {
			t.Errorf("%s: got %v, want %v ± %v", what, got, want, tolerance)
		}
	}
	// Every 20 and 10 min of running: a test more or less at the edges of two hours.
	running := web.States.Running.Mean
	within("weight tests", web.Checks[0].PerHour.Mean, 3*running, 0.5)
	within("leak tests", web.Checks[1].PerHour.Mean, 6*running, 0.5)
	within("samples", web.Pieces.Samples.Mean, 4*web.Checks[0].PerHour.Mean+12*web.Checks[1].PerHour.Mean, 8)
	// Refills an hour: what is used over what a refill adds, one more or less in two hours.
	within("refills of leaflets", cartoner.Materials[0].Tasks.PerHour.Mean, cartoner.CyclesPerHour.Mean/400, 0.5)
	within("refills of blanks", cartoner.Materials[1].Tasks.PerHour.Mean, cartoner.CyclesPerHour.Mean/500, 0.5)
	// Shares of some 115,000 blisters and 57,000 cartons in four runs: four standard errors of the binomial.
	within("faulty", web.Pieces.Faulty.Mean/web.GivenPerHour.Mean, 0.01, 4*math.Sqrt(0.01*0.99/115_000))
	within("no-reads", cartoner.Pieces.NoReads.Mean/cartoner.GivenPerHour.Mean, 0.02, 4*math.Sqrt(0.02*0.98/57_000))
	for _, station := range r.Stations {
		p := station.Pieces
		sum := 0.0
		for _, part := range []result.Estimate{p.Good, p.Faulty, p.InRuns, p.NoReads, p.LostPacks, p.MisPicked, p.Samples, p.Scrapped} {
			if part.Mean < 0 {
				t.Errorf("%s: %+v", station.Name, p)
			}
			sum += part.Mean
		}
		near(t, "pieces of "+station.Name, p.Made, sum)
	}
}
