package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A check by the calendar, 8 s after the last one ended, begins while a jam lasts.
func TestCalendarStopOverlapsAnOwnStop(t *testing.T) {
	course{
		line: alone(4,
			sim.Stop{Name: "jam", Every: sec(6), Clock: sim.RunningClock, Lasts: sec(5)},
			sim.Stop{Name: "check", Every: sec(8), Clock: sim.CalendarClock, Lasts: sec(4)}),
		measure: 29 * s,
		want: `
			0  A running
			6  A down (jam)     # until 11; the check runs from 8 to 12
			11 A down (check)   # down follows the stop that began first, then the one still open
			12 A running        # the other 2 s of the second cycle until 14; the third until 18
			18 A down (jam)     # 6 s of running: falls on the end of the third; until 23
			23 A down (check)   # from 12 + 8 to 24
			24 A running        # the fourth until 28
		`,
		counts: `
			A: cycles 4, running 17 s, down 12 s, restarts 2
			A: jam count 2, jam down 10 s, check count 2, check down 8 s
		`,
	}.follow(t)
}

// The calendar runs while the station is starved; under the stop it takes no input.
func TestCalendarStopDuringStarvation(t *testing.T) {
	k := one("K", "feeder", 2)
	k.Stops = []sim.Stop{{Name: "check", Every: sec(5), Clock: sim.CalendarClock, Lasts: sec(7)}}
	course{
		line:    sim.Line{Stations: []sim.Station{one("feeder", "", 10), k}},
		measure: 25 * s,
		want: `
			0  feeder running, K starved
			5  K down (check)                # until 12
			10 feeder blocked                # K takes nothing
			12 feeder running, K running
			14 K starved
			17 K down (check)                # 12 + 5, until 24
			22 feeder blocked
			24 feeder running, K running
		`,
		counts: `K: cycles 1, taken 2, down 14 s, check count 2; feeder: holding 4 s`,
	}.follow(t)
}

// It begins at the very end of a cycle: the output leaves, no input is taken.
func TestCalendarStopAtTheEndOfACycle(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "check", Every: sec(4), Clock: sim.CalendarClock, Lasts: sec(3)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 0.5)}},
		measure: 11_250_000,
		want: `
			0   A running, B starved
			2   B running
			2.5 B starved
			4   A down (check), B running
			4.5 B starved
			7   A running
			9   B running
			9.5 B starved
			11  A down (check), B running   # 7 + 4: the end of the fourth cycle
		`,
		counts: `A: cycles 4, taken 4, passed 4, input at last 0`,
	}.follow(t)
}

// Finished output that it holds may leave under the stop: B takes it at 6.
func TestOutputLeavesUnderACalendarStop(t *testing.T) {
	a := one("A", "", 1)
	a.Stops = []sim.Stop{{Name: "check", Every: sec(4), Clock: sim.CalendarClock, Lasts: sec(10)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 5)}},
		measure: 16 * s,
		want: `
			0  A running, B starved
			1  B running         # until 6
			2  A blocked
			4  A down (check)    # until 14
			11 B starved         # took A's piece at 6
			14 A running
			15 B running
		`,
		counts: `A: cycles 3, taken 4, passed 3, holding 4 s, blocked 2 s, down 10 s`,
	}.follow(t)
}

// A station that loads while stopped takes its input under the stop, straight through too, and
// begins to work when the stop is over.
func TestLoadingWhileStopped(t *testing.T) {
	b := one("B", "buffer", 5)
	b.Takes, b.LoadsWhileStopped = 2, true
	b.Stops = []sim.Stop{{Name: "check", Every: sec(10), Clock: sim.CalendarClock, Lasts: sec(7)}}
	course{
		line: sim.Line{
			Stations: []sim.Station{one("D", "", 5), b},
			Buffers:  []sim.Buffer{{Name: "buffer", From: []string{"D"}, Holds: 1}},
		},
		measure: 24 * s,
		want: `
			0  D running, B starved
			5  buffer 1
			10 B down (check), buffer 0   # the second piece passes straight through: loaded, no work done
			15 buffer 1
			17 B running                  # until 22
			20 D blocked                  # the buffer is full, and B is at work
			22 D running, buffer 0        # B takes two and goes on
		`,
		counts: `B: cycles 1, taken 4, running 7 s, down 7 s, input at last 2`,
	}.follow(t)
}
