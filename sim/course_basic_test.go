package sim_test

import (
	"testing"

	"tuckline/sim"
)

// sec is a law of one value in seconds.
func sec(s float64) sim.Law { return sim.Fixed(s * 1e6) }

// one is a station that takes and gives one piece in a fixed cycle of seconds.
func one(name, from string, cycle float64) sim.Station {
	return sim.Station{Name: name, From: from, Takes: 1, Gives: 1, Cycle: sec(cycle)}
}

// s keeps courses short.
const s = sim.Second

// The example of the comment on the plain engine.
func TestCourseOfTheExample(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(3), Lasts: sec(4)}} // after 3 cycles
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 3)}},
		measure: 16 * s,
		want: `
			0  A running, B starved    # B has no input
			2  B running               # straight through; A goes on
			4  A blocked               # B works until 5
			5  A running               # third cycle, until 7
			7  A blocked               # B works until 8
			8  A down (jam)            # 3 cycles done at 7; strikes when the next starts, B has taken
			11 B starved               # B worked from 8 to 11; A is down
			12 A running               # the stop lasts 4 s; the cycle works its 2 s now
			14 B running               # A goes on with its fifth
		`,
		counts: `
			A: cycles 4, taken 5, given 4, passed 4, input at last 1, output at last 0  # ends at 2, 4, 7, 14; at 16 is outside
			A: running 10 s, blocked 2 s, down 4 s, holding 2 s, restarts 1, blocked spells 2, jam count 1, jam down 4 s  # runs 0-4, 5-7, 12-16
			B: cycles 3, taken 4, passed 3, running 11 s, starved 5 s, starved spells 2, restarts 0  # runs 2-11, 14-16; only 7-12 of A is longer than a cycle
			A to B: in 4, out 4, level time 0`,
	}.follow(t)
}
