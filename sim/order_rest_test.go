package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The two that always stay leave with the last of the order; the next keeps two again.
func TestOrdersLetGoWhatAStoreKeeps(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{one("A", "", 1), one("B", "store", 0.5)},
		Buffers:  []sim.Buffer{{Name: "store", From: []string{"A"}, Holds: 10, Keeps: 2}},
		Orders:   batches("B", 0, "", 4, 3),
	}
	rec := course{
		line:    line,
		measure: 11 * s,
		want: `
			0   A running, B starved
			1   store 1
			2   store 2
			3   B running               # the third
			3.5 B starved
			4   A starved, B running    # until 5.5: one that came, and the two
			4.5 store 1
			5   store 0
			5.5 A running, B starved
			6.5 store 1
			7.5 store 2
			8.5 A starved, B running
			9   store 1
			9.5 store 0
			10  B starved
		`,
		counts: `store: cleared 0; B: passed 7`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 5.5, 4 in, 4 good", "2: 5.5 5.5 10, 3 in, 3 good")

	line.Buffers[0].TakenOut = true // they are taken out at 4.5
	rec = compile(t, line).NewEngine().Run(sim.Options{Measure: 11 * s})
	sameOrders(t, &rec, "1: 0 0 4.5, 4 in, 2 good", "2: 4.5 4.5 8, 3 in, 1 good")
	if cleared := rec.Buffers[0].Cleared; cleared != 4 {
		t.Errorf("%d were taken out, by hand 4", cleared)
	}
}

// Pieces 2, 3 and 5 wait on the way past while B is at work. Pieces 4 and 6 find it taken and go beside the line; B works
// them off when no more come straight.
func TestOrdersEmptyAStoreBesideTheLine(t *testing.T) {
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "store", 2)},
			Buffers:  []sim.Buffer{{Name: "store", From: []string{"A"}, Holds: 5, Kind: sim.BesideLine}},
			Orders:   batches("B", 0, "", 6),
		},
		measure: 14 * s,
		want: `
			0  A running, B starved
			1  B running
			2  store 1
			4  store 2
			6  A starved, store 3
			7  store 2
			9  store 1
			11 store 0
			13 B starved
		`,
		counts: `store: kept 2, given back 2, cleared 0; B: passed 6`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 13, 6 in, 6 good")
}

// The last piece waits for its leaflet: the order is not over while that comes. The leaflet that is under way then is taken out,
// for the next order comes with its own.
func TestOrdersWaitForTheOtherInputs(t *testing.T) {
	c := one("C", "A", 1)
	c.Also = []sim.Input{{From: "rack", Takes: 1}}
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("leaflets", "", 5), c},
			Buffers:  []sim.Buffer{{Name: "rack", From: []string{"leaflets"}, Holds: 2}},
			Orders:   batches("C", 0, "", 2, 2),
		},
		measure: 18 * s,
		want: `
			0  A running, leaflets running, C starved
			1  A to C 1
			2  A blocked                 # the second and last, behind the first
			5  A starved, C running      # the first leaflet
			6  C starved
			10 C running, A to C 0
			11 C starved                 # leaflets are at work until 15
			15 A running                 # the third leaflet is taken out: the line is empty
			16 A to C 1
			17 A blocked
		`,
		counts: `rack: in 3, out 2, cleared 1; leaflets: cycles 3`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 15, 2 in, 2 good", "2: 15 15 never, 2 in, 0 good")
}

// A long stop of B, from 4 on, with a piece in work: the line is not empty before it is over and B has done the rest.
func TestOrdersWaitForAStopWithAPieceInside(t *testing.T) {
	b := one("B", "A", 3)
	b.Stops = []sim.Stop{{Name: "jam", Clock: sim.RunningClock, Every: sec(3.5), Lasts: sec(10)}}
	rec := course{
		line:    sim.Line{Stations: []sim.Station{one("A", "", 0.5), b}, Orders: batches("B", 2, "", 2, 1)},
		measure: 19 * s,
		want: `
			0    A running, B starved
			0.5  B running              # until 3.5, then the second
			1    A blocked
			3.5  A starved
			4    B down (jam)           # 3.5 s of running; until 14
			14   B running              # the other 2.5 s
			16.5 A changeover, B changeover
			18.5 A running, B starved
		`,
		counts: `B: cycles 2, jam count 1`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 16.5, 2 in, 2 good", "2: 16.5 18.5 never, 1 in, 0 good")
}

// A break begins in a changeover: the work goes on, the line is in a planned stop, and the next order begins behind it.
func TestOrdersChangeoverInABreak(t *testing.T) {
	line := sim.Line{Stations: []sim.Station{one("A", "", 1)}, Orders: batches("A", 4, "", 2, 1)}
	line.Calendar = calendar(hours(0, "wbw", 3, 5, 100))
	rec := course{
		line:    line,
		measure: 10 * s,
		want: `
			0 A running
			2 A changeover      # until 6
			3 A planned stop    # the break, until 8
			8 A running
			9 A starved
		`,
		counts: `A: cycles 3, changeover 1 s, planned stop 5 s`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 2, 2 in, 2 good", "2: 2 6 9, 1 in, 1 good")
}
