package sim_test

import (
	"testing"

	"tuckline/sim"
)

// sending is A (1 s), which sends to KX and KY behind hand-overs.
func sending(kx, ky float64, rule sim.SendRule, to ...string) sim.Line {
	a := one("A", "", 1)
	a.Sends = sim.Sends{To: to, Rule: rule}
	return sim.Line{Stations: []sim.Station{a, one("KX", "A", kx), one("KY", "A", ky)}}
}

// In turn waits for the one whose turn it is, although the other is free.
func TestSendInTurnWaits(t *testing.T) {
	course{
		line:    sending(4, 1, sim.InTurn, "KX", "KY"),
		measure: 12 * s,
		want: `
			0  A running, KX starved, KY starved
			1  KX running                # until 5
			2  KY running
			3  A blocked, KY starved     # it is the turn of KX
			5  A running                 # KX takes, until 9
			6  KY running
			7  A blocked, KY starved
			9  A running
			10 KY running
			11 A blocked, KY starved
		`,
		counts: `A: cycles 7, passed 6, blocked 5 s; KX: taken 3; KY: taken 3`, // 1 to 3, 6, 7, 10, 11
	}.trail(t)
}

// The list says whose turn is first, not the name.
func TestSendInTurnByTheList(t *testing.T) {
	course{
		line:    sending(4, 1, sim.InTurn, "KY", "KX"),
		measure: 5500 * sim.Micros(1000),
		want: `
			0 A running, KX starved, KY starved
			1 KY running
			2 KX running, KY starved     # until 6
			3 KY running
			4 A blocked, KY starved
		`,
	}.trail(t)
}

// First with room follows the list.
func TestSendFirstWithRoom(t *testing.T) {
	course{
		line:    sending(4, 1, sim.FirstWithRoom, "KX", "KY"),
		measure: 12 * s,
		want: `
			0  A running, KX starved, KY starved
			1  KX running
			2  KY running        # KX is at work; again at 3 and 4
			5  KY starved        # KX is free: it is the first
			6  KY running
			9  KY starved
			10 KY running
		`,
		counts: `A: passed 11, blocked 0 s; KX: taken 3; KY: taken 8`,
	}.trail(t)
	course{
		line:    sending(4, 1, sim.FirstWithRoom, "KY", "KX"),
		measure: 6500 * sim.Micros(1000),
		want: `
			0 A running, KX starved, KY starved
			1 KY running         # always free when A ends
		`,
		counts: `KX: taken 0; KY: taken 6`,
	}.trail(t)
}

// If none has room, the first place that becomes free decides: KY, though KX is first in the list.
func TestSendChoosesWhenTheFirstBecomesFree(t *testing.T) {
	course{
		line:    sending(6, 4, sim.FirstWithRoom, "KX", "KY"),
		measure: 11 * s,
		want: `
			0  A running, KX starved, KY starved
			1  KX running      # until 7
			2  KY running      # until 6
			3  A blocked
			6  A running       # KY takes, until 10
			8  A blocked       # at 7 A's piece went to KX, until 13
			10 A running
		`,
		counts: `KX: taken 2; KY: taken 3`,
	}.trail(t)
}

// Fewest pieces counts the buffer and the piece on the machine; ties by the list.
func TestSendFewestPieces(t *testing.T) {
	a := one("A", "", 1)
	a.Sends = sim.Sends{To: []string{"X", "Y"}, Rule: sim.FewestPieces}
	course{
		line: sim.Line{
			Stations: []sim.Station{a, one("KX", "X", 10), one("KY", "Y", 3)},
			Buffers:  []sim.Buffer{{Name: "X", From: []string{"A"}, Holds: 5}, {Name: "Y", From: []string{"A"}, Holds: 5}},
		},
		measure: 9 * s,
		want: `
			0 A running, KX starved, KY starved
			1 KX running        # none anywhere: the first of the list; until 11
			2 KY running        # one on KX, none at Y; until 5
			3 X 1               # one on each machine: the first of the list
			4 Y 1               # two at X, one at Y
			6 X 2               # at 5 KY took one: two at X, one at Y: Y. Now two and two
			7 Y 2               # three and two
		`, // at 8 KY takes one: three and two: Y keeps 2
		counts: `KX: taken 1; KY: taken 3; X: in 3; Y: in 5`,
	}.trail(t)
}

// Fewest pieces takes only one with room: X is full with one, Y has three.
func TestSendFewestPiecesWithRoom(t *testing.T) {
	a := one("A", "", 1)
	a.Sends = sim.Sends{To: []string{"X", "Y"}, Rule: sim.FewestPieces}
	course{
		line: sim.Line{
			Stations: []sim.Station{a, one("KX", "X", 20), one("KY", "Y", 20)},
			Buffers:  []sim.Buffer{{Name: "X", From: []string{"A"}, Holds: 1}, {Name: "Y", From: []string{"A"}, Holds: 3}},
		},
		measure: 9 * s,
		want: `
			0 A running, KX starved, KY starved
			1 KX running
			2 KY running
			3 X 1
			4 Y 1           # one and two at Y; X, two, has no more room
			5 Y 2
			6 Y 3
			7 A blocked
		`,
	}.trail(t)
}
