package sim_test

import (
	"testing"

	"tuckline/sim"
)

// scrapping is a station of 1 s that scraps 2 cycles after a stop of any length and 5
// after one of more than 3 s; the list is in no order.
func scrapping(stops ...sim.Stop) sim.Line {
	line := alone(1, stops...)
	line.Stations[0].AfterStop = []sim.ScrapRule{{LongerThan: 3 * s, Cycles: 5}, {Cycles: 2}}
	return line
}

// The interrupted cycle is the first to be scrapped when it ends.
func TestScrapBeginsWithTheInterruptedCycle(t *testing.T) {
	course{
		line:    scrapping(sim.Stop{Name: "jam", Every: sim.Fixed(3.5), Lasts: sec(2)}),
		measure: 10 * s,
		want: `
			0   A running
			3.5 A down (jam)
			5.5 A running    # the fourth cycle ends at 6, the fifth at 7: both scrapped
			9   A down (jam) # 7 cycles: the end of the seventh
		`,
		counts: `A: cycles 7, scrapped cycles 2, given 5, scrapped 2, passed 5, taken 8`,
	}.follow(t)
}

// A stop of 3 s is not longer than 3 s.
func TestScrapLimitMustBePassed(t *testing.T) {
	course{
		line:    scrapping(sim.Stop{Name: "jam", Every: sim.Fixed(6), Lasts: sec(3)}),
		measure: 14 * s,
		want: `
			0 A running
			6 A down (jam)
			9 A running      # cycles end at 10 … 13; 10 and 11 scrapped
		`,
		counts: `A: cycles 10, scrapped cycles 2`,
	}.follow(t)
}

// A new pause sets the count to the larger of the rest and the new number: after the
// long stop 5, one is scrapped, then the short stop asks for 2, and 4 are left.
func TestScrapLargerOfRestAndNew(t *testing.T) {
	long := sim.Stop{Name: "long", Every: sim.Fixed(10), Lasts: sec(4)}
	short := sim.Stop{Name: "short", Every: sim.Fixed(11), Lasts: sec(1)}
	course{
		line:    scrapping(long, short),
		measure: 24_500_000,
		want: `
			0  A running
			10 A down (long)    # ten cycles
			14 A running        # the eleventh is scrapped: 4 left
			15 A down (short)
			16 A running        # the 12th to the 15th are scrapped: 17 … 20
		`,
		counts: `A: cycles 19, scrapped cycles 5, passed 14`, // 10, 15, 17 … 24
	}.follow(t)
	long.Every, short.Every = short.Every, long.Every
	course{
		line:    scrapping(long, short),
		measure: 22_500_000,
		want: `
			0  A running
			10 A down (short)
			11 A running        # the eleventh is scrapped: 1 left
			12 A down (long)
			16 A running        # 5: 17 … 21
		`,
		counts: `A: cycles 17, scrapped cycles 6, passed 11`, // 10, 12, 17 … 22
	}.follow(t)
}

// After standstill counts any pause, blocked too: 3 s are longer than 2 s, 2 s are not. A scrapped
// cycle gives nothing and is never blocked.
func TestScrapAfterStandstillBlocked(t *testing.T) {
	a := one("A", "", 1)
	a.AfterStandstill = []sim.ScrapRule{{LongerThan: 2 * s, Cycles: 1}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 4)}},
		measure: 17 * s,
		want: `
			0  A running, B starved
			1  B running        # until 5, 9, 13, 17
			2  A blocked
			5  A running        # after 3 s: the cycle until 6 is scrapped, the next until 7 good
			7  A blocked
			9  A running        # after 2 s: good
			10 A blocked
			13 A running        # after 3 s: until 14 scrapped, until 15 good
			15 A blocked
		`,
		counts: `A: cycles 7, scrapped cycles 2, given 5, passed 4, output at last 1`,
	}.follow(t)
}

// After stop counts own stops only: the same pauses, blocked, scrap nothing. And a starved
// station scraps after standstill.
func TestScrapOfWhichPauses(t *testing.T) {
	a, b := one("A", "", 1), one("B", "A", 4)
	a.AfterStop = []sim.ScrapRule{{Cycles: 1}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 9 * s,
		want: `
			0 A running, B starved
			1 B running
			2 A blocked
			5 A running
			6 A blocked
		`,
		counts: `A: cycles 3, scrapped cycles 0`,
	}.follow(t)
	a, b = one("A", "", 4), one("B", "A", 1)
	b.AfterStandstill = []sim.ScrapRule{{LongerThan: 2 * s, Cycles: 1}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 14 * s,
		want: `
			0  A running, B starved
			4  B running            # new: no pause since the last work
			5  B starved
			8  B running            # after 3 s
			9  B starved
			12 B running
			13 B starved
		`,
		counts: `B: cycles 3, scrapped cycles 2, passed 1`,
	}.follow(t)
}

// A scrapped cycle uses material, ages the clocks and draws no reject; with room reserved
// before the cycle it needs none.
func TestScrappedCycleUsesMaterial(t *testing.T) {
	line := scrapping(sim.Stop{Name: "jam", Every: sim.Fixed(4), Lasts: sec(2)})
	a := line.Stations[0]
	a.RejectShare, a.BlocksBefore = 1, true
	a.Materials = []sim.Material{reel("reel", 600, 1)}
	course{
		line:    withBuffer(a, one("B", "", 1), sim.Buffer{Name: "buffer", Holds: 1}),
		measure: 11 * s,
		want: `
			0 A running, B starved
			4 A down (jam)    # four cycles
			6 A running       # two scrapped, until 8: six cycles used the reel up
			8 A down (reel)
			9 A running       # the change is a stop too: the seventh and the eighth are scrapped
		`,
		counts: `A: cycles 7, scrapped cycles 3, given 4, rejected 4, passed 0; buffer: in 0`,
	}.follow(t)
}
