package sim_test

import (
	"testing"

	"tuckline/sim"
)

// everyOther are runs that begin after every cycle outside and last one cycle: cycles 2, 4, 6 … are
// rejected whole.
var everyOther = sim.RejectRuns{Enter: 1, Share: 1, Length: 1}

// Runs without chance: every other cycle. A row of two never comes about.
func TestRunsOfRejects(t *testing.T) {
	line := alone(1)
	line.Stations[0].Runs = everyOther
	line.Stations[0].RejectStop = sim.RejectStop{After: 2, Lasts: sec(5)}
	course{
		line:    line,
		measure: 10_500_000,
		want:    `0 A running`,
		counts:  `A: cycles 10, rejected 5, passed 5, rejects in a row count 0`,
	}.follow(t)
}

// The share outside applies outside: cycles 1, 3, 5 are rejected too.
func TestRejectsOutsideRuns(t *testing.T) {
	line := alone(1)
	line.Stations[0].Runs, line.Stations[0].RejectShare = sim.RejectRuns{Enter: 1, Share: 0, Length: 1}, 1
	course{
		line:    line,
		measure: 5_500_000,
		want:    `0 A running`,
		counts:  `A: cycles 5, rejected 3, passed 2`,
	}.follow(t)
}

// Three cycles in a row with a reject stop the station when the third has handed over; the row
// then starts anew.
func TestRejectsInARowStop(t *testing.T) {
	line := alone(1)
	line.Stations[0].Gives = 4
	line.Stations[0].RejectShare = 1
	line.Stations[0].RejectStop = sim.RejectStop{After: 3, Lasts: sec(5), Crew: sim.Work{Crew: "operators"}}
	line.Crews = []sim.Crew{{Name: "operators", People: 1}}
	course{
		line:    line,
		measure: 12 * s,
		want: `
			0  A running
			3  A down (rejects in a row)
			8  A running
			11 A down (rejects in a row)
		`,
		counts: `
			A: cycles 6, rejected 24, rejects in a row count 2, rejects in a row down 6 s
			operators: requests 2, busy 6 s`,
	}.follow(t)
}

// It begins when the cycle is over, like a change of material, and goes before one that is due at
// the same time.
func TestRejectsInARowBeforeTheReel(t *testing.T) {
	a, b := one("A", "", 1), one("B", "A", 4)
	a.Runs = everyOther
	a.Materials = []sim.Material{reel("a reel", 200, 1)}
	a.RejectStop = sim.RejectStop{After: 1, Lasts: sec(2)}
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 9 * s,
		want: `
			0 A running, B starved
			1 B running                   # until 5
			2 A down (rejects in a row)   # the second cycle; the reel is used up too
			4 A down (a reel)
			5 A running, B starved        # the third cycle, good
			6 B running                   # the fourth, rejected, until 7
			7 A down (rejects in a row)
		`,
		counts: `A: cycles 4, rejected 2, rejects in a row count 2, a reel count 1`,
	}.follow(t)
}

// A scrapped cycle neither counts nor breaks the row.
func TestScrapIsNoPartOfTheRow(t *testing.T) {
	line := alone(1, jam(1.5, 2))
	a := &line.Stations[0]
	a.RejectShare, a.AfterStop = 1, []sim.ScrapRule{{Cycles: 1}}
	a.RejectStop = sim.RejectStop{After: 2, Lasts: sec(3)}
	course{
		line:    line,
		measure: 7 * s,
		want: `
			0   A running
			1.5 A down (jam)                 # half of the second, which is scrapped: 4
			3.5 A running                    # the third, until 5: the second of the row
			5   A down (rejects in a row)
		`,
		counts: `A: cycles 3, scrapped cycles 1, rejected 2, rejects in a row count 1`,
	}.follow(t)
}

// Rejects found in cycles 2, 4, 6 … leave in cycles 4, 6, 8 …: after 9 cycles three of them
// have left. The register stands still with the station.
func TestRejectsLeaveLater(t *testing.T) {
	line := alone(1, jam(7, 2))
	a := &line.Stations[0]
	a.Runs, a.RejectsAfter = everyOther, 2
	course{
		line:    line,
		measure: 11_500_000,
		want: `
			0 A running
			7 A down (jam)
			9 A running    # the eighth ends at 10, the ninth at 11
		`,
		counts: `A: cycles 9, rejected 3, passed 6`,
	}.follow(t)
}

// The fourth cycle at the exit is scrap: what was found in the second leaves with it. What passes the camera
// meanwhile is other web: what it finds there, in its fourth cycle, leaves in the sixth, which is not scrap. What
// was found in the sixth has not left yet. By hand: 5 given, less 1.
func TestRejectsLeaveWithScrap(t *testing.T) {
	line := alone(1, jam(3.5, 1))
	a := &line.Stations[0]
	a.Runs, a.RejectsAfter, a.AfterStop = everyOther, 2, []sim.ScrapRule{{Cycles: 1}}
	course{
		line:    line,
		measure: 8 * s,
		want: `
			0   A running
			3.5 A down (jam)
			4.5 A running    # the fourth ends at 5, the sixth at 7; the seventh at 8 is outside
		`,
		counts: `A: cycles 6, scrapped cycles 1, given 5, rejected 1, passed 4`,
	}.follow(t)
	a.RejectsAfter = 0
	course{
		line:    line,
		measure: 8 * s,
		want: `
			0   A running
			3.5 A down (jam)
			4.5 A running
		`,
		counts: `A: rejected 2, passed 3`, // of the second and of the sixth
	}.follow(t)
}

// Every piece is found, and leaves three cycles later: only the first three cycles are good, whatever is scrapped.
// Of the fifth and sixth, scrapped at the exit, the camera sees the web that leaves as eighth and ninth.
func TestTheCameraLooksAtWebBehindScrap(t *testing.T) {
	line := alone(1, jam(4.5, 1))
	a := &line.Stations[0]
	a.RejectShare, a.RejectsAfter, a.AfterStop = 1, 3, []sim.ScrapRule{{Cycles: 2}}
	course{
		line:    line,
		measure: 9_500_000,
		want: `
			0   A running
			4.5 A down (jam)    # half of the fifth, which is scrapped: 6; so is the sixth: 7
			5.5 A running
		`,
		// Ends 1, 2, 3, 4, 6, 7, 8, 9: good are the first 3, rejected the fourth, seventh and eighth.
		counts: `A: cycles 8, scrapped cycles 2, given 6, rejected 3, passed 3`,
	}.follow(t)
}

// Cycles with a reject found count for the row although they are scrap at the exit, and stop the
// station when such a cycle is over.
func TestTheRowGoesOnThroughScrap(t *testing.T) {
	line := alone(1, jam(1.5, 2))
	a := &line.Stations[0]
	a.RejectShare, a.RejectsAfter, a.AfterStop = 1, 3, []sim.ScrapRule{{Cycles: 1}}
	a.RejectStop = sim.RejectStop{After: 2, Lasts: sec(3)}
	course{
		line:    line,
		measure: 7_500_000,
		want: `
			0   A running
			1.5 A down (jam)                 # half of the second, which is scrapped
			3.5 A running                    # until 4: the second of the row
			4   A down (rejects in a row)
			7   A running
		`,
		counts: `A: cycles 2, scrapped cycles 1, rejected 0, rejects in a row count 1`,
	}.follow(t)
}

// A scrapped cycle without a reject found breaks the row: every other cycle has one.
func TestScrapWithoutARejectBreaksTheRow(t *testing.T) {
	line := alone(1, jam(2.5, 1))
	a := &line.Stations[0]
	a.Runs, a.RejectsAfter, a.AfterStop = everyOther, 3, []sim.ScrapRule{{Cycles: 1}}
	a.RejectStop = sim.RejectStop{After: 2, Lasts: sec(3)}
	course{
		line:    line,
		measure: 5_500_000,
		want: `
			0   A running
			2.5 A down (jam)    # the third is scrap, and the second and fourth have a reject
			3.5 A running       # until 4; the fourth until 5
		`,
		counts: `A: cycles 4, scrapped cycles 1, rejects in a row count 0`,
	}.follow(t)
}

// The same for packs that lose their place: the third cycle is lost whole at the exit (what was found in the first
// is among it), the camera finds 2 in it all the same, and they leave in the fifth.
func TestTheCameraLooksAtWebBehindLostPacks(t *testing.T) {
	line := alone(1, jam(2.6, 1))
	a := &line.Stations[0]
	a.Gives, a.RejectShare, a.RejectsAfter, a.LostPerStop = 2, 1, 2, 2
	course{
		line:    line,
		measure: 6_100_000,
		want: `
			0   A running
			2.6 A down (jam)
			3.6 A running    # the third until 4, then until 5 and 6
		`,
		counts: `A: cycles 5, given 10, rejected 6, passed 4`, // the first two cycles, 2 each
	}.follow(t)
}

// The stop counts what the camera finds, not what leaves: with every cycle rejected it comes after the
// second although nothing has left yet; from the fourth cycle on every cycle is rejected.
func TestRowCountsAtTheCamera(t *testing.T) {
	line := alone(1)
	a := &line.Stations[0]
	a.RejectShare, a.RejectsAfter = 1, 3
	a.RejectStop = sim.RejectStop{After: 2, Lasts: sec(2)}
	course{
		line:    line,
		measure: 9_500_000,
		want: `
			0 A running
			2 A down (rejects in a row)
			4 A running
			6 A down (rejects in a row)
			8 A running
		`,
		counts: `A: cycles 5, rejected 2, passed 3`, // ends 1, 2, 5, 6, 9: the fourth and the fifth
	}.follow(t)
}

// Every code cannot be read: a reject, counted apart. What the camera has rejected before has no code
// to be read.
func TestNoReads(t *testing.T) {
	line := alone(1)
	a := &line.Stations[0]
	a.NoReads, a.Gives, a.Runs = 1, 3, everyOther
	course{
		line:    line,
		measure: 4_500_000,
		want:    `0 A running`,
		counts:  `A: cycles 4, given 12, rejected 12, no-reads 6, passed 0`,
	}.follow(t)
}

// Rejects on one drive: each member has its own, and each sees what the one before leaves.
func TestRejectsOfMembers(t *testing.T) {
	a, b, c := one("A", "", 1), one("B", "", 1), one("C", "", 1)
	a.Runs = everyOther
	b.NoReads = 1
	c.RejectShare = 1
	course{
		line:    sim.Line{Stations: coupled(a, b, c)},
		measure: 4_500_000,
		want:    `0 A running, B running, C running`,
		counts: `
			A: given 4, rejected 2, passed 2
			B: taken 2, rejected 2, no-reads 2, passed 0
			C: taken 0, rejected 0`,
	}.follow(t)
}
