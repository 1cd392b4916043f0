package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The level is 2 from 4 on: at 5 it has been for 1 s, at 7 for the 3 s that are asked. At 5 one
// piece goes and one comes in the same instant: the level has stayed.
func TestSpeedStepWaits(t *testing.T) {
	b := one("B", "", 2)
	b.Steps = []sim.SpeedStep{{From: 2, BackAt: 0, Cycle: s / 2, Delay: 3 * s}}
	course{
		line:    withBuffer(one("A", "", 1), b, sim.Buffer{Name: "buffer", Holds: 20}),
		measure: 10_400_000,
		want: `
			0   A running, B starved
			1   B running            # until 3, 5, 7
			2   buffer 1
			4   buffer 2
			6   buffer 3
			7.5 buffer 2             # half a second a cycle from 7 on
			8.5 buffer 1
			9.5 buffer 0             # the piece of 10 goes straight through
		`,
		counts: `B: cycles 9`, // 3, 5, 7, 7.5 … 10
	}.follow(t)
	b.Steps[0].Delay = 0
	rec := compile(t, withBuffer(one("A", "", 1), b, sim.Buffer{Name: "buffer", Holds: 20})).NewEngine().Run(sim.Options{Measure: 5_600_000})
	if got := rec.Stations[1].Cycles; got != 3 { // 3, 5 and, half a second long, 5.5
		t.Errorf("without a delay %d cycles, by hand 3", got)
	}
}

// Falling back waits too: at 3.5 the level has been at most 2 for half a second, at 4 for one.
func TestSpeedStepWaitsToGoBack(t *testing.T) {
	b := one("B", "", 1)
	b.Steps = []sim.SpeedStep{{From: 3, BackAt: 2, Cycle: s / 2, Delay: s}}
	course{
		line:    withBuffer(one("A", "", 10), b, sim.Buffer{Name: "buffer", Holds: 20, AtStart: 8}),
		measure: 6 * s,
		want: `
			0   A running, B running, buffer 7   # 8 for no time: set speed
			1   buffer 6                         # for 1 s: half a second a cycle
			1.5 buffer 5
			2   buffer 4
			2.5 buffer 3
			3   buffer 2
			3.5 buffer 1
			4   buffer 0                         # set speed, until 5
			5   B starved
		`,
		counts: `B: cycles 8`, // 1, 1.5, 2, 2.5, 3, 3.5, 4, 5
	}.follow(t)
}

// A level that dips below in between starts anew.
func TestSpeedStepStartsAnew(t *testing.T) {
	b := one("B", "", 1)
	b.Takes = 3
	b.Steps = []sim.SpeedStep{{From: 4, BackAt: 0, Cycle: s / 2, Delay: 2 * s}}
	a := one("A", "", 1)
	a.Gives = 3
	// The level is 4 until B takes 3 at 0, then 1; A brings 3 at 1, 2 …, B takes 3 at once: at every
	// start it reads 4 that have lasted no time.
	line := withBuffer(a, b, sim.Buffer{Name: "buffer", Holds: 20, AtStart: 4})
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 10*s + 1})
	if got := rec.Stations[1].Cycles; got != 10 {
		t.Errorf("%d cycles, by hand 10: never faster", got)
	}
}
