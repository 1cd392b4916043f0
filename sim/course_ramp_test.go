package sim_test

import (
	"testing"

	"tuckline/sim"
)

// Every cycle takes 2 s and 8 s more. The stop interrupts the first after 5 s. The 5 s of
// work that are left start from standstill: on a ramp of 4 s, in which half is lost, they take 7 s.
func TestRampAfterInterruptedLongCycle(t *testing.T) {
	a := one("A", "", 2)
	a.Group, a.Ramp = sim.Group{Every: 1, Adds: 8 * s}, 4*s
	a.Stops = []sim.Stop{{Name: "jam", Every: sec(5), Clock: sim.RunningClock, Lasts: sec(10)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 1)}},
		measure: 23 * s,
		want: `
			0  A running, B starved
			5  A down (jam)
			15 A running          # 5 s of running are over: next strike at 20
			20 A down (jam)       # 3 s of work done, 2 s left
		`,
	}.follow(t)
	a.Stops[0].Every, a.Stops[0].Clock = sim.Fixed(0.5), sim.CycleClock
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 1)}},
		measure: 23 * s,
		want: `
			0  A running, B starved
			5  A down (jam)       # half a cycle of 10 s
			15 A running          # from standstill: 5 s of work take 5 + 4/2 = 7 s
			22 A down (jam), B running   # the next half falls on the end: it strikes when the next starts
		`,
	}.follow(t)
}

// On a ramp of 10 s the work after t seconds is t²/20. The second jam strikes after 8 s
// of running: 3.2 s of work are done, 0.8 s of the second cycle are left, which from
// standstill take √(20 × 0.8) = 4 s.
func TestRampInterruptedOnTheRamp(t *testing.T) {
	a := one("A", "", 2)
	a.Ramp = 10 * s
	a.Stops = []sim.Stop{{Name: "jam", Every: sec(8), Clock: sim.RunningClock, Lasts: sec(10)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 0.5)}},
		measure: 41 * s,
		want: `
			0  A running, B starved
			2  B running
			2.5 B starved
			4  B running
			4.5 B starved
			6  B running
			6.5 B starved
			8  A down (jam), B running # falls on the end of a cycle: the next has started, no work done
			8.5 B starved
			18 A running
			24.324555 B running        # √(20 × 2) = 6.324555
			24.824555 B starved
			26 A down (jam)            # 8 s of running
			36 A running
			40 B running
			40.5 B starved
		`,
	}.follow(t)
}
