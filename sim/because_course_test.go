package sim_test

import (
	"testing"

	"tuckline/sim"
)

// jamAfter is a stop after so many cycles that lasts so many seconds.
func jamAfter(after, lasts float64) sim.Stop {
	return sim.Stop{Name: "jam", Every: sim.Fixed(after), Lasts: sec(lasts)}
}

// jamAt is a stop of the calendar that begins after so many seconds.
func jamAt(begins, lasts float64) sim.Stop {
	return sim.Stop{Name: "jam", Clock: sim.CalendarClock, Every: sec(begins), Lasts: sec(lasts)}
}

// Two stations and a buffer. The jam of A is over when B still waits for the piece of the cycle after it;
// that of B is just over when A finds the buffer full.
func TestWaitsOfTwoStations(t *testing.T) {
	a, b := one("A", "", 2), one("B", "", 2)
	a.Stops, b.Stops = []sim.Stop{jamAfter(5, 7)}, []sim.Stop{jamAfter(8, 13)}
	course{
		line:    withBuffer(a, b, sim.Buffer{Name: "buffer", Holds: 2}),
		measure: 42 * s,
		want: `
			0  A running, B starved
			2  B running                  # straight through until 10
			10 A down (jam)               # 5 cycles; strikes when the sixth starts
			12 B starved                  # the fifth piece is done
			17 A running
			19 B running                  # sixth, seventh until 23, eighth until 25
			25 B down (jam)               # 8 cycles; the ninth piece has been taken
			27 A down (jam), buffer 1     # 5 cycles since 17
			34 A running
			36 buffer 2
			38 A blocked, B running       # B goes on with its ninth until 40
			40 A running                  # B takes one, A's enters
		`,
	}.attributed(t, map[string]string{
		"A": `blocked 2 s in 1 because of B: jam`,
		"B": `
			starved 2 s in 1 because of A: slower   # new: nothing has come yet
			starved 7 s in 1 because of A: jam`,
	})
}

// The middle is only blocked: what blocks the first is the jam of the last, both from the same instant on.
func TestWaitsThroughABlockedStation(t *testing.T) {
	a, b, c := one("A", "", 2), one("B", "A", 2), one("C", "B", 2)
	c.Stops = []sim.Stop{jamAfter(3, 5)}
	course{
		line:    sim.Line{Stations: []sim.Station{a, b, c}},
		measure: 20 * s,
		want: `
			0  A running, B starved, C starved
			2  B running
			4  C running                  # until 6, 8, 10
			10 C down (jam)
			12 A blocked, B blocked
			15 C running                  # until 17
			17 A running, B running
		`,
	}.attributed(t, map[string]string{
		"A": `blocked 5 s in 1 because of C: jam`,
		"B": `
			starved 2 s in 1 because of A: slower
			blocked 5 s in 1 because of C: jam`,
		"C": `starved 4 s in 1 because of A: slower`,
	})
}

// The middle is only starved.
func TestWaitsThroughAStarvedStation(t *testing.T) {
	a, b, c := one("A", "", 2), one("B", "A", 2), one("C", "B", 2)
	a.Stops = []sim.Stop{jamAfter(3, 6)}
	course{
		line:    sim.Line{Stations: []sim.Station{a, b, c}},
		measure: 18 * s,
		want: `
			0  A running, B starved, C starved
			2  B running
			4  C running
			6  A down (jam)
			8  B starved
			10 C starved
			12 A running
			14 B running
			16 C running
		`,
	}.attributed(t, map[string]string{
		"B": `
			starved 2 s in 1 because of A: slower
			starved 6 s in 1 because of A: jam`,
		"C": `
			starved 4 s in 1 because of A: slower
			starved 6 s in 1 because of A: jam`,
	})
}

// A belt of 10 s: the gap comes to B when the jam is long over.
func TestWaitsAfterTransit(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{jamAfter(3, 3)}
	course{
		line:    withBuffer(a, one("B", "", 2), sim.Buffer{Name: "belt", Holds: 20, Transit: 10 * s, Conveyor: true}),
		measure: 22 * s,
		want: `
			0  A running, B starved
			2  belt 1                     # arrives at 12
			4  belt 2
			6  A down (jam), belt 3
			9  A running                  # until 11
			11 belt 4                     # arrives at 21
			12 B running, belt 3          # one leaves
			13 belt 4
			14 belt 3
			15 A down (jam), belt 4       # 3 cycles since 9
			16 belt 3
			18 A running, B starved       # the third that came has been worked
			20 belt 4
			21 B running, belt 3
		`,
	}.attributed(t, map[string]string{
		"B": `
			starved 12 s in 1 because of A: slower, overlap 3 s   # 6 to 9: a jam, whose gap has not come yet
			starved 3 s in 1 because of A: jam`, // 18 to 21; that from 6 to 9
	})
}

// Two inputs that jam at the same time: the first by name. While the other is open too the waits overlap.
func TestWaitsForTwoAtOnce(t *testing.T) {
	a, side, c := one("A", "", 2), one("S", "", 2), one("C", "A", 2)
	a.Stops, side.Stops = []sim.Stop{jamAfter(3, 6)}, []sim.Stop{jamAfter(3, 4)}
	c.Also = []sim.Input{{From: "S", Takes: 1}}
	course{
		line:    sim.Line{Stations: []sim.Station{side, c, a}},
		measure: 16 * s,
		want: `
			0  S running, C starved, A running
			2  C running
			6  S down (jam), A down (jam)
			8  C starved
			10 S running
			12 A running, S to C 1        # the place of the hand-over where several inputs come together
			14 C running                  # A's piece straight, one of S out of its place, the next one in
		`,
	}.attributed(t, map[string]string{
		"C": `
			starved 2 s in 1 because of A: slower
			starved 6 s in 1 because of A: jam, overlap 2 s   # that of S from 8 to 10`,
	})
}

// Of two jams the one that began first.
func TestWaitsForTheFirstOfTwo(t *testing.T) {
	a, side, c := one("A", "", 2), one("S", "", 2), one("C", "of A", 2)
	a.Stops, side.Stops = []sim.Stop{jamAfter(3, 6)}, []sim.Stop{jamAfter(2, 5)}
	c.Also = []sim.Input{{From: "of S", Takes: 1}}
	course{
		line: sim.Line{
			Stations: []sim.Station{a, side, c},
			Buffers:  []sim.Buffer{{Name: "of A", From: []string{"A"}, Holds: 5}, {Name: "of S", From: []string{"S"}, Holds: 5}},
		},
		measure: 14 * s,
		want: `
			0  A running, S running, C starved
			2  C running
			4  S down (jam)
			6  A down (jam), C starved, of A 1
			9  S running
			11 C running, of A 0
			12 A running
			13 S down (jam), C starved, of S 1
		`,
	}.attributed(t, map[string]string{
		"C": `
			starved 2 s in 1 because of A: slower
			starved 1 s in 1 because of A: jam, overlap 1 s   # from 13; S is down again
			starved 5 s in 1 because of S: jam, overlap 5 s   # 6 to 11; A is down all the time`,
	})
}

// The waits of every cycle belong to the slower neighbour; one in which a jam begins goes on with that.
func TestWaitsForASlowerNeighbour(t *testing.T) {
	b := one("B", "A", 3)
	b.Stops = []sim.Stop{jamAt(7.5, 4)}
	course{
		line:    sim.Line{Stations: []sim.Station{one("A", "", 2), b}},
		measure: 16 * s,
		want: `
			0    A running, B starved
			2    B running
			4    A blocked
			5    A running
			7    A blocked
			7.5  B down (jam)
			11.5 B running
			12   A running
			14   A blocked
			15   A running
		`,
	}.attributed(t, map[string]string{
		"A": `
			blocked 2.5 s in 2 because of B: slower   # 4 to 5, 7 to 7.5, 14 to 15
			blocked 4.5 s in 1 because of B: jam`,
		"B": `starved 2 s in 1 because of A: slower`,
	})
}

// A restart level holds A after the jam of B that filled the buffer, and after a stop of A amid that too.
func TestWaitsForARestartLevel(t *testing.T) {
	a, b := one("A", "", 1), one("B", "", 1)
	a.Stops, b.Stops = []sim.Stop{jamAt(8.25, 0.5)}, []sim.Stop{jamAfter(3, 3)}
	course{
		line:    withBuffer(a, b, sim.Buffer{Name: "buffer", Holds: 2, Restart: sim.Level{On: true, Level: 0}}),
		measure: 10 * s,
		want: `
			0    A running, B starved
			1    B running
			4    B down (jam)               # its fourth piece taken
			5    buffer 1
			6    buffer 2
			7    A blocked, B running       # until 8
			8    buffer 1
			8.25 A down (jam)
			8.75 A blocked
			9    A running                  # the buffer is empty, then has A's piece
		`,
	}.attributed(t, map[string]string{
		"A": `blocked 1.5 s in 2 because of B: jam`,
		"B": `starved 1 s in 1 because of A: slower`,
	})
}

// Scrap after a jam belongs to the jam.
func TestWaitsForScrapAfterAStop(t *testing.T) {
	a := one("A", "", 2)
	a.Stops, a.AfterStop = []sim.Stop{jamAfter(3, 2)}, []sim.ScrapRule{{Cycles: 2}}
	course{
		line:    withBuffer(a, one("B", "", 2), sim.Buffer{Name: "buffer", Holds: 1, AtStart: 1}),
		measure: 16 * s,
		want: `
			0  A running, B running       # B takes what is there, and at 2, 4, 6 what A gives
			6  A down (jam)
			8  A running, B starved       # until 10 and 12: scrap
			14 A down (jam), B running
		`,
	}.attributed(t, map[string]string{
		"B": `starved 6 s in 1 because of A: jam`,
	})
}

// The end of supply goes down the line.
func TestWaitsForSupply(t *testing.T) {
	a := one("A", "", 2)
	a.Supply = 2
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 3)}},
		measure: 12 * s,
		want: `
			0 A running, B starved
			2 B running
			4 A blocked
			5 A starved
			8 B starved
		`,
		end: "input used up",
	}.attributed(t, map[string]string{
		"A": `
			starved 7 s in 1 because of A: end of supply
			blocked 1 s in 1 because of B: slower`,
		"B": `
			starved 4 s in 1 because of A: end of supply
			starved 2 s in 1 because of A: slower`,
	})
}

// A station that stops with another waits for nothing; what it does not bring belongs to the jam of that one.
func TestWaitsForAJoinedStop(t *testing.T) {
	a, p := one("A", "", 2), one("P", "", 2)
	p.Stops, a.StopsWith = []sim.Stop{jamAfter(3, 4)}, "P"
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 2), p}},
		measure: 12 * s,
		want: `
			0  A running, B starved, P running
			2  B running
			6  P down (jam)
			8  A down (P jam)              # its cycle has ended
			10 A running, B starved, P running
		`,
	}.attributed(t, map[string]string{
		"B": `
			starved 2 s in 1 because of A: slower
			starved 2 s in 1 because of P: jam`,
	})
}
