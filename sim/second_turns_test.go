package sim_test

import (
	"testing"

	"tuckline/sim"
)

// merging is A (1 s) and B (4 s) into one place before K (3 s).
func merging(turns sim.Turns) sim.Line {
	return sim.Line{
		Stations: []sim.Station{one("A", "", 1), one("B", "", 4), one("K", "shared", 3)},
		Buffers:  []sim.Buffer{{Name: "shared", From: []string{"B", "A"}, Holds: 1, Turns: turns}},
	}
}

// Alternate: of those that wait, the one after who put last, although the other waits longer.
func TestTurnsAlternate(t *testing.T) {
	course{
		line:    merging(sim.Turns{Alternate: true}),
		measure: 15 * s,
		want: `
			0  A running, B running, K starved
			1  K running
			2  shared 1
			3  A blocked
			7  A running                 # at 4 A waits since 3, B since 4: A was last, B puts. B does not wait now
			8  A blocked, B blocked
			10 B running                 # both since 8: A was last
			13 A running
			14 A blocked, B blocked
		`,
		counts: `A: passed 4; B: passed 2; K: taken 5`, // 1, 2, 7, 13; 4, 10; 1, 4, 7, 10, 13
	}.trail(t)
}

// The one named first goes before one that waits longer; B never gets a place.
func TestTurnsFirst(t *testing.T) {
	line := merging(sim.Turns{First: "B"})
	line.Stations[0].Name, line.Stations[1].Name = "B", "A" // the fast one is B
	course{
		line:    line,
		measure: 12 * s,
		want: `
			0  B running, A running, K starved
			1  K running
			2  shared 1
			3  B blocked
			4  B running, A blocked
			5  B blocked
			7  B running                 # since 5, A since 4: B is named first
			8  B blocked
			10 B running
			11 B blocked
		`,
		counts: `B: passed 5; A: passed 0`,
	}.trail(t)
}

// Longest waiting, the default, in the same line.
func TestTurnsLongestWaiting(t *testing.T) {
	course{
		line:    merging(sim.Turns{}),
		measure: 12 * s,
		want: `
			0  A running, B running, K starved
			1  K running
			2  shared 1
			3  A blocked
			4  A running, B blocked   # A waits since 3
			5  A blocked
			7  B running              # B since 4, A since 5
			10 A running
			11 A blocked, B blocked
		`,
	}.trail(t)
}

// Of several takers the one of the smaller priority takes first; the usual priority is 5.
func TestTakersByPriority(t *testing.T) {
	for name, priorities := range map[string][2]int{"B before the usual": {0, 4}, "A behind the usual": {6, 0}} {
		t.Run(name, func(t *testing.T) {
			a, b := one("A", "shared", 2), one("B", "shared", 2)
			a.Priority, b.Priority = priorities[0], priorities[1]
			course{
				line: sim.Line{
					Stations: []sim.Station{one("feeder", "", 2), a, b},
					Buffers:  []sim.Buffer{{Name: "shared", From: []string{"feeder"}, Holds: 5}},
				},
				measure: 9 * s,
				want: `
					0 feeder running, A starved, B starved
					2 B running # and again at 4, 6, 8
				`,
				counts: `A: taken 0; B: taken 4`,
			}.trail(t)
		})
	}
}
