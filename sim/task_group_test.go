package sim_test

import (
	"testing"

	"tuckline/sim"
)

// late is a magazine that is always refilled a second too late: alarm after 2 of 5, refill of 5 in 4 s.
func late() sim.Material {
	m := magazine("blanks", 8, 3, 5, 4)
	m.Amount, m.Crew = 8, sim.Work{}
	return m
}

// On one drive a member that waits for its refill stops the others; each has its own materials.
func TestLateRefillOnADrive(t *testing.T) {
	a, b := one("A", "", 1), one("B", "A", 1)
	a.Coupled, b.Coupled = "drive", "drive"
	a.Materials, b.Materials = []sim.Material{webOn(2)}, []sim.Material{late()}
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 20 * s,
		want: `
			0  A running, B running
			8  A down (B blanks), B down (blanks)     # 3 left at 5, refill 5 to 9
			9  A running, B running                   # 5 left, 3 at 11, refill 11 to 15
			14 A down (B blanks), B down (blanks)
			15 A running, B running
		`,
		// Every 6 s from there: asked at 17, used up at 20. The web is used up by the tenth cycle, at 11, spliced 11 to 15:
		// three cycles draw on the store. From 15 to 19 each of four fills it by 100 until it has 500.
		counts: `
			A: cycles 17, web tasks 1, web late 0, web count 0, web used 1700, web at last 800
			B: cycles 17, blanks tasks 3, blanks late 2, blanks lateness 2 s, blanks count 2, blanks down 2 s, blanks used 17, blanks added 10
		`,
	}.follow(t)
}

// Stations that stop together stand with the one that waits for its refill.
func TestLateRefillStopsItsGroup(t *testing.T) {
	a, b := one("A", "", 1), one("B", "", 1)
	b.StopsWith = "A"
	a.Materials = []sim.Material{late()}
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 14 * s,
		want: `
			0 A running, B running
			8 A down (blanks), B down (A blanks)
			9 A running, B running
		`,
		counts: `A: cycles 12, blanks late 1, blanks lateness 1 s; B: cycles 12`,
	}.follow(t)
}

// When the input is used up the run ends there; the refill that is still under way keeps its people.
func TestRefillAfterTheEndOfTheInput(t *testing.T) {
	a := one("A", "", 1)
	a.Supply = 3
	a.Materials = []sim.Material{magazine("blanks", 10, 7, 3, 4)}
	rec := course{
		line:    fitters(1, a),
		measure: 20 * s,
		want: `
			0 A running
			3 A starved # asked at 3, until 7
		`,
		counts: `A: blanks tasks 1, blanks added 3, blanks at last 10; fitters: busy 4 s`,
		end:    "input used up",
	}.follow(t)
	if rec.EndedAt != 3*s {
		t.Errorf("ended at %d, not with the last cycle", rec.EndedAt)
	}
}

// A splice that is still under way when nothing else moves any more can let its station go once more: the
// scrap that follows it needs no room. Only then has the run ended.
func TestEndWaitsForTheScrapOfASplice(t *testing.T) {
	a, b, k := one("A", "", 1), one("B", "", 1), one("K", "A", 1)
	a.BlocksBefore, b.Supply = true, 2
	m := webOn(2)
	m.Amount, m.Refill, m.Lasts, m.SpliceScrap = 300, 300, sec(10), 1
	a.Materials = []sim.Material{m}
	k.Also = []sim.Input{{From: "B", Takes: 1}}
	rec := course{
		line:    sim.Line{Stations: []sim.Station{a, b, k}},
		measure: 20 * s,
		want: `
			0  A running, B running, K starved
			1  K running
			2  B starved                      # its supply is used up
			3  A blocked, K starved, A to K 1 # K lacks a partner; splice 3 to 13
			13 A running
			14 A blocked
		`,
		end: "input used up",
	}.follow(t)
	if rec.EndedAt != 14*s {
		t.Errorf("ended at %d", rec.EndedAt)
	}
}
