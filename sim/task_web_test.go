package sim_test

import (
	"math"
	"testing"

	"tuckline/sim"
)

// webOn is a reel of 10 cycles with a web store of 5; each cycle uses 100. A splice of 4 s without crew.
func webOn(refill float64) sim.Material {
	return sim.Material{
		Name: "web", Web: true, Amount: 1000, PerCycle: 100, Refill: 1000, Lasts: sec(4),
		Store: sim.WebStore{On: true, Length: 500, Refill: refill},
	}
}

// The store serves two splices and is empty 1 s before the third is done: stop = splice − content/web
// speed. While it fills the reel gives 150 a cycle.
func TestWebStoreLongEnoughAndTooShort(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{webOn(1.5)}
	course{
		line:    sim.Line{Stations: []sim.Station{a}},
		measure: 40 * s,
		want: `
			0  A running    # splice 10 to 14: store 500 − 400; six cycles of 150 and one of 100: 400 at 21
			35 A down (web) # splice 21 to 25: store 0, then 300 at 32; splice 32 to 36: three cycles
			36 A running
		`,
		counts: `
			A: cycles 38, web tasks 3, web late 1, web lateness 1 s, web count 1, web down 1 s, web waiting 0
			A: web at first 1500, web added 3000, web used 3800, web at last 700
		`,
	}.follow(t)
}

// A store that lasts for 5 s while the fitter comes 6 s late: waiting, then down.
func TestSpliceWaitsForItsCrew(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{webOn(1.5)}
	a.Materials[0].Crew = sim.Work{Crew: "fitters"}
	course{
		line:    fitters(1, a, needing("B", 8, 8, 1, 5)),
		measure: 25 * s,
		want: `
			0  A running, B running
			8  B down (jam)                     # until 16
			15 A waiting for crew (web)         # asked at 10, the store is empty at 15
			16 A down (web), B running          # the splice, until 20
			20 A running
			24 B down (jam)
		`,
		counts: `A: web tasks 1, web late 1, web lateness 5 s, web waiting 1 s, web down 4 s; fitters: wait time 6 s, busy 13 s`,
	}.follow(t)
}

// A splice with scrap, done amid a cycle: that cycle is the first of two that are lost.
func TestSpliceScrapAmidACycle(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{webOn(1.5)}
	a.Materials[0].Lasts, a.Materials[0].SpliceScrap = sec(3.5), 2
	course{
		line:    sim.Line{Stations: []sim.Station{a}},
		measure: 19 * s,
		want:    `0 A running`, // the splice is over at 13.5: the cycles that end at 14 and 15
		counts:  `A: cycles 18, scrapped cycles 2, passed 16, web used 1800, web wasted 200`,
	}.follow(t)
}

// A change at standstill with scrap: the next two cycles; a new change takes the larger of what is
// left and the new number.
func TestSpliceScrapAfterAChange(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{reel("long", 300, 2), reel("short", 200, 1)}
	a.Materials[0].SpliceScrap, a.Materials[1].SpliceScrap = 2, 1
	course{
		line:    sim.Line{Stations: []sim.Station{a}},
		measure: 13 * s,
		want: `
			0 A running
			2 A down (short)
			3 A running       # the cycle until 4 is scrap; long is used up
			4 A down (long)
			6 A running       # the one until 7 is scrap, one more is left
			7 A down (short)
			8 A running       # 8 to 9 scrap by either, 9 to 10 good
			10 A down (long)  # both are used up, by name
			12 A down (short)
		`,
		counts: `A: cycles 6, scrapped cycles 3, passed 3, long wasted 300, short wasted 300`,
	}.follow(t)
}

// Failed splices: each is done again, so that the time is that of all tries. With a share p a change
// fails p/(1 − p) times on average, with variance p/(1 − p)² (geometric law, by hand).
func TestSpliceFails(t *testing.T) {
	const p = 0.3
	a := one("A", "", 1)
	a.Materials = []sim.Material{reel("reel", 500, 2)}
	a.Materials[0].SpliceFails = p
	rec := compile(t, sim.Line{Stations: []sim.Station{a}}).NewEngine().Run(sim.Options{Seed: 4, Measure: 40 * sim.Hour})
	m, stop := &rec.Stations[0].Materials[0], &rec.Stations[0].Stops[0]
	changes := m.Added / 500
	if got := stop.Down; got < 2*s*sim.Micros(changes+m.FailedSplices) || got > 2*s*sim.Micros(changes+m.FailedSplices)+20*s {
		t.Errorf("down for %d with %d changes, %d of them failed", got, changes, m.FailedSplices)
	}
	mean, half := p/(1-p), 4*math.Sqrt(p/(1-p)/(1-p)/float64(changes))
	if got := float64(m.FailedSplices) / float64(changes); math.Abs(got-mean) > half || changes < 10_000 {
		t.Errorf("%d changes failed %.4f times, exact %.4f ± %.4f", changes, got, mean, half)
	}
}

// Splices behind a store fail as often: the same stream, whatever the way of changing.
func TestSpliceFailsBehindAStoreToo(t *testing.T) {
	run := func(store bool) *sim.MaterialRecord {
		a := one("A", "", 1)
		a.Materials = []sim.Material{webOn(2)}
		a.Materials[0].Store.On, a.Materials[0].SpliceFails = store, 0.5
		return &compile(t, sim.Line{Stations: []sim.Station{a}}).NewEngine().Run(sim.Options{Seed: 4, Measure: 20 * sim.Minute}).Stations[0].Materials[0]
	}
	hand, store := run(false), run(true)
	if hand.FailedSplices < 30 || store.FailedSplices < 30 {
		t.Fatalf("only %d and %d failed", hand.FailedSplices, store.FailedSplices)
	}
	ratio := func(m *sim.MaterialRecord) float64 { return float64(m.FailedSplices) * 1000 / float64(m.Added) }
	if math.Abs(ratio(hand)-ratio(store)) > 0.15 { // the same draws, cut at another change
		t.Errorf("%.2f and %.2f failures a change", ratio(hand), ratio(store))
	}
}

// A splice that ends while the station waits for room before its cycle lets it go: a cycle that is scrap
// needs none.
func TestSpliceScrapNeedsNoRoom(t *testing.T) {
	a := one("A", "", 1)
	a.BlocksBefore = true
	m := webOn(2)
	m.Amount, m.Refill, m.Lasts, m.SpliceScrap = 200, 200, sec(4), 1
	a.Materials = []sim.Material{m}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 100)}},
		measure: 9 * s,
		want: `
			0 A running, B starved
			1 B running              # until 101
			2 A blocked, A to B 1    # the reel is used up: splice 2 to 6; no room for a third piece
			6 A running              # scrap
			7 A blocked
		`,
		counts: `A: cycles 3, scrapped cycles 1, passed 2, web tasks 1, web late 0`,
	}.follow(t)
}
