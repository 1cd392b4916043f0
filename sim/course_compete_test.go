package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The feeder that waits longest goes first, whatever its name and place in the line.
func TestMergeLongestWaitingFirst(t *testing.T) {
	course{
		line: sim.Line{
			Stations: []sim.Station{one("C", "", 3), one("A", "", 2), one("K", "shared", 4)},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"C", "A"}, Holds: 1}},
		},
		measure: 20 * s,
		want: `
			0  C running, A running, K starved
			2  K running                 # A's piece, until 6
			3  shared 1                  # C's piece
			4  A blocked                 # waits since 4
			6  C blocked, A running      # C waits since 6; K takes, A goes first
			8  A blocked                 # since 8
			10 C running                 # since 6, A since 8
			13 C blocked
			14 A running                 # since 8, C since 13
			16 A blocked
			18 C running                 # since 13, A since 16
		`,
		counts: `K: taken 5; A: passed 3; C: passed 3`, // A's at 2, 6, 14; C's at 3, 10, 18
	}.follow(t)
}

// Those that wait since the same time go by name.
func TestMergeTieByName(t *testing.T) {
	course{
		line: sim.Line{
			Stations: []sim.Station{one("B", "", 1), one("A", "", 1), one("K", "shared", 3)},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"B", "A"}, Holds: 1}},
		},
		measure: 12 * s,
		want: `
			0  B running, A running, K starved
			1  K running, shared 1       # A's piece goes to K, B's takes the place
			2  B blocked, A blocked
			4  A running                 # both wait since 2: A
			5  A blocked
			7  B running                 # since 2, A since 5
			8  B blocked
			10 A running                 # since 5, B since 8
			11 A blocked
		`,
		counts: `A: passed 3, cycles 4; B: passed 2, cycles 3`,
	}.follow(t)
}

// Of two takers the first by name takes: with one piece every 2 s, B never gets any.
func TestTakersByName(t *testing.T) {
	course{
		line: sim.Line{
			Stations: []sim.Station{one("feeder", "", 2), one("B", "shared", 2), one("A", "shared", 2)},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"feeder"}, Holds: 5}},
		},
		measure: 9 * s,
		want: `
			0 feeder running, B starved, A starved
			2 A running # and again at 4, 6, 8
		`,
		counts: `A: taken 4; B: taken 0, starved 9 s`,
	}.follow(t)
	course{
		line: sim.Line{
			Stations: []sim.Station{one("feeder", "", 2), one("B", "shared", 2), one("A", "shared", 3)},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"feeder"}, Holds: 5}},
		},
		measure: 9 * s,
		want: `
			0 feeder running, B starved, A starved
			2 A running                 # until 5
			4 B running                 # A is at work
			5 A starved
			6 B starved, A running      # both could: A
			8 B running
		`,
	}.follow(t)
}

// A takes three, B one: the first by name takes only if its input is there.
func TestTakersOfDifferentNumbers(t *testing.T) {
	a, b := one("A", "shared", 1), one("B", "shared", 5)
	a.Takes = 3
	course{
		line: sim.Line{
			Stations: []sim.Station{one("feeder", "", 1), b, a},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"feeder"}, Holds: 5}},
		},
		measure: 12 * s,
		want: `
			0  feeder running, B starved, A starved
			1  B running                     # A lacks two, until 6
			2  shared 1
			3  shared 2
			4  A running, shared 0           # its three are there
			5  A starved, shared 1
			7  shared 2                      # at 6 B takes one and the feeder puts one, B until 11
			8  A running, shared 0           # 3 − 3
			9  A starved, shared 1
			10 shared 2                      # at 11 B takes one before the feeder puts one: A lacks one
		`,
	}.follow(t)
}
