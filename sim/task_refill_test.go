package sim_test

import (
	"testing"

	"tuckline/sim"
)

// magazine is a stock of which every cycle uses 1, refilled by the fitters from an alarm on.
func magazine(name string, holds, alarm, refill int64, lasts float64) sim.Material {
	return sim.Material{
		Name: name, Amount: holds, PerCycle: 1, Refill: refill, Lasts: sec(lasts),
		Crew: sim.Work{Crew: "fitters"}, Alarm: sim.Level{On: true, Level: alarm},
	}
}

// Refills that come in time never stop the station: 6 cycles bring 10 blanks to the alarm of 4;
// during the refill 2 more are used, 2 + 6 = 8; from then on an alarm every 6 s.
func TestRefillInTime(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{magazine("blanks", 10, 4, 6, 2)}
	course{
		line:    fitters(1, a),
		measure: 20 * s,
		want:    `0 A running`,
		counts: `
			A: cycles 19, blanks at first 10, blanks at last 3  # 10 + 2 × 6 − 19; the third refill ends with the window
			A: blanks tasks 3, blanks added 12, blanks used 19, blanks late 0, blanks count 0, blanks wasted 0
			fitters: requests 3, waited 0, busy 6 s             # at 6, 12, 18
		`,
	}.follow(t)
}

// The fitter is at B when A asks: what is left at the alarm is used up first.
func TestRefillLateBecauseTheCrewIsBusy(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{magazine("blanks", 10, 4, 6, 2)}
	course{
		line:    fitters(1, a, needing("B", 5, 8, 1, 5)),
		measure: 30 * s,
		want: `
			0  A running, B running
			5  B down (jam)                      # until 13
			10 A waiting for crew (blanks)       # asked at 6 with 4 left
			13 A down (blanks), B running
			15 A running                         # 6 blanks; 4 at 17: the fitter comes at once, until 19
			18 B waiting for crew (jam)
			19 B down (jam)                      # A has 8 − 4 at 23 and asks
			27 A down (blanks), B running        # used up when the fitter comes: waiting lasts no time
			29 A running
		`,
		counts: `
			A: blanks tasks 3, blanks late 2, blanks lateness 7 s    # 10 to 15, 27 to 29
			A: blanks count 2, blanks waiting 3 s, blanks down 4 s, waiting for crew 3 s, down 4 s
			A: blanks added 18, cycles 22, blanks used 22, blanks at last 6
			fitters: requests 5, waited 3, wait time 12 s, busy 22 s # A 7, B 1, A 4; 8 + 2 + 2 + 8 + 2
		`,
	}.follow(t)
}

// Two tasks and a stop in one queue: priority, time of the request, then names. A runs all the time.
func TestTasksAndStopsInOneQueue(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{magazine("leaflets", 20, 15, 5, 3), magazine("blanks", 20, 15, 5, 2)}
	course{
		line:    fitters(1, a, needing("B", 5, 1, 1, 1)),
		measure: 17 * s,
		want: `
			0  A running, B running
			5  B down (jam)          # all three ask at 5: the jam by priority, then blanks 6 to 8, leaflets 8 to 11
			6  B running             # blanks 20 − 8 + 5 = 17 at 8, so that they ask at 10
			11 B down (jam)          # before blanks, 12 to 14, and leaflets, 14 to 17: 20 − 11 + 5 = 14 asks again at once
			12 B running
		`,
		counts: `
			A: blanks tasks 3, leaflets tasks 2, blanks late 0, leaflets late 0, cycles 16
			A: blanks added 10, leaflets added 5, blanks at last 14, leaflets at last 9
			fitters: requests 6, waited 4, wait time 9 s, busy 12 s  # 1 + 3 + 2 + 3
		`,
	}.follow(t)
}

// A refill that leaves the stock at its alarm is followed by another at once; the first that comes
// late lets the station run on with what it brought.
func TestRefillAtTheAlarmAsksAgain(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{magazine("blanks", 5, 3, 2, 4)}
	course{
		line:    fitters(1, a),
		measure: 12 * s,
		want: `
			0  A running
			5  A down (blanks)    # asked at 2, worked on until 6
			6  A running          # 2 blanks: asked at once, until 10
			8  A down (blanks)
			10 A running
		`,
		counts: `A: blanks tasks 3, blanks late 2, blanks lateness 3 s, cycles 8; fitters: busy 10 s`, // 2 to 12
	}.follow(t)
}
