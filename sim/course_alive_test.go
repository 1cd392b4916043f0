package sim_test

import (
	"testing"

	"tuckline/sim"
)

// B blocks before its cycle. From 3 on it lacks input and room; D's piece could only pass
// straight through once C has made room. D and B wait for C, which works: no deadlock.
func TestNoDeadlockBehindAStationThatLacksRoomToo(t *testing.T) {
	b := one("B", "D", 1)
	b.BlocksBefore = true
	line := sim.Line{
		Stations: []sim.Station{one("D", "", 1), b, one("C", "buffer", 10)},
		Buffers:  []sim.Buffer{{Name: "buffer", From: []string{"B"}, Holds: 1}},
	}
	want := `
		0  D running, B starved, C starved
		1  B running                # the place after B is reserved; D hands over
		2  C running                # until 12; B reserves again and takes D's second piece
		3  D blocked, B starved, buffer 1
		12 D running, B running, buffer 0
		13 D blocked, B starved, buffer 1
	`
	course{line: line, measure: 8 * s, want: cut(want, 4)}.follow(t)
	course{line: line, measure: 14 * s, want: want, counts: `D: holding 10 s; B: blocked 0 s, starved 11 s`}.follow(t)
}

// The supply has come to its end while the last piece is held: nothing is locked, and the
// input is used up once it has left.
func TestLastPieceHeldIsNoDeadlock(t *testing.T) {
	a := one("A", "", 1)
	a.Supply = 2
	belt := sim.Buffer{Name: "belt", Holds: 1, Transit: 3 * s, Conveyor: true}
	course{
		line:    withBuffer(a, one("B", "", 1), belt),
		measure: 20 * s,
		want: `
			0 A running, B starved
			1 belt 1
			2 A blocked               # the belt is full until 4
			4 A starved, B running    # the first arrives, the second enters
			5 B starved
			7 B running, belt 0
			8 B starved
		`,
		counts: `run: ended 8 s`,
		end:    "input used up",
	}.follow(t)
}

// Two buffers in a row pass pieces on by themselves, and straight through where they have
// no place: B lacks a piece from 6 on, and D's piece goes through both.
func TestPiecesPassThroughTwoBuffers(t *testing.T) {
	b := one("B", "second", 5)
	line := sim.Line{
		Stations: []sim.Station{one("D", "", 1), b},
		Buffers: []sim.Buffer{
			{Name: "first", From: []string{"D"}},
			{Name: "second", From: []string{"first"}},
		},
	}
	course{
		line:    line,
		measure: 8 * s,
		want: `
			0 D running, B starved
			1 B running
			2 D blocked
			6 D running      # B takes D's piece
			7 D blocked
		`,
		counts: `B: taken 2; first: in 2, out 2; second: in 2, out 2`,
	}.follow(t)
	line.Stations[1].Takes = 3
	line.Buffers[1].Holds = 2
	course{
		line:    line,
		measure: 14 * s,
		want: `
			0  D running, B starved
			1  second 1
			2  second 2
			3  B running, second 0     # 2 + 1 − 3, until 8
			4  second 1
			5  second 2
			6  D blocked
			8  D running, second 0     # B lacks one: D's passes through both
			9  second 1
			10 second 2
			11 D blocked
			13 D running, second 0
		`,
	}.follow(t)
}
