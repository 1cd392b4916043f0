package sim_test

import (
	"testing"

	"tuckline/sim"
)

// withBuffer is two stations with a buffer between them.
func withBuffer(a, b sim.Station, buffer sim.Buffer) sim.Line {
	b.From, buffer.From = buffer.Name, []string{a.Name}
	return sim.Line{Stations: []sim.Station{a, b}, Buffers: []sim.Buffer{buffer}}
}

func TestBlockingAfterTheCycle(t *testing.T) {
	course{
		line:    withBuffer(one("A", "", 1), one("B", "", 3), sim.Buffer{Name: "buffer", Holds: 1}),
		measure: 8 * s,
		want: `
			0 A running, B starved
			1 B running          # takes the first piece, until 4
			2 buffer 1
			3 A blocked          # the third piece finds no place
			4 A running          # B takes one, A's piece takes its place
			5 A blocked
			7 A running
		`,
		counts: `
			A: cycles 4, taken 5, passed 4, holding 3 s, blocked 3 s, running 5 s, restarts 1 # ends at 1, 2, 3, 5; only 5-7 is longer than its cycle
			B: cycles 2, taken 3
			buffer: in 4, out 3, max 1, full 6 s, empty 2 s, level time 6 s # one piece from 2 on
		`,
	}.follow(t)
}

func TestBlockingBeforeTheCycle(t *testing.T) {
	a := one("A", "", 1)
	a.BlocksBefore = true
	course{
		line:    withBuffer(a, one("B", "", 3), sim.Buffer{Name: "buffer", Holds: 1}),
		measure: 8 * s,
		want: `
			0 A running, B starved   # the only place is reserved
			1 B running              # B takes A's piece; the place is free: A reserves it
			2 A blocked, buffer 1    # no room for another cycle; A is empty
			4 A running, buffer 0    # B takes, A reserves and works until 5
			5 A blocked, buffer 1
			7 A running, buffer 0
		`,
		counts: `
			A: cycles 3, taken 4, passed 3, holding 0 s, blocked 4 s, running 4 s, input at last 1
			B: cycles 2, taken 3
			buffer: level time 4 s
		`,
	}.follow(t)
}

// Four pieces at once for a station that takes three: max(4, 3) − 1 = 3 places. Pieces
// pass straight through where after the take the rest fits.
func TestPassingThroughFourForThree(t *testing.T) {
	a, b := one("A", "", 2), one("B", "A", 1)
	a.Gives, b.Takes = 4, 3
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 10 * s,
		want: `
			0 A running, B starved
			2 B running, A to B 1    # 4 − 3
			3 B starved
			4 B running, A to B 2    # 1 + 4 − 3
			5 B starved
			6 B running, A to B 3    # 2 + 4 − 3
			7 A to B 0               # 3 − 3
			8 A to B 1               # B ends at 8 too and lacks pieces
			9 B starved
		`,
		counts: `
			A: cycles 4, given 16, passed 16, holding 0 s
			B: cycles 5, taken 15, running 5 s # 2 to 3, 4 to 5, 6 to 9
			A to B: in 16, out 15, max 3
		`,
	}.follow(t)
}

// The same with a slow taker: at 17 it takes the three that wait; then A's four find three
// places, and B is at work, so that they cannot pass through.
func TestNotPassingThroughAStationAtWork(t *testing.T) {
	a, b := one("A", "", 2), one("B", "A", 5)
	a.Gives, b.Takes = 4, 3
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 23 * s,
		want: `
			0  A running, B starved
			2  B running, A to B 1
			4  A blocked                 # 1 + 4 > 3, and B works until 7
			7  A running, A to B 2       # 1 + 4 − 3
			9  A blocked
			12 A running, A to B 3       # 2 + 4 − 3
			14 A blocked
			17 A to B 0                  # 3 − 3
			22 A running, A to B 1       # 0 + 4 − 3
		`,
		counts: `A: cycles 4, passed 16, holding 14 s; B: cycles 4, taken 15`, // 4 to 7, 9 to 12, 14 to 22; B takes at 2, 7, 12, 17, 22
	}.follow(t)
}

// Below 100 % "stop upstream" reads the level of the buffer, not its room.
func TestStopUpstreamBelowFull(t *testing.T) {
	a := one("A", "", 1)
	a.Gives = 2
	course{
		line:    withBuffer(a, one("B", "", 2), sim.Buffer{Name: "buffer", Holds: 6, StopUpstream: 3}),
		measure: 12 * s,
		want: `
			0  A running, B starved
			1  B running, buffer 1    # 2 − 1
			2  buffer 3               # 1 is less than 3: 1 + 2
			3  buffer 4               # B takes first: 2 is less than 3: 2 + 2
			4  A blocked              # 4, at least 3
			5  buffer 3
			7  A running, buffer 4    # 2 + 2
			8  A blocked
			9  buffer 3
			11 A running, buffer 4
		`,
		counts: `buffer: max 4, full 0 s; A: blocked 6 s`,
	}.follow(t)
}
