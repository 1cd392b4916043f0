package sim_test

import (
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// Four come over a belt at once every 1 s; C takes three every 0.6 s, five a second, and needs nothing of the store. Of the
// four three are taken at once and one waits; then two wait, then three, which go 0.6 s later: at most 4 + 3 - 1 = 6 wait.
func TestNothingGoesIntoAStoreThatIsNotNeeded(t *testing.T) {
	a, c := one("A", "", 1), one("C", "store", 0.6)
	a.Gives, a.BlocksBefore, c.Takes = 4, true, 3
	line := sim.Line{Stations: []sim.Station{a, c}, Buffers: []sim.Buffer{
		{Name: "belt", From: []string{"A"}, Holds: 129, Transit: 20 * s, Conveyor: true},
		{Name: "store", From: []string{"belt"}, Kind: sim.BesideLine, Holds: sim.Unlimited, Surplus: 2 * s},
	}}
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 10 * sim.Minute})
	if r := &rec.Buffers[1]; r.Kept != 0 || r.GivenBack != 0 || r.Out < 4*579-2-3 {
		t.Errorf("kept %d, given back %d, %d out; by hand nothing, and the four of each of 579 s but a rest", r.Kept, r.GivenBack, r.Out)
	}
}

// withoutNeed is a line without stops whose last station is at least as fast as the first, over a store or a magazine.
func withoutNeed(t *rapid.T, kind sim.Kind) sim.Line {
	l := &liner{t: t, unit: coarseGrid}
	a, c := one("A", "", 1), one("C", "store", 1)
	a.Gives, c.Takes = l.pieces("gives", 1, 6), l.pieces("takes", 1, 6)
	a.BlocksBefore = l.chance("before", 2)
	cycle := l.time("cycle", 200_000, 2*s)
	a.Cycle = sim.Fixed(float64(cycle))
	c.Cycle = sim.Fixed(float64(int64(cycle) * c.Takes / a.Gives * 100 / l.pieces("faster, %", 100, 200)))
	store := sim.Buffer{Name: "store", From: []string{"A"}, Kind: kind, Holds: l.pieces("holds", 10, 50), LastIn: l.chance("last in", 2)}
	if kind == sim.HandMagazine {
		store.Hand = sim.Hand{PerPiece: l.time("a piece by hand", 50_000, 400_000), Load: l.pieces("load", 6, 10)}
	}
	if l.chance("belt", 2) {
		store.From = []string{"belt"}
		l.line.Buffers = []sim.Buffer{{Name: "belt", From: []string{"A"}, Holds: l.pieces("belt holds", 40, 100), Transit: l.time("transit", 50_000, 3*s), Conveyor: true}}
	}
	l.line.Stations, l.line.Buffers = []sim.Station{a, c}, append(l.line.Buffers, store)
	return l.line
}

// Without stops, and with a station behind that keeps up, nothing goes into a store beside the line.
func TestRandomStoreKeepsNothingWithoutNeed(t *testing.T) {
	out := int64(0)
	rapid.Check(t, func(t *rapid.T) {
		line := withoutNeed(t, sim.BesideLine)
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		rec := m.NewEngine().Run(sim.Options{Measure: 5 * sim.Minute})
		r := &rec.Buffers[len(line.Buffers)-1]
		if r.Kept != 0 || r.GivenBack != 0 {
			t.Errorf("kept %d, given back %d", r.Kept, r.GivenBack)
		}
		out += r.Out
	})
	if out < 1000 {
		t.Errorf("only %d pieces", out)
	}
}

// Nor does anybody carry at an empty hand magazine.
func TestRandomHandMagazineWithoutNeed(t *testing.T) {
	out := int64(0)
	rapid.Check(t, func(t *rapid.T) {
		line := withoutNeed(t, sim.HandMagazine)
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		rec := m.NewEngine().Run(sim.Options{Measure: 5 * sim.Minute})
		r := &rec.Buffers[len(line.Buffers)-1]
		if r.Kept != 0 || r.ByHand != 0 || r.HandTime != 0 {
			t.Errorf("kept %d, by hand %d, for %d µs", r.Kept, r.ByHand, r.HandTime)
		}
		out += r.Out
	})
	if out < 1000 {
		t.Errorf("only %d pieces", out)
	}
}

// A is down from 1.5 on: whoever carries goes on while nothing comes, a load of three in 1.5 s, until the magazine is empty.
func TestCourseOfLoadsCarriedOutOneAfterTheOther(t *testing.T) {
	a, store := one("A", "", 1), handMagazine()
	a.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(1.5), Lasts: sec(20)}}
	store.AtStart = 9
	rec := course{
		line:    storeLine(a, one("B", "store", 0.8), store),
		measure: 12*s + s/2,
		want: `
			0    A running, B starved, store 9  # after a cycle of B a load is carried out, from 0.8 to 2.3
			1    B running                      # straight
			1.5  A down (jam)
			1.8  B starved
			2.3  B running, store 8             # one has come since 0.8: nobody goes on
			3.1  store 7
			3.9  store 6
			4.7  B starved                      # after another cycle a load is carried out, from 5.5 to 7
			7    B running, store 5             # and another, from 7 to 8.5
			7.8  store 4
			8.6  store 3
			9.4  store 2
			10.2 store 1
			11   store 0
			11.8 B starved
		`,
		counts: `store: kept 0, given back 9, by hand 9, in 1, out 10`,
	}.follow(t)
	if got := rec.Buffers[0].HandTime; got != 9*s/2 {
		t.Errorf("somebody carried for %d µs, by hand computed 4.5 s", got)
	}
}

// Pieces come over a belt at 3, 4, 5 … and B, down from 5.1 to 15.1, takes the first three. That of 6 waits on the way past.
// The next three wait at 9: a load, carried in at 9, 9.5 and 10. Other loads wait at 12 and at 15: of the latter the third
// goes straight at 15.8, when B takes what waits since 6, and that of 16 is carried in; then B takes what comes.
func TestOnlyAWholeLoadIsCarriedIn(t *testing.T) {
	b, store := one("B", "store", 0.8), handMagazine()
	b.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(5.1), Lasts: sec(10)}}
	store.Name, store.From = "store", []string{"belt"}
	line := sim.Line{Stations: []sim.Station{one("A", "", 1), b}, Buffers: []sim.Buffer{
		{Name: "belt", From: []string{"A"}, Holds: 10, Transit: 2 * s, Conveyor: true}, store,
	}}
	for _, c := range []struct {
		until sim.Micros
		kept  int64
	}{{89, 0}, {94, 1}, {104, 3}, {119, 3}, {124, 4}, {180, 9}} {
		rec := compile(t, line).NewEngine().Run(sim.Options{Measure: c.until * s / 10})
		if r := &rec.Buffers[1]; r.Kept != c.kept || r.GivenBack != 0 {
			t.Errorf("until %d tenths of a second: kept %d, given back %d; by hand %d and 0", c.until, r.Kept, r.GivenBack, c.kept)
		}
	}
}
