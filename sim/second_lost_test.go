package sim_test

import (
	"testing"

	"tuckline/sim"
)

// losing is a jam after so many cycles that scraps the cycle it strikes.
func losing(cycles, lasts float64) sim.Stop {
	return sim.Stop{Name: "jam", Every: sim.Fixed(cycles), Lasts: sec(lasts), Scraps: true}
}

// The cycle ends at once: it is not counted, its input is lost, the next takes new input. What the
// other clocks have aged stays.
func TestStopScrapsItsCycle(t *testing.T) {
	wear := sim.Stop{Name: "wear", Every: sec(9), Clock: sim.RunningClock, Lasts: sec(1)}
	course{
		line:    alone(2, losing(2.5, 3), wear),
		measure: 16 * s,
		want: `
			0  A running
			5  A down (jam)      # in the third cycle, after 1 s of it
			8  A running         # a new one until 10, another until 12
			12 A down (wear)     # 5 s + 4 s of running; strikes as the next starts
			13 A running
			14 A down (jam)      # 2.5 cycles since the last: 8 to 10, 10 to 12, 13 to 14
		`,
		counts: `A: cycles 4, taken 6, given 4, passed 4, lost 2, scrapped cycles 0, jam count 2, wear count 1, restarts 1, input at last 0`,
	}.trail(t)
}

// A clock of cycles keeps its part of the lost cycle too.
func TestStopScrapsButCycleClocksKeepTheirAge(t *testing.T) {
	wear := sim.Stop{Name: "wear", Every: sim.Fixed(4.25), Lasts: sec(1)}
	course{
		line:    alone(2, losing(2.5, 3), wear),
		measure: 15 * s,
		want: `
			0    A running
			5    A down (jam)
			8    A running
			11.5 A down (wear)    # 2.5 cycles + 1.75: three quarters into the second
			12.5 A running        # its rest until 13
			14   A down (jam)     # 2.5 cycles since the last: 8 to 10, 10 to 13, 13 to 14
		`,
		counts: `A: cycles 4, taken 6, lost 2`,
	}.trail(t)
}

// A stop on the very end of a cycle strikes when the next has taken its input: that is lost.
func TestStopScrapsACycleThatHasJustStarted(t *testing.T) {
	course{
		line:    alone(1, losing(2, 1)),
		measure: 6 * s,
		want: `
			0 A running
			2 A down (jam)
			3 A running
			5 A down (jam)
		`,
		counts: `A: cycles 4, taken 6, lost 2, input at last 0`, // input at 0, 1, 2 (lost), 3, 4, 5 (lost)
	}.trail(t)
}

// A lost cycle uses no material.
func TestLostCycleUsesNoMaterial(t *testing.T) {
	line := alone(2, losing(2.5, 3))
	line.Stations[0].Materials = []sim.Material{reel("reel", 300, 1)}
	course{
		line:    line,
		measure: 13500 * sim.Micros(1000),
		want: `
			0  A running
			5  A down (jam)
			8  A running
			10 A down (reel)    # the third cycle that counts
			11 A running
		`,
		counts: `A: cycles 4, lost 1, reel count 1`,
	}.trail(t)
}

// Its input is gone from the buffer, its output never comes, and what counts pieces sees nothing of it.
func TestLostCycleGivesNothing(t *testing.T) {
	a := one("A", "", 2)
	a.Takes, a.Gives, a.Stops = 3, 2, []sim.Stop{losing(1.5, 1)}
	course{
		line:    withBuffer(a, one("B", "", 10), sim.Buffer{Name: "buffer", Holds: 9}),
		measure: 8 * s,
		want: `
			0 A running, B starved
			2 B running, buffer 1
			3 A down (jam)
			4 A running
			6 buffer 3
			7 A down (jam)
		`,
		counts: `A: taken 12, lost 6, cycles 2, given 4, passed 4, input at last 0`,
	}.trail(t)
}

// Places that were reserved for the lost cycle are free at once: B takes them.
func TestLostCycleReleasesItsPlaces(t *testing.T) {
	a, b := one("A", "", 2), one("B", "", 1)
	a.BlocksBefore, b.BlocksBefore = true, true
	a.Stops = []sim.Stop{losing(0.5, 3)}
	course{
		line: sim.Line{
			Stations: []sim.Station{a, b, one("K", "shared", 10)},
			Buffers:  []sim.Buffer{{Name: "shared", From: []string{"A", "B"}, Holds: 1}},
		},
		measure: 6 * s,
		want: `
			0 A running, B blocked, K starved
			1 A down (jam), B running
			2 K running                          # B has reserved again
			3 B blocked, shared 1
			4 A blocked
		`,
		counts: `A: cycles 0, taken 1, lost 1; B: cycles 2, passed 2`,
	}.trail(t)
}

// Scrap after the stop counts from the next cycle, because the interrupted one is lost.
func TestScrapAfterAStopThatLosesItsCycle(t *testing.T) {
	line := alone(2, losing(4.5, 3))
	line.Stations[0].AfterStop = []sim.ScrapRule{{Cycles: 2}}
	course{
		line:    line,
		measure: 19 * s,
		want: `
			0  A running
			9  A down (jam)
			12 A running      # until 14 and 16 scrapped, until 18 good
		`,
		counts: `A: cycles 7, scrapped cycles 2, lost 1, given 5, taken 9`,
	}.trail(t)
}

// What a stop frees by striking before any work goes on at once: a station that loads while it is stopped
// takes new input in the same instant, not with the next event of the line, whatever that is.
func TestLoadsAtOnceAfterALostCycle(t *testing.T) {
	line := alone(1, losing(2, 10))
	line.Stations[0].LoadsWhileStopped = true
	course{
		line:    line,
		measure: 5 * s,
		want: `
			0 A running
			2 A down (jam)
		`,
		// Taken at 0, at 1, at 2 (lost) and at 2 again, to be worked on after the stop.
		counts: `A: cycles 2, taken 4, lost 1, input at last 1`,
	}.trail(t)
}
