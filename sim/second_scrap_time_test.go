package sim_test

import (
	"testing"

	"tuckline/sim"
)

// Scrap for 4 s of running after a stop of more than 5 s: every cycle that starts or goes on within
// them. The check of 2 s does not count as one, but stands still within: 17 to 19 and 21 to 23.
func TestScrapForATimeOfRunning(t *testing.T) {
	line := alone(2,
		sim.Stop{Name: "jam", Every: sim.Fixed(5.5), Lasts: sec(6)},
		sim.Stop{Name: "check", Every: sec(19), Clock: sim.CalendarClock, Lasts: sec(2)})
	line.Stations[0].AfterStop = []sim.ScrapRule{{LongerThan: 5 * s, Lasts: 4 * s}}
	course{
		line:    line,
		measure: 27 * s,
		want: `
			0  A running
			11 A down (jam)
			17 A running       # the interrupted cycle goes on until 18: scrap
			19 A down (check)  # in the cycle from 18, scrap
			21 A running       # its end at 22; the next starts at 22, within: scrap until 24
		`, // from 24 good: until 26
		counts: `A: cycles 9, scrapped cycles 3, given 6, passed 6`,
	}.trail(t)
}

// A cycle that starts when the time has just run out is good: 4 s, two cycles of 2 s.
func TestScrapForATimeEndsWithIt(t *testing.T) {
	line := alone(2, sim.Stop{Name: "jam", Every: sim.Fixed(5), Lasts: sec(6)})
	line.Stations[0].AfterStop = []sim.ScrapRule{{Lasts: 4 * s}}
	course{
		line:    line,
		measure: 25 * s,
		want: `
			0  A running
			10 A down (jam)
			16 A running     # until 18 and 20 scrapped; 22 and 24 good
		`,
		counts: `A: cycles 9, scrapped cycles 2, passed 7`,
	}.trail(t)
}

// After a standstill by lack of room the same; time that is blocked is not running, and a
// scrapped cycle is never blocked.
func TestScrapForATimeAfterStandstill(t *testing.T) {
	a := one("A", "", 1)
	a.AfterStandstill = []sim.ScrapRule{{LongerThan: 5 * s, Lasts: 2 * s}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 10)}},
		measure: 25 * s,
		want: `
			0  A running, B starved
			1  B running           # until 11, 21
			2  A blocked
			11 A running           # stood 9 s: until 12 and 13 scrap, until 14 good
			14 A blocked
			21 A running           # stood 7 s
			24 A blocked
		`,
		counts: `A: cycles 8, scrapped cycles 4, passed 3`, // ends at 1, 2, 12, 13, 14, 22, 23, 24
	}.trail(t)
}

// A cycle that is known to be scrapped needs no room, where room is needed before the cycle: A is
// blocked from 2 on; after the check it works its two cycles of scrap.
func TestKnownScrapNeedsNoRoom(t *testing.T) {
	a := one("A", "", 1)
	a.BlocksBefore = true
	a.AfterStop = []sim.ScrapRule{{Cycles: 2}}
	a.Stops = []sim.Stop{{Name: "check", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(2)}}
	course{
		line:    withBuffer(a, one("K", "", 10), sim.Buffer{Name: "buffer", Holds: 1}),
		measure: 8 * s,
		want: `
			0 A running, K starved
			1 K running
			2 A blocked, buffer 1
			3 A down (check)
			5 A running           # two cycles of scrap
			7 A blocked
		`,
		counts: `A: cycles 4, scrapped cycles 2, passed 2; buffer: max 1`,
	}.trail(t)
}

// After stop counts the whole stop, waiting for the crew included: 3 s of waiting and 2 s of work
// are longer than 3 s.
func TestScrapAfterStopCountsTheWaiting(t *testing.T) {
	a, b := needing("A", 2, 2, 1, 5), needing("B", 1, 4, 1, 5)
	a.AfterStop = []sim.ScrapRule{{LongerThan: 3 * s, Cycles: 2}}
	course{
		line:    fitters(1, a, b),
		measure: 9500 * sim.Micros(1000),
		want: `
			0 A running, B running
			1 B down (jam)
			2 A waiting for crew (jam)
			5 A down (jam), B running
			6 B waiting for crew (jam)
			7 A running, B down (jam)      # until 8 and 9 scrapped
			9 A waiting for crew (jam)
		`,
		counts: `A: cycles 4, scrapped cycles 2, given 2`,
	}.trail(t)
}

// Speed steps read the level, what is in transit included: ten pieces when the first arrives.
func TestSpeedStepCountsWhatIsInTransit(t *testing.T) {
	b := one("B", "belt", 4)
	b.Steps = []sim.SpeedStep{{From: 5, BackAt: 1, Cycle: s}}
	course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), b},
			Buffers:  []sim.Buffer{{Name: "belt", From: []string{"A"}, Holds: 20, Transit: 10 * s, Conveyor: true}},
		},
		measure: 13500 * sim.Micros(1000),
		want: `
			0  A running, B starved
			1  belt 1
			2  belt 2
			3  belt 3
			4  belt 4
			5  belt 5
			6  belt 6
			7  belt 7
			8  belt 8
			9  belt 9
			10 belt 10
			11 B running    # ten on the belt, one of them arrived: 1 s a cycle; takes one, A puts one
		`,
		counts: `B: cycles 2, taken 3`, // with 4 s a cycle it would have taken one
	}.trail(t)
}
