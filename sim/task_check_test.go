package sim_test

import (
	"testing"

	"tuckline/sim"
)

// leakTest takes 3 pieces every 5 s of running, and the fitters test them for 4 s.
func leakTest() sim.Check {
	return sim.Check{
		Name: "leak test", Every: sec(5), Clock: sim.RunningClock, Takes: 3, Lasts: sec(4),
		Crew: sim.Work{Crew: "fitters"},
	}
}

// checked is a station of 1 s that gives 2 and has the test.
func checked() sim.Station {
	a := one("A", "", 1)
	a.Gives = 2
	a.Checks = []sim.Check{leakTest()}
	return a
}

// A test while the station runs: it takes of the cycles that follow the strike of its clock; one that
// is due during a test begins when that is over. The jam of B waits for the fitter who tests.
func TestCheckWhileRunning(t *testing.T) {
	course{
		line:    fitters(1, checked(), needing("B", 8, 2, 1, 5)),
		measure: 20 * s,
		want: `
			0  A running, B running      # due at 5: 2 of the cycle until 6, 1 of that until 7; test 7 to 11
			8  B waiting for crew (jam)
			11 B down (jam)              # the next is due at 10: 2 at 12, 1 at 13; test 13 to 17
			13 B running                 # the next at 16: 2 at 18, 1 at 19; test from 19 on
		`,
		counts: `
			A: cycles 19, given 38, sampled 9, passed 29, leak test tests 2
			fitters: requests 4, waited 1, wait time 3 s, busy 11 s  # 4 + 2 + 4 + 1
		`,
	}.follow(t)
}

// The clock of the calendar goes on while the station is stopped, and the next good pieces are taken when
// it runs again; the clock of running stands. The jam lasts from 12 to 18; the first test takes at 8 and 9.
func TestCheckClocks(t *testing.T) {
	for _, c := range []struct {
		clock sim.Clock
		every float64
		want  string
	}{
		// Due at 14: 2 of the cycle until 19, 1 of that until 20, test from 20 on.
		{sim.CalendarClock, 7e6, `A: sampled 6, passed 24; fitters: busy 6 s`},
		// Due after 14 s of running, at 20, the very end of a cycle: 2 of the one until 21.
		{sim.RunningClock, 7e6, `A: sampled 5, passed 25; fitters: busy 4 s`},
		{sim.CycleClock, 7, `A: sampled 5, passed 25; fitters: busy 4 s`},
		{sim.PieceClock, 14, `A: sampled 5, passed 25; fitters: busy 4 s`},
		// 13 pieces are 6.5 cycles: 2 of the cycle until 7, in which it strikes; then 13 cycles are over at 19.
		{sim.PieceClock, 13, `A: sampled 6, passed 24; fitters: busy 5 s`},
	} {
		a := checked()
		a.Checks[0].Clock, a.Checks[0].Every = c.clock, sim.Fixed(c.every)
		a.Stops = []sim.Stop{{Name: "jam", Every: sec(12), Clock: sim.RunningClock, Lasts: sec(6)}}
		course{
			line:    fitters(1, a),
			measure: 22 * s,
			want: `
				0  A running
				12 A down (jam)
				18 A running
			`,
			counts: `A: cycles 15, leak test tests 1; ` + c.want,
		}.follow(t)
	}
}

// Only good pieces are taken: neither scrapped nor rejected ones.
func TestCheckTakesGoodPiecesOnly(t *testing.T) {
	a := checked()
	a.RejectShare = 1
	rec := compile(t, sim.Line{Stations: []sim.Station{a}, Crews: []sim.Crew{{Name: "fitters", People: 1}}}).
		NewEngine().Run(sim.Options{Measure: 60 * s})
	if r := &rec.Stations[0]; r.Sampled != 0 || r.Checks[0].Count != 0 || r.Rejected != r.Given {
		t.Errorf("of rejects only, %d were taken for %d tests", r.Sampled, r.Checks[0].Count)
	}
	a = checked()
	a.Stops = []sim.Stop{{Name: "jam", Every: sec(5), Clock: sim.RunningClock, Lasts: sec(1)}}
	a.AfterStop = []sim.ScrapRule{{Cycles: 2}}
	course{
		line:    fitters(1, a),
		measure: 10 * s,
		want: `
			0 A running
			5 A down (jam)
			6 A running # until 7 and 8 scrap; the test is due at 5 s of running: 2 at 9
		`,
		counts: `A: cycles 8, scrapped cycles 2, given 12, sampled 2, passed 10, leak test tests 0`,
	}.follow(t)
}

// A cycle of which the test takes every piece is never blocked, and gives up the room reserved for it.
func TestSampledCycleNeedsNoRoom(t *testing.T) {
	for _, before := range []bool{false, true} {
		a := one("A", "", 1)
		a.BlocksBefore = before
		a.Checks = []sim.Check{leakTest()}
		a.Checks[0].Every, a.Checks[0].Takes, a.Checks[0].Lasts = sec(3), 3, sec(1)
		line := fitters(1, a, one("B", "store", 100))
		line.Buffers = []sim.Buffer{{Name: "store", From: []string{"A"}, Holds: 2}}
		want := `
			0  A running, B starved
			1  B running            # B takes the first, the store the second and third
			2  store 1
			3  store 2              # the test takes those at 4, 5, 6
			7  A blocked            # the next, due at 6 exactly, would be of the cycle until 7: test 6 to 7
		`
		if before {
			want = `
			0  A running, B starved
			1  B running
			2  store 1
			3  A blocked, store 2   # no room to begin with: the test gets nothing
		`
		}
		course{line: line, measure: 12 * s, want: want, counts: `A: blocked spells 1`}.follow(t)
	}
}

// On one drive a member that gives as many as it takes may take pieces for a test of its own; what
// comes behind it gets less.
func TestCheckOnADrive(t *testing.T) {
	a, b := checked(), one("B", "A", 1)
	b.Takes, b.Gives, a.Coupled, b.Coupled = 2, 2, "drive", "drive"
	course{
		line:    fitters(1, a, b),
		measure: 10 * s,
		want:    `0 A running, B running`,
		counts: `
			A: cycles 9, given 18, sampled 3, passed 15, leak test tests 0  # 6 and 7; test 7 to 11
			B: cycles 9, taken 15, given 15, sampled 0, passed 15
		`,
	}.follow(t)
}
