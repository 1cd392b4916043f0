package sim_test

import (
	"testing"

	"tuckline/sim"
)

// prepared is a reel of 3 cycles that is changed in 1 s; the fitters get the next one ready in 2 s.
func prepared() sim.Material {
	m := reel("reel", 300, 1)
	m.Prepare = sim.Prepare{On: true, Lasts: sec(2), Crew: sim.Work{Crew: "fitters"}}
	return m
}

// A reel is used up before the next one is ready: the change waits for the preparation, which
// waits for the fitter.
func TestChangeWaitsForThePreparation(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{prepared()}
	course{
		line:    fitters(1, a, needing("B", 3, 5, 1, 5)),
		measure: 19 * s,
		want: `
			0  A running, B running
			3  A down (reel), B down (jam)            # the first reel is ready
			4  A running                              # asks for the preparation
			7  A waiting for crew (reel)              # the fitter is at B until 8
			8  A down (reel), B running               # preparation until 10, change until 11
			11 A running, B waiting for crew (jam)    # both ask at 11: A by name, until 13
			13 B down (jam)
			14 A down (reel)                          # ready since 13
			15 A running
			18 A down (reel), B running               # the fitter comes at 18
		`,
		counts: `
			A: reel count 4, reel waiting 1 s, reel down 6 s, reel tasks 3, reel late 1, reel lateness 3 s
			A: cycles 12, reel added 900, reel used 1200, reel at last 0
			fitters: requests 5, waited 3, wait time 9 s, busy 15 s  # 4 + 2 + 3; 5 + 2 + 2 + 5 + 1
		`,
	}.follow(t)
}

// The change has a crew of its own, which it asks for when the preparation is done.
func TestChangeAsksForItsCrewAfterThePreparation(t *testing.T) {
	a := one("A", "", 1)
	m := prepared()
	m.Prepare.Lasts, m.Crew = sec(4), sim.Work{Crew: "fitters"}
	a.Materials = []sim.Material{m}
	course{
		line:    fitters(1, a, needing("B", 6, 2, 1, 1)),
		measure: 14 * s,
		want: `
			0  A running, B running
			3  A down (reel)
			4  A running                                             # preparation until 8
			6  B waiting for crew (jam)
			7  A down (reel)                                         # used up: worked on
			8  A waiting for crew (reel), B down (jam)               # change and jam: the jam by priority
			10 A down (reel), B running
			11 A running                                             # preparation until 15
		`,
		counts: `A: reel count 2, reel waiting 2 s, reel down 3 s, reel late 1, reel lateness 1 s; fitters: requests 5, waited 2, wait time 4 s`,
	}.follow(t)
}

// Behind a web store the splice waits for the preparation while the machine draws on the store.
func TestSpliceWaitsForThePreparation(t *testing.T) {
	a := one("A", "", 1)
	m := webOn(2)
	m.Amount, m.Refill, m.Lasts = 400, 400, sec(2)
	m.Prepare = sim.Prepare{On: true, Lasts: sec(5)}
	a.Materials = []sim.Material{m}
	course{
		line:    sim.Line{Stations: []sim.Station{a}},
		measure: 24 * s,
		want: `
			0  A running    # splice 4 to 6: store 300; two cycles of 200: reel 0, store 500 at 8; preparation 6 to 11
			17 A down (web) # splice 11 to 13, store 0 at 13; 200 at 15; preparation 13 to 18, store 0 at 17
			20 A running    # splice 18 to 20
		`,
		counts: `A: web count 1, web down 3 s, web tasks 6, web late 2, web lateness 3 s, cycles 20`, // splices at 4, 11, 18
	}.follow(t)
}
