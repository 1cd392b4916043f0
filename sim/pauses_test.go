package sim_test

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/sim"
)

// Pauses are those of own and of joined stops, whole, also where they overlap.
func TestPausesOfOwnAndJoinedStops(t *testing.T) {
	a, p := one("A", "", 2), one("P", "", 2)
	p.Stops, a.StopsWith = []sim.Stop{jamAfter(3, 4)}, "P"
	a.Stops = []sim.Stop{jamAt(9, 3)}
	m := compile(t, sim.Line{Stations: []sim.Station{a, p}})
	rec := m.NewEngine().Run(sim.Options{WarmUp: 1 * s, Measure: 12 * s, Pauses: true})
	// P strikes at 6, when its fourth cycle starts, until 10; A ends its cycle at 8 and stops with it. At 9 A
	// jams itself, until 12: one pause from 8 to 12, which P began. P goes on with its cycle from 10 to 12, and has
	// nothing to wait for then.
	want := map[string][]sim.Pause{
		"A": {{Station: 1, Cause: 0, Begin: 8 * s, Lasted: 4 * s}},
		"P": {{Station: 1, Cause: 0, Begin: 6 * s, Lasted: 4 * s}},
	}
	got := map[string][]sim.Pause{"A": rec.Stations[0].Pauses, "P": rec.Stations[1].Pauses}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// A pause that began before the window is none of it; one that the end of the window cuts is as long as it was.
func TestPausesAtTheEdges(t *testing.T) {
	a := one("A", "", 1)
	a.Stops = []sim.Stop{jamAfter(3, 4)} // 3 to 7, 10 to 14, 17 to 21
	m := compile(t, sim.Line{Stations: []sim.Station{a}})
	rec := m.NewEngine().Run(sim.Options{WarmUp: 5 * s, Measure: 14 * s, Pauses: true})
	want := []sim.Pause{{Begin: 10 * s, Lasted: 4 * s}, {Begin: 17 * s, Lasted: 2 * s}}
	if d := cmp.Diff(want, rec.Stations[0].Pauses); d != "" {
		t.Error(d)
	}
}

// B gives one every 1 s into ten places before C, which jams for 300 s from 100 on: B is blocked when they are full and its
// next is done, from 110 to 400 s, and that goes back to the jam. What lasts a cycle or less is none: C, at 1.5 s, lets B wait
// 0.5 s for each piece once the places are full again.
func TestAPauseOfAStationThatIsBlocked(t *testing.T) {
	b, c := one("B", "", 1), one("C", "store", 1)
	c.Stops = []sim.Stop{jamAt(100, 300)}
	run := func() []sim.Pause {
		rec := compile(t, storeLine(b, c, sim.Buffer{Holds: 10})).NewEngine().Run(sim.Options{Measure: 450 * s, Pauses: true})
		return rec.Stations[0].Pauses
	}
	// The piece of 100 goes in as C takes none; ten are in at 109, the eleventh is done at 110 and goes when C, which has a
	// cycle from 100 on before it or begins one at 400, takes the first.
	got := run()
	if len(got) != 1 || got[0].Station != 1 || got[0].Cause != 0 || got[0].Begin < 109*s || got[0].Begin > 112*s || got[0].Begin+got[0].Lasted < 400*s || got[0].Begin+got[0].Lasted > 401*s {
		t.Errorf("got %+v", got)
	}
	c.Stops, c.Cycle = nil, sec(1.5)
	if got := run(); len(got) != 0 {
		t.Errorf("waits of half a second are pauses: %+v", got)
	}
}

// A heat-up of 45 min is a pause.
func TestAHeatUpIsAPause(t *testing.T) {
	a := one("A", "", 1)
	a.HeatUp = 45 * sim.Minute
	rec := compile(t, sim.Line{Stations: []sim.Station{a}}).NewEngine().Run(sim.Options{Measure: sim.Hour, Pauses: true})
	if got := rec.Stations[0].Pauses; len(got) != 1 || got[0].Begin != 0 || got[0].Lasted != 45*sim.Minute {
		t.Errorf("got %+v", got)
	}
}

// The pauses of a refill are as long as its law says. A cartoner whose refill is log-normal with mean 1.5 min and
// CV 0.8, and a web that gives 240 a minute meanwhile: exp(μ + z σ) × 240 with σ² = ln(1 + 0.8²) and μ = ln 1.5 − σ²/2 is
// 692 at P90, 894 at P95 and 1,443 at P99 (own calculation).
func TestPausesOfARefill(t *testing.T) {
	cartoner := one("cartoner", "", 0.5)
	cartoner.Materials = []sim.Material{{
		Name: "blanks", Amount: 500, PerCycle: 1, Refill: 500,
		Lasts: must(t)(sim.Lognormal(float64(90*s), 0.8)),
	}}
	m := compile(t, sim.Line{Stations: []sim.Station{cartoner}})
	rec := m.NewEngine().Run(sim.Options{Seed: 1, Measure: 1000 * sim.Hour, Pauses: true})
	var pieces []float64
	for _, p := range rec.Stations[0].Pauses {
		pieces = append(pieces, float64(p.Lasted)/float64(sim.Minute)*240)
	}
	slices.Sort(pieces)
	n := float64(len(pieces))
	if n < 5000 {
		t.Fatalf("%g pauses are too few", n)
	}
	for _, c := range []struct{ p, z, places float64 }{{0.90, 1.281552, 692}, {0.95, 1.644854, 894}, {0.99, 2.326348, 1443}} {
		sigma := math.Sqrt(math.Log(1 + 0.8*0.8))
		exact := math.Exp(math.Log(1.5)-sigma*sigma/2+c.z*sigma) * 240
		if math.Abs(exact-c.places) > 1 {
			t.Errorf("P%g is %g by the formula, not %g", 100*c.p, exact, c.places)
		}
		// The number of pauses below the quantile is binomial; 2.576 standard deviations are 99 %.
		half := 2.576 * math.Sqrt(n*c.p*(1-c.p))
		low, high := pieces[int(math.Floor(n*c.p-half))-1], pieces[int(math.Ceil(n*c.p+half))]
		if exact < low || exact > high {
			t.Errorf("P%g of %g pauses is between %g and %g with 99 %%, not %g", 100*c.p, n, low, high, exact)
		}
	}
}
