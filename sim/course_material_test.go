package sim_test

import (
	"testing"

	"tuckline/sim"
)

// reel is a material of which every cycle uses 100.
func reel(name string, full int64, change float64) sim.Material {
	return sim.Material{Name: name, Amount: full, PerCycle: 100, Refill: full, Lasts: sec(change)}
}

// The rest of a reel is spliced on: 350 serve 3 cycles, then 50 + 350 serve 4.
func TestReelRestIsSplicedOn(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{reel("reel", 350, 2)}
	course{
		line:    sim.Line{Stations: []sim.Station{a}},
		measure: 15 * s,
		want: `
			0  A running
			3  A down (reel)
			5  A running
			9  A down (reel)
			11 A running
			14 A down (reel)  # 0 + 350: three cycles
		`,
		counts: `A: cycles 10, taken 10, reel count 3, reel down 5 s`, // nothing is taken for a change
	}.follow(t)
}

// A change begins when the cycle that used the reel up has handed over, not while blocked.
func TestReelChangeAfterTheHandOver(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{reel("reel", 200, 2)}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 4)}},
		measure: 14 * s,
		want: `
			0  A running, B starved
			1  B running
			2  A blocked        # used up, and B works until 5
			5  A down (reel)
			7  A running
			8  A blocked
			9  A running        # B takes; the second cycle of this reel
			10 A blocked
			13 A down (reel)
		`,
		counts: `A: cycles 4, holding 7 s, blocked 7 s, reel count 2`, // 2 to 5, 8 to 9, 10 to 13
	}.follow(t)
}

// A change does not wait for input: K is starved from 11 on, its magazine is filled at once.
func TestMagazineIsFilledWithoutInput(t *testing.T) {
	k := one("K", "feeder", 1)
	k.Materials = []sim.Material{{Name: "blanks", Amount: 1, PerCycle: 1, Refill: 1, Lasts: sec(3)}}
	course{
		line:    sim.Line{Stations: []sim.Station{one("feeder", "", 10), k}},
		measure: 25 * s,
		want: `
			0  feeder running, K starved
			10 K running
			11 K down (blanks)
			14 K starved
			20 K running
			21 K down (blanks)
			24 K starved
		`,
	}.follow(t)
}

// Two reels used up by the same cycle are changed one after the other, by name.
func TestTwoReelsUsedUpTogether(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{reel("foil", 200, 2), reel("alu", 200, 1)}
	course{
		line:    sim.Line{Stations: []sim.Station{a}},
		measure: 10 * s,
		want: `
			0 A running
			2 A down (alu)
			3 A down (foil)
			5 A running
			7 A down (alu)
			8 A down (foil)
		`,
		counts: `A: cycles 4, alu count 2, foil count 2, alu down 2 s, foil down 4 s, restarts 1`,
	}.follow(t)
}

// A stop of the calendar overlaps a change; the change begins although the station is down.
func TestReelChangeUnderACalendarStop(t *testing.T) {
	a := one("A", "", 2)
	a.Materials = []sim.Material{reel("reel", 200, 3)}
	a.Stops = []sim.Stop{{Name: "check", Every: sec(4), Clock: sim.CalendarClock, Lasts: sec(5)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a}},
		measure: 10 * s,
		want: `
			0 A running
			4 A down (check)   # both begin at 4, by name check is first; the change is over at 7
			9 A running
		`,
		counts: `A: cycles 2, taken 3, reel down 3 s, check down 5 s, down 5 s`,
	}.follow(t)
}
