package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The step comes on from 3 pieces and goes back at 1. The level is read before the take,
// and the duration of a cycle under way stays: 3 pieces at 6 change nothing until 7.
func TestSpeedStepsWithHysteresis(t *testing.T) {
	f, b := one("F", "", 1), one("B", "", 2)
	f.Supply = 8
	b.Steps = []sim.SpeedStep{{From: 3, BackAt: 1, Cycle: s}}
	course{
		line:    withBuffer(f, b, sim.Buffer{Name: "buffer", Holds: 10}),
		measure: 20 * s,
		want: `
			0  F running, B starved
			1  B running               # level 1: set speed, until 3
			2  buffer 1
			4  buffer 2                # at 3 B reads 1 and takes it before F puts one: until 5
			6  buffer 3                # at 5 B reads 2: until 7
			8  F starved               # at 7 B reads 3: 1 s from now on; F's eighth piece was the last
			9  buffer 2                # B reads 3 and takes
			10 buffer 1                # reads 2: still on
			11 buffer 0                # reads 1: off, 2 s
			13 B starved
		`,
		counts: `B: cycles 8, running 12 s; run: ended 13 s, window 20 s`,
		end:    "input used up",
	}.follow(t)
}

// Of several steps that are on the last in the list applies.
func TestLastActiveSpeedStepApplies(t *testing.T) {
	f, b := one("F", "", 1), one("B", "", 4)
	f.Gives, f.Supply = 6, 1
	b.Steps = []sim.SpeedStep{{From: 2, BackAt: 1, Cycle: 2 * s}, {From: 5, BackAt: 3, Cycle: s}}
	course{
		line:    withBuffer(f, b, sim.Buffer{Name: "buffer", Holds: 10}),
		measure: 20 * s,
		want: `
			0  F running, B starved
			1  F starved, B running, buffer 5  # reads 6: both on, 1 s
			2  buffer 4                        # reads 5: 1 s
			3  buffer 3                        # reads 4: the second stays on, 1 s
			4  buffer 2                        # reads 3: the second goes off, 2 s
			6  buffer 1                        # reads 2: 2 s
			8  buffer 0                        # reads 1: the first goes off, 4 s
			12 B starved
		`,
		end: "input used up",
	}.follow(t)
}

// The level that a step reads contains what is in transit: at 3.5 one piece has arrived and
// two are on their way.
func TestSpeedStepReadsTransitToo(t *testing.T) {
	b := one("B", "", 1)
	b.Steps = []sim.SpeedStep{{From: 3, BackAt: 1, Cycle: s / 2}}
	course{
		line:    withBuffer(one("A", "", 1), b, sim.Buffer{Name: "belt", Holds: 10, Transit: 2_500_000, Conveyor: true}),
		measure: 5_250_000,
		want: `
			0   A running, B starved
			1   belt 1
			2   belt 2
			3   belt 3
			3.5 B running, belt 2   # reads 3: half a second
			4   B starved, belt 3   # the next arrives at 4.5
			4.5 B running, belt 2
			5   B starved, belt 3
		`,
	}.follow(t)
}

// The speed rises in a straight line over 10 s: work w is done after √(2 × 10 × w) while w
// is at most 5 s, after w + 5 s from then on. Cycles of 2 s end at √40 = 6.324555,
// √80 = 8.944272, 6 + 5 = 11 and 8 + 5 = 13 s after the restart.
func TestRampAfterAStop(t *testing.T) {
	a := one("A", "", 2)
	a.Ramp = 10 * s
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(4), Lasts: sec(10)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 0.5)}},
		measure: 32 * s,
		want: `
			0 A running, B starved          # new: at set speed
			2 B running
			2.5 B starved
			4 B running
			4.5 B starved
			6 B running
			6.5 B starved
			8 A down (jam), B running       # after four cycles, when the fifth has started
			8.5 B starved
			18 A running
			24.324555 B running
			24.824555 B starved
			26.944272 B running
			27.444272 B starved
			29 B running
			29.5 B starved
			31 A down (jam), B running
			31.5 B starved
		`,
		counts: `A: cycles 8, running 21 s`,
	}.follow(t)
}

// A supply of 5 for a station that takes 2: the fifth piece stays outside.
func TestSupplyUsedUpWithARest(t *testing.T) {
	a := one("A", "", 1)
	a.Takes, a.Supply = 2, 5
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 3)}},
		measure: 10 * s,
		want: `
			0 A running, B starved
			1 B running
			2 A blocked
			4 A starved       # B takes its second piece
			7 B starved
		`,
		counts: `A: taken 4, cycles 2, starved 6 s; B: cycles 2; run: ended 7 s`,
		end:    "input used up",
	}.follow(t)
}
