package sim_test

import (
	"testing"

	"tuckline/sim"
)

// alone is one station with its stops, from supply to the end of the line.
func alone(cycle float64, stops ...sim.Stop) sim.Line {
	a := one("A", "", cycle)
	a.Stops = stops
	return sim.Line{Stations: []sim.Station{a}}
}

// A stop after every 1.25 cycles of 2 s: at 1.25, 2.5, 3.75 and 5 cycles. The last falls
// on the very end of the fifth cycle and strikes when the sixth has taken its input.
func TestCycleClock(t *testing.T) {
	course{
		line:    alone(2, sim.Stop{Name: "jam", Every: sim.Fixed(1.25), Lasts: sec(1)}),
		measure: 16 * s,
		want: `
			0    A running
			2.5  A down (jam)  # a quarter of the second cycle
			3.5  A running     # the other 1.5 s, until 5
			6    A down (jam)  # half of the third
			7    A running     # until 8
			9.5  A down (jam)  # three quarters of the fourth
			10.5 A running     # until 11, the fifth until 13
			13   A down (jam)
			14   A running     # the sixth works its 2 s
		`,
		counts: `A: cycles 5, taken 6, input at last 1, running 12 s, jam count 4, jam down 4 s, restarts 0`,
	}.follow(t)
}

// A stop every 10 pieces at 4 a cycle: 2.5 cycles. Pieces are counted before rejects: all
// are rejected here.
func TestPieceClock(t *testing.T) {
	line := alone(2, sim.Stop{Name: "jam", Every: sim.Fixed(10), Clock: sim.PieceClock, Lasts: sec(1)})
	line.Stations[0].Gives, line.Stations[0].RejectShare = 4, 1
	course{
		line:    line,
		measure: 13 * s,
		want: `
			0  A running
			5  A down (jam)  # half of the third cycle
			6  A running
			11 A down (jam)  # 20 pieces: the end of the fifth; the sixth has started
			12 A running
		`,
		counts: `A: cycles 5, given 20, rejected 20, passed 0, holding 0 s`,
	}.follow(t)
}

// A stop every 3 s of running; the clock stands still while A is blocked. At 7 the 3 s are
// over at the end of a cycle: it strikes at 8, when the next starts, not while blocked.
func TestRunningClock(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "jam", Every: sec(3), Clock: sim.RunningClock, Lasts: sec(1)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 3)}},
		measure: 14 * s,
		want: `
			0  A running, B starved
			2  B running      # until 5, 8, 11, 14
			3  A down (jam)   # 3 s of running
			4  A running      # the rest of the second cycle, until 5: B takes; the third until 7
			7  A blocked
			8  A down (jam)   # 1 s and 2 s of running since the last
			9  A running      # until 11: B takes; the next from 11 on
			12 A down (jam)
			13 A running      # until 14
		`,
		counts: `A: cycles 4, taken 5, running 10 s, blocked 1 s, down 3 s; B: cycles 3`, // A ends at 2, 5, 7, 11
	}.follow(t)
}

// Two stops fall on the same point: by name, one after the other.
func TestStopsDueTogetherByName(t *testing.T) {
	course{
		line: alone(2,
			sim.Stop{Name: "b", Every: sec(3), Clock: sim.RunningClock, Lasts: sec(1)},
			sim.Stop{Name: "a", Every: sim.Fixed(1.5), Lasts: sec(2)}),
		measure: 13 * s,
		want: `
			0  A running
			3  A down (a)    # 1.5 cycles, and 3 s
			5  A down (b)
			6  A running     # the rest of the second cycle until 7, the third until 9
			9  A down (a)    # both fall on its end: when the fourth has started
			11 A down (b)
			12 A running
		`,
		counts: `A: cycles 3, taken 4, a count 2, b count 2, a down 4 s, b down 2 s, restarts 2`,
	}.follow(t)
}

// A group: every third cycle of 1 s takes 1.5 s more; an interruption does not change that.
func TestGroupMakesEveryThirdCycleLonger(t *testing.T) {
	a := one("A", "", 1)
	a.Group = sim.Group{Every: 3, Adds: 1_500_000}
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(5.5), Lasts: sec(2)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 0.5)}},
		measure: 13 * s,
		want: `
			0 A running, B starved
			1 B running
			1.5 B starved
			2 B running
			2.5 B starved
			4.5 B running       # 2 + 1 + 1.5
			5 B starved
			5.5 B running
			6 B starved
			6.5 B running
			7 B starved
			7.75 A down (jam)   # half of the sixth cycle of 2.5 s
			9.75 A running
			11 B running        # the other half
			11.5 B starved
			12 B running
			12.5 B starved
		`,
		counts: `A: cycles 7`,
	}.follow(t)
}

// The factor multiplies how often a stop comes: twice as often as every 4 cycles.
func TestStopRateFactor(t *testing.T) {
	course{
		line:    alone(1, sim.Stop{Name: "jam", Every: sim.Fixed(4), Lasts: sec(1), RateFactor: 2}),
		measure: 6 * s,
		want: `
			0 A running
			2 A down (jam)
			3 A running
			5 A down (jam)
		`,
	}.follow(t)
}
