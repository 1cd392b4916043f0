package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The restart level of 0 is armed only after a blocking of more than no time: at 5 and at
// 11 A and B end together, B takes first, and A's piece finds a place at once.
func TestRestartLevelArmedByBlocking(t *testing.T) {
	buffer := sim.Buffer{Name: "buffer", Holds: 2, Restart: sim.Level{On: true, Level: 0}}
	course{
		line:    withBuffer(one("A", "", 1), one("B", "", 2), buffer),
		measure: 17 * s,
		want: `
			0  A running, B starved
			1  B running          # until 3, 5, 7 …
			2  buffer 1
			4  buffer 2           # at 3: 1 − 1 + 1
			6  A blocked          # at 5: 2 − 1 + 1, not armed
			7  buffer 1           # room, but 1 is more than 0
			9  A running          # 0, released: 0 + 1
			10 buffer 2
			12 A blocked          # at 11: 2 − 1 + 1, not armed any more
			13 buffer 1
			15 A running
			16 buffer 2
		`,
		counts: `A: cycles 10, blocked 6 s, holding 6 s, blocked spells 2; buffer: max 2`, // ends at 1 … 6, 10, 11, 12, 16
	}.follow(t)
}

// The restart level of 0 is reached all the time while A waits for the places that D has reserved: it holds A no longer
// when D gives them up. A goes at 3, as without a restart level, and before D's next turn: D was starved until then.
func TestRestartLevelReachedWhilePlacesAreReserved(t *testing.T) {
	for _, restart := range []bool{false, true} {
		a, d, b, w := one("A", "", 0.6), one("D", "W", 2), one("B", "buffer", 0.1), one("W", "", 1)
		a.Gives, d.Gives, d.BlocksBefore, d.RejectShare = 2, 3, true, 1
		course{
			line: sim.Line{
				Stations: []sim.Station{w, a, d, b},
				Buffers: []sim.Buffer{{
					Name: "buffer", From: []string{"A", "D"}, Holds: 3, Turns: sim.Turns{Alternate: true},
					Restart: sim.Level{On: restart, Level: 0},
				}},
			},
			measure: 5 * s,
			want: `
				0   W running, A running, D starved, B starved
				0.6 B running, buffer 1            # of 2 one passes straight through
				0.7 buffer 0
				0.8 B starved
				1   D running                      # until 3, with all 3 places reserved
				1.2 A blocked                      # by D; the level is 0
				2   W blocked
				3   A running, D starved, B running, buffer 1  # all rejected; 2 come in, and D lacks a place
				3.1 W running, D running, buffer 0 # until 5.1
				3.2 B starved
				3.6 A blocked
				4.1 W blocked
			`,
			counts: "A: cycles 3, passed 4; D: cycles 1, rejected 3; buffer: in 4, out 4, max 1",
		}.follow(t)
	}
}

// The restart level counts the belt before the store too: A starts again when
// belt and store hold 1 together.
func TestRestartLevelCountsTheBelt(t *testing.T) {
	course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "store", 10)},
			Buffers: []sim.Buffer{
				{Name: "belt", From: []string{"A"}, Holds: 3, Transit: 2 * s, Conveyor: true},
				{Name: "store", From: []string{"belt"}, Holds: 2, Restart: sim.Level{On: true, Level: 1}},
			},
		},
		measure: 48 * s,
		want: `
			0  A running, B starved
			1  belt 1
			2  belt 2
			3  B running                  # the first arrives, until 13; another enters
			4  store 1                    # one arrives, one enters
			5  store 2
			6  belt 3                     # one has arrived, the store is full; one enters
			7  A blocked                  # 5 pieces
			13 belt 2                     # B takes one of the store, the belt passes one on: 4
			23 belt 1                     # 3
			33 belt 0                     # 2
			43 A running, belt 1, store 1 # 1, released; A's piece enters the belt
			44 belt 2
			45 store 2                    # one arrives, one enters
			46 belt 3
			47 A blocked
		`,
		counts: `
			A: passed 10, cycles 11
			belt: in 10, out 7, transit time 20 s     # entered at 1 … 6, 43 … 46, 2 s each
			store: in 7, out 5, transit time 0`, // out at 3, 13, 23, 33, 43
	}.follow(t)
}

// A belt of two places and 3.5 s: a place that is freed at its end can be used at once at
// its entrance.
func TestBeltTransitAndBlocking(t *testing.T) {
	belt := sim.Buffer{Name: "belt", Holds: 2, Transit: 3_500_000, Conveyor: true}
	course{
		line:    withBuffer(one("A", "", 1), one("B", "", 1), belt),
		measure: 11 * s,
		want: `
			0   A running, B starved
			1   belt 1                   # arrives at 4.5
			2   belt 2                   # arrives at 5.5
			3   A blocked
			4.5 A running, B running     # one leaves, one enters: arrives at 8
			6.5 A blocked, B starved     # at 5.5 one left, one entered: arrives at 9
			8   A running, B running
			10  A blocked, B starved
		`,
		counts: `
			belt: in 6, out 4, max 2, full 9 s, empty 11 s, level time 19 s
			belt: transit time 19 s  # 4 × 3.5, 3 and 2 up to the edge
			A: holding 4 s; B: cycles 4`, // 3 to 4.5, 6.5 to 8, 10 to 11; ends at 5.5, 6.5, 9, 10
	}.follow(t)
}
