package sim_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"

	"tuckline/sim"
)

// A running clock stands still while the station is blocked: 3.5 s of running are over at 13.5, not at 3.5.
func TestRunningClockStandsWhileBlocked(t *testing.T) {
	a := one("A", "", 1)
	a.Stops = []sim.Stop{{Name: "jam", Every: sec(3.5), Clock: sim.RunningClock, Lasts: sec(1)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 6)}},
		measure: 14 * s,
		want: `
			0    A running, B starved
			1    B running           # until 7
			2    A blocked           # 2 s of running
			7    A running           # B takes, until 13
			8    A blocked           # 3 s
			13   A running
			13.5 A down (jam)        # 3.5 s
		`,
	}.trail(t)
}

// People who are freed in an instant go to the first of all who ask in that instant: C asks at 6 with
// priority 1, B since 3 with 5.
func TestCrewIsGivenOutLastInTheInstant(t *testing.T) {
	course{
		line:    fitters(1, needing("A", 2, 4, 1, 5), needing("B", 3, 2, 1, 5), needing("C", 6, 1, 1, 1)),
		measure: 8 * s,
		want: `
			0 A running, B running, C running
			2 A down (jam)                                  # until 6
			3 B waiting for crew (jam)
			6 A running, C down (jam)                       # C's stop strikes as its seventh cycle starts
			7 B down (jam), C running
		`,
	}.trail(t)
}

// A scrapped cycle draws no reject: of as many pieces given as many are rejected, with scrap and without.
func TestScrappedCyclesDrawNoReject(t *testing.T) {
	run := func(st sim.Station) sim.StationRecord {
		return compile(t, sim.Line{Stations: []sim.Station{st}}).NewEngine().Run(sim.Options{Seed: 9, Measure: sim.Hour}).Stations[0]
	}
	a := one("A", "", 1)
	a.Gives, a.RejectShare = 3, 0.2
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(10.5), Lasts: sec(1)}}
	a.AfterStop = []sim.ScrapRule{{Cycles: 4}}
	with := run(a)
	a.AfterStop, a.Supply = nil, with.Given/a.Gives
	without := run(a)
	if with.ScrappedCycles == 0 || with.Given != without.Given || with.Rejected != without.Rejected {
		t.Errorf("of %d given %d rejected with scrap, of %d %d without", with.Given, with.Rejected, without.Given, without.Rejected)
	}
}

// No two things draw from one stream: over replications first ages, repairs, cycles, reels and changes
// have nothing to do with each other.
func TestStreamsAreApart(t *testing.T) {
	const n = 400
	exp := func(mean float64) sim.Law { return must(t)(sim.Exponential(mean * 1e6)) }
	a, b := one("A", "", 1), one("B", "A", 0.001)
	a.Cycle = exp(1)
	a.Stops = []sim.Stop{
		{Name: "jam", Every: exp(20), Clock: sim.RunningClock, Lasts: exp(0.01)},
		{Name: "check", Every: exp(300), Clock: sim.CalendarClock, Lasts: exp(0.02)},
	}
	a.Materials = []sim.Material{{Name: "reel", Amount: 1000, PerCycle: 1, Refill: 1000, PartUsed: true, Lasts: exp(0.03)}}
	e := compile(t, sim.Line{Stations: []sim.Station{a, b}}).NewEngine()
	var drawn [7][]float64 // first cycle, then age and length of jam, check and reel
	for r := range n {
		var trace sim.Trace
		e.Run(sim.Options{Seed: 12, Replication: r, Measure: 4000 * s, Trace: &trace})
		for _, c := range trace.States {
			if c.Station == 1 && c.State == sim.Running {
				drawn[0] = append(drawn[0], float64(c.At))
				break
			}
		}
		for stop := range 3 { // by name: check, jam, reel
			for _, spell := range trace.Stops {
				if spell.Stop == stop {
					drawn[1+2*stop] = append(drawn[1+2*stop], float64(spell.Begin))
					drawn[2+2*stop] = append(drawn[2+2*stop], float64(spell.Done-spell.Work))
					break
				}
			}
		}
	}
	for i := range drawn {
		if len(drawn[i]) != n {
			t.Fatalf("draw %d came in %d replications of %d", i, len(drawn[i]), n)
		}
		for j := range i {
			// Without a link |r| is above 4/√n in one of 16,000 cases.
			if r := stat.Correlation(drawn[i], drawn[j], nil); math.Abs(r) > 4/math.Sqrt(n) {
				t.Errorf("draws %d and %d have a correlation of %.2f", j, i, r)
			}
		}
	}
}
