package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A jam of the store itself starves what is behind it and blocks what is before it.
func TestWaitsForAStore(t *testing.T) {
	store := sim.Buffer{Name: "store", Holds: 5, Stops: []sim.Stop{jamAt(4.5, 3)}}
	course{
		line:    withBuffer(one("A", "", 1), one("B", "", 1), store),
		measure: 9 * s,
		want: `
			0   A running, B starved
			1   B running
			5   A blocked, B starved
			7.5 A running, B running
		`,
	}.attributed(t, map[string]string{
		"A": `blocked 2.5 s in 1 because of store: its stop`,
		"B": `
			starved 1 s in 1 because of A: slower
			starved 2.5 s in 1 because of store: its stop`,
	})
}

// The store beside the line takes in at most one every 1.5 s; A gives one every 1 s. Only while B is down do pieces come to it
// at all, so that all that A is blocked for goes back to the jam of B: one piece waits on the way past since 3, the next goes
// in at 4, that of 5 waits for the gate until 5.5, that of 6.5 until 7.
func TestTheGateOfAStoreBesideTheLineBindsBecauseOfTheJamBehind(t *testing.T) {
	b := one("B", "store", 0.4)
	b.Stops = []sim.Stop{jamAt(2.5, 5)}
	course{
		line:    storeLine(one("A", "", 1), b, sim.Buffer{Kind: sim.BesideLine, Holds: 10, In: 3 * s / 2}),
		measure: 8 * s,
		want: `
			0   A running, B starved
			1   B running
			1.4 B starved
			2   B running
			2.4 B starved
			2.5 B down (jam)
			3   store 1
			4   store 2
			5   A blocked
			5.5 A running, store 3
			6.5 A blocked
			7   A running, store 4
			7.5 B running, store 3
			7.9 store 2
		`,
	}.attributed(t, map[string]string{
		"A": `blocked 1 s in 2 because of B: jam`,
		"B": `starved 1.7 s in 3 because of A: slower`,
	})
}

// Two stations give two every 2 s each, C takes two every 1 s, all without a reserve. One of them stands for 60 s after every
// 10 min of work, from 600 s on every 660 s, and C then waits 1 s before each cycle. From 1 h to 11 h that is 55 stops (5 … 59
// times 660 s plus 600 s), and not the 1,650 waits that they begin.
func TestAllWaitsOfAStopAreOneStop(t *testing.T) {
	m1, m2, c := one("m1", "", 2), one("m2", "", 2), one("C", "store", 1)
	m1.Gives, m2.Gives, c.Takes = 2, 2, 2
	m1.Stops = []sim.Stop{{Name: "a", Every: sim.Fixed(300), Lasts: sec(60)}}
	line := sim.Line{
		Stations: []sim.Station{m1, m2, c},
		Buffers:  []sim.Buffer{{Name: "store", From: []string{"m1", "m2"}, Holds: 60}},
	}
	rec := compile(t, line).NewEngine().Run(sim.Options{WarmUp: sim.Hour, Measure: 10 * sim.Hour, Attribute: true})
	var stops, waits int64
	for _, b := range rec.Stations[2].Because {
		if b.Station == 0 && b.Cause == 0 {
			stops, waits = b.Stops, b.StarvedSpells
		}
	}
	if stops != 55 || waits < 1000 {
		t.Errorf("%d stops with %d waits; by hand 55 with many", stops, waits)
	}
}
