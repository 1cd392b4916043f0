package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A and C take from one buffer; A waits for room before its cycle. From 16 on A has
// its input there and is blocked; at 18 C takes that input. Then input and room both
// lack, and A is starved.
func TestBlockedBeforeCycleTurnsStarved(t *testing.T) {
	a := one("A", "shared", 1)
	a.BlocksBefore = true
	course{
		line: sim.Line{
			Stations: []sim.Station{one("feeder", "", 4), a, one("C", "shared", 6), one("slow", "after A", 20)},
			Buffers: []sim.Buffer{
				{Name: "shared", From: []string{"feeder"}, Holds: 1},
				{Name: "after A", From: []string{"A"}, Holds: 1},
			},
		},
		measure: 23 * s,
		want: `
			0  feeder running, A starved, C starved, slow starved
			4  A running                    # first by name of two that could take
			5  A starved, slow running      # until 25
			8  A running
			9  A starved, after A 1         # slow is at work: no room after A from now on
			12 C running                    # A has no room; C takes, until 18
			16 A blocked, shared 1          # its input is there, room lacks
			18 A starved, shared 0          # C takes it, until 24
			20 A blocked, shared 1
		`,
	}.follow(t)
}

// A and B wait for room before their cycle, B longer. From 15 to 25 B is under a stop
// of the calendar: it waits for no room, so that the place that is free at 21 is A's.
func TestStoppedStationDoesNotWaitForRoom(t *testing.T) {
	a, b := one("A", "", 1), one("B", "", 1)
	a.BlocksBefore, b.BlocksBefore = true, true
	b.Stops = []sim.Stop{{Name: "check", Every: sec(15), Clock: sim.CalendarClock, Lasts: sec(10)}}
	course{
		line: sim.Line{
			Stations: []sim.Station{a, b, one("K", "shared", 10)},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"A", "B"}, Holds: 1}},
		},
		measure: 23 * s,
		want: `
			0  A running, B blocked, K starved   # A is first by name and reserves the only place
			1  A blocked, B running, K running   # K takes A's piece, until 11; B has waited longer
			2  B blocked, shared 1               # A waits since 1, B since 2
			11 A running, shared 0               # K takes; A has waited longer
			12 A blocked, shared 1               # B waits since 2, A since 12
			15 B down (check)
			21 A running, shared 0               # K takes; B is down and waits for nothing
			22 A blocked, shared 1
		`,
	}.follow(t)
}

// A reserves two places for every cycle and rejects all that it gives: they count against the
// capacity, not in the level, and are released at the end of the cycle.
func TestReservedPlacesAreReleased(t *testing.T) {
	a := one("A", "", 2)
	a.Gives, a.BlocksBefore, a.RejectShare = 2, true, 1
	course{
		line: sim.Line{
			Stations: []sim.Station{a, one("C", "", 1), one("K", "shared", 3)},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"A", "C"}, Holds: 2}},
		},
		measure: 11 * s,
		want: `
			0  A running, C running, K starved   # A has reserved both places
			1  K running                         # C's piece passes straight through, until 4
			2  C blocked                         # A reserves anew: since 2 as C, first by name
			4  C running                         # C since 2, A since 4: C's piece passes through; then A reserves
			5  C blocked
			6  A blocked, C running, shared 1    # released: C's piece enters; one place is too few for A
			7  A running, C blocked, shared 0    # K takes; A since 6, C since 7
			9  A blocked, C running, shared 1
			10 A running, C blocked, shared 0
		`,
		counts: `A: cycles 4, given 8, rejected 8, passed 0; C: passed 4; K: taken 4; shared: max 1`, // 1, 4, 6, 9; 1, 4, 7, 10
	}.follow(t)
}
