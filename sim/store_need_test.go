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
		store.AtStart = l.pieces("at start", 0, 5)
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
