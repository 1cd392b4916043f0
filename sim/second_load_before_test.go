package sim_test

import (
	"slices"
	"testing"

	"tuckline/sim"
)

// loadingBefore lets stations wait for room before the cycle and take their input all the same.
func loadingBefore(stations ...*sim.Station) {
	for _, st := range stations {
		st.BlocksBefore, st.LoadsWhileStopped = true, true
	}
}

// B waits for room before its cycle with its next piece taken, so that a place before it is free.
func TestLoadsWhileItWaitsForRoom(t *testing.T) {
	b := one("B", "to B", 1)
	loadingBefore(&b)
	course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), b, one("C", "to C", 4)},
			Buffers: []sim.Buffer{
				{Name: "to B", From: []string{"A"}, Holds: 1},
				{Name: "to C", From: []string{"B"}, Holds: 1},
			},
		},
		measure: 11500 * sim.Micros(1000),
		want: `
			0  A running, B starved, C starved
			1  B running                          # takes A's piece and reserves the place
			2  C running                          # takes B's piece, until 6; B takes A's second and reserves
			3  B blocked, to C 1                  # takes A's third; there is no room for it
			4  to B 1                             # A's fourth
			5  A blocked                          # the fifth has no place
			6  B running, to C 0                  # C takes it, until 10; B's third has room now
			7  A running, B blocked, to C 1       # B takes the fourth; the fifth enters
			8  A blocked                          # the sixth
			10 B running, to C 0
			11 A running, B blocked, to C 1
		`,
		counts: `A: cycles 6, passed 6; B: taken 5, cycles 4, passed 4, input at last 1, holding 0 s; C: taken 3`, // 1, 2, 3, 7, 11; 2, 3, 7, 11; 2, 6, 10
	}.follow(t)
}

// By hand over A's piece passes straight through to B, which has no room; what B has taken waits for it.
func TestLoadsByHandOverWithoutRoom(t *testing.T) {
	b := one("B", "A", 1)
	loadingBefore(&b)
	course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), b, one("C", "to C", 4)},
			Buffers:  []sim.Buffer{{Name: "to C", From: []string{"B"}, Holds: 1}},
		},
		measure: 7500 * sim.Micros(1000),
		want: `
			0 A running, B starved, C starved
			1 B running
			2 C running                       # until 6; B takes A's second
			3 B blocked, to C 1               # takes A's third
			4 A blocked                       # B is not empty
			6 B running, to C 0
			7 A running, B blocked, to C 1    # takes A's fourth
		`,
		counts: `B: taken 4, cycles 3, passed 3, input at last 1`, // 1, 2, 3, 7; 2, 3, 7
	}.follow(t)
}

// As TestStoppedStationDoesNotWaitForRoom, but both have their pieces in them: the place that is free
// while B is down is A's, and B waits anew when its stop is over.
func TestLoadedStationUnderAStopDoesNotWaitForRoom(t *testing.T) {
	a, b := one("A", "", 1), one("B", "", 1)
	loadingBefore(&a, &b)
	b.Stops = []sim.Stop{{Name: "check", Every: sec(15), Clock: sim.CalendarClock, Lasts: sec(10)}}
	course{
		line: sim.Line{
			Stations: []sim.Station{a, b, one("K", "shared", 10)},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"A", "B"}, Holds: 1}},
		},
		measure: 32500 * sim.Micros(1000),
		want: `
			0  A running, B blocked, K starved   # both take a piece; A is first by name and reserves
			1  A blocked, B running, K running   # K until 11; B has waited longer
			2  B blocked, shared 1
			11 A running, shared 0
			12 A blocked, shared 1
			15 B down (check)
			21 A running, shared 0               # K until 31; B is down and waits for nothing
			22 A blocked, shared 1
			25 B blocked                         # waits since 25, A since 22
			31 A running, shared 0
			32 A blocked, shared 1
		`,
		counts: `A: taken 5, cycles 4, input at last 1; B: taken 2, cycles 1, input at last 1`, // at 0, 1, 12, 22, 32; at 0, 2
	}.follow(t)
}

// S deals out in turn, B has taken what it has no room for, and A lacks pieces that S cannot give: the
// three wait for each other.
func TestLoadedStationIsLocked(t *testing.T) {
	s1, b, a := one("S", "", 1), one("B", "to B", 1), one("A", "P", 1)
	s1.Sends = sim.Sends{To: []string{"to B", "Q"}, Rule: sim.InTurn}
	loadingBefore(&b)
	a.Also = []sim.Input{{From: "Q", Takes: 5}}
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{s1, b, a},
			Buffers: []sim.Buffer{
				{Name: "to B", From: []string{"S"}, Holds: 1},
				{Name: "P", From: []string{"B"}, Holds: 1},
				{Name: "Q", From: []string{"S"}, Holds: 5},
			},
		},
		measure: 20 * s,
		want: `
			0 S running, B starved, A starved
			1 B running
			2 B starved, P 1, Q 1
			3 B blocked                   # with a piece in it
			4 Q 2
			5 to B 1
			6 Q 3
			7 S blocked                   # it is the turn of B's place, which is full
		`,
		counts: `run: ended 7 s; B: taken 2, cycles 1, input at last 1`,
		end:    "deadlock",
	}.follow(t)
	if !slices.Equal(rec.Locked, []string{"A", "B", "S"}) {
		t.Errorf("%q are locked, not A, B and S", rec.Locked)
	}
}
