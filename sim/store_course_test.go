package sim_test

import (
	"testing"

	"tuckline/sim"
)

func storeLine(a, b sim.Station, store sim.Buffer) sim.Line {
	store.Name, store.From = "store", []string{a.Name}
	return sim.Line{Stations: []sim.Station{a, b}, Buffers: []sim.Buffer{store}}
}

// Pieces go in at most every 1.5 s and out at most every 2 s. A station that has its place reserved waits as well when
// its cycle has ended.
func TestCourseOfRatesOfAStore(t *testing.T) {
	ratesOfAStore(t, one("A", "", 1))
	before := one("A", "", 1)
	before.BlocksBefore = true
	ratesOfAStore(t, before)
}

func ratesOfAStore(t *testing.T, a sim.Station) {
	t.Helper()
	course{
		line:    storeLine(a, one("B", "store", 1), sim.Buffer{Holds: 10, In: 3 * s / 2, Out: 2 * s}),
		measure: 6 * s,
		want: `
			0   A running, B starved
			1   B running              # in at 1, the next from 2.5; out at 1, the next from 3
			2   A blocked, B starved
			2.5 A running, store 1     # the next from 4
			3   B running, store 0     # the next from 5
			3.5 A blocked
			4   A running, B starved, store 1
			5   A blocked, B running, store 0
			5.5 A running, store 1
		`,
	}.follow(t)
}

// Two pieces always stay, until no more can come: A has made its five at 5.
func TestCourseOfAStoreThatKeeps(t *testing.T) {
	a := one("A", "", 1)
	a.Supply = 5
	course{
		line:    storeLine(a, one("B", "store", 1), sim.Buffer{Holds: 10, Keeps: 2}),
		measure: 20 * s,
		want: `
			0 A running, B starved
			1 store 1
			2 store 2
			3 B running     # the third is the first that may go
			5 A starved
			6 store 1       # no more can come
			7 store 0
			8 B starved
		`,
		counts: `B: cycles 5
			store: empty 20 s, level time 10000000  # never 3 for longer than an instant; 1 in 1-2, 2 in 2-6, 1 in 6-7`,
		end: "input used up",
	}.follow(t)
}

// The store stops for 2 s after every three pieces that went in.
func TestCourseOfTheStopsOfAStore(t *testing.T) {
	stop := sim.Stop{Name: "jam", Clock: sim.PieceClock, Every: sim.Fixed(3), Lasts: sec(2), Class: sim.Breakdown}
	line := storeLine(one("A", "", 1), one("B", "store", 1.5), sim.Buffer{Holds: 10, Stops: []sim.Stop{stop}})
	rec := course{
		line:    line,
		measure: 8*s + s/2,
		want: `
			0   A running, B starved
			1   B running
			2   store 1
			2.5 store 0
			3   store 1                # the third piece: stopped from 3 to 5
			4   A blocked, B starved   # nothing goes in or out
			5   A running, B running   # B takes the third, A puts the fourth
			6   store 2
			6.5 store 1
			7   store 2                # the sixth: stopped from 7 to 9
			8   A blocked, B starved
		`,
	}.follow(t)
	if got := rec.Buffers[0].Stops[0]; got != (sim.StopRecord{Count: 2, Down: 3*s + s/2}) { // 3-5, 7-8.5
		t.Errorf("the stops of the store: %+v", got)
	}
	m := compile(t, line)
	if names, classes := m.StoreStopNames(0), m.StoreStopClasses(0); len(names) != 1 || names[0] != "jam" || classes[0] != sim.Breakdown {
		t.Errorf("the store has stops %q of classes %v", names, classes)
	}
}

// A belt with a stop by the calendar stands meanwhile, and the one operator is away until 6: waiting 5-6, down 6-8.
func TestCourseOfACalendarStopOfABelt(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "check", Clock: sim.CalendarClock, Every: sec(3), Lasts: sec(3), Crew: sim.Work{Crew: "operators"}}}
	line := storeLine(a, one("B", "store", 1), sim.Buffer{
		Holds: 10, Transit: 4 * s, Conveyor: true,
		Stops: []sim.Stop{{Name: "drive", Clock: sim.CalendarClock, Every: sec(5), Lasts: sec(2), Crew: sim.Work{Crew: "operators"}}},
	})
	line.Crews = []sim.Crew{{Name: "operators", People: 1}}
	rec := course{
		line:    line,
		measure: 12 * s,
		want: `
			0  A running, B starved
			2  store 1                # due at 6
			3  A down (check)         # the operator works there until 6; 1 s of the cycle is left
			6  A running              # the belt stands since 5; the operator goes to it
			7  A blocked              # nothing goes onto it
			8  A running, store 2     # the belt goes on: the first piece, 1 s from the exit, is due at 9, the second at 12
			9  A down (check), B running, store 1  # the clock of the check ran from 6 on
			10 B starved
		`,
	}.follow(t)
	if got := rec.Buffers[0].Stops[0]; got != (sim.StopRecord{Count: 1, Waiting: 1 * s, Down: 2 * s}) {
		t.Errorf("the stops of the belt: %+v", got)
	}
}

// Beside the line: pieces go straight while B takes them, into the store while it does not, and B has them
// back when it takes more than comes.
func TestCourseOfAStoreBesideTheLine(t *testing.T) {
	b := one("B", "store", 0.4)
	b.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(2.5), Lasts: sec(3)}}
	for _, lastIn := range []bool{false, true} {
		rec := course{
			line:    storeLine(one("A", "", 1), b, sim.Buffer{Kind: sim.BesideLine, Holds: 5, LastIn: lastIn}),
			measure: 8 * s,
			want: `
				0   A running, B starved
				1   B running              # straight through
				1.4 B starved
				2   B running
				2.4 B starved
				2.5 B down (jam)
				3   store 1                # waits on the way past
				4   store 2                # beside the line
				5   store 3
				5.5 B running, store 2     # what waits on the way past
				5.9 store 1                # B takes from the store
				6   store 2                # waits on the way past: B is at work
				6.3 store 1
				6.7 store 0                # from the store
				7   store 1
				7.1 store 0
				7.5 B starved
			`,
			counts: `store: in 7, out 7, empty 4.2 s`, // below one piece until 3, 6.7-7 and 7.1-8
		}.follow(t)
		if r := &rec.Buffers[0]; r.Kept != 2 || r.GivenBack != 2 || r.RanDry != 11*s/5 { // starved 0-1, 1.4-2, 2.4-2.5, 7.5-8
			t.Errorf("kept %d, given back %d, dry for %d; by hand 2, 2 and 2.2 s", r.Kept, r.GivenBack, r.RanDry)
		}
	}
}

// When both end in the same instant, the piece goes straight.
func TestStoreBesideTheLineComesSecond(t *testing.T) {
	rec := compile(t, storeLine(one("A", "", 1), one("B", "store", 1), sim.Buffer{Kind: sim.BesideLine, Holds: 5, AtStart: 3})).
		NewEngine().Run(sim.Options{WarmUp: 1, Measure: 10 * s})
	// At 0 B takes one of the three, at 1 … 10 it takes what A gives.
	if r := &rec.Buffers[0]; r.Kept != 0 || r.GivenBack != 0 || r.Level != [2]int64{2, 2} || r.Out != 10 {
		t.Errorf("kept %d, given back %d, level %v, out %d", r.Kept, r.GivenBack, r.Level, r.Out)
	}
}

// Out of the store one piece every 0.5 s, but one every 2.5 s while A runs.
func TestCourseOfASurplus(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(5), Lasts: sec(4)}}
	rec := course{
		line: storeLine(a, one("B", "store", 0.4), sim.Buffer{
			Kind: sim.BesideLine, Holds: 5, AtStart: 5, Out: s / 2, Surplus: 5 * s / 2,
		}),
		measure: 8 * s,
		want: `
			0   A running, B running, store 4
			0.4 B starved
			2   B running                    # straight through
			2.4 B starved
			2.5 B running, store 3           # 2.5 s after the last
			2.9 B starved
			4   B running
			4.4 B starved
			5   A down (jam), B running, store 2
			5.4 B starved
			5.5 B running, store 1           # A does not run: 0.5 s after the last
			5.9 B starved
			6   B running, store 0
			6.4 B starved
		`,
	}.follow(t)
	if r := &rec.Buffers[0]; r.GivenBack != 5 || r.RanDry != 8*s/5 { // 6.4-8
		t.Errorf("given back %d, dry for %d; by hand 5 and 1.6 s", r.GivenBack, r.RanDry)
	}
}

// One comes every 1 s, B takes one every 0.6 s, 100 lie in the store and leave it one every 2 s while A runs: at 0, at 2.6
// when the straight one of 2 is done, at 4.6 … 198.6. Straight come 3,599 within the hour. What meets B at work with a piece of
// the store waits 0.2 s for it and is not kept: 3,599 + 100 go on, and the store holds 100 × 200 s / 2 in an hour, 2.8.
func TestASurplusEmptiesTheStore(t *testing.T) {
	rec := compile(t, storeLine(one("A", "", 1), one("B", "store", 0.6), sim.Buffer{
		Kind: sim.BesideLine, Holds: 1000, AtStart: 100, Surplus: 2 * s,
	})).NewEngine().Run(sim.Options{Measure: sim.Hour})
	if r := &rec.Buffers[0]; r.Out != 3699 || r.Kept != 0 || r.GivenBack != 100 {
		t.Errorf("out %d, kept %d, given back %d; by hand 3,699, 0 and 100", r.Out, r.Kept, r.GivenBack)
	}
}

// Four come at once every 1 s, B takes three every 0.6 s: a fifth of its five a second is left, one a second. The store gives
// it just that, 60 a minute: what has come out of it while B was at work lies ready, at most a take of three. So of 900 pieces
// 600 have left after 10 min, but for what a take begins or waits for, and nothing of what came straight is kept. A
// cycle of 0.5 s, which leaves B two a second, changes nothing.
func TestASurplusHasItsRateBehindPiecesThatComeAtOnce(t *testing.T) {
	for _, cycle := range []float64{0.6, 0.57, 0.5} {
		a, b := one("A", "", 1), one("B", "store", cycle)
		a.Gives, b.Takes = 4, 3
		rec := compile(t, storeLine(a, b, sim.Buffer{Kind: sim.BesideLine, Holds: 1000, AtStart: 900, Surplus: s})).
			NewEngine().Run(sim.Options{Measure: 10 * sim.Minute})
		if r := &rec.Buffers[0]; r.Kept != 0 || r.GivenBack < 597 || r.GivenBack > 603 {
			t.Errorf("with a cycle of %g s kept %d, given back %d; by hand 0 and 600, ± a take of three", cycle, r.Kept, r.GivenBack)
		}
	}
}
