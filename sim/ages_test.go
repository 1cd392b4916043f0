package sim_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// Following ages changes nothing else, whatever lies in the line.
func TestRandomLinesAgesChangeNothing(t *testing.T) {
	onRandomLines(t, agesChangeNothing)
}

func TestRandomStoresAgesChangeNothing(t *testing.T) {
	onLines(t, randomStores, agesChangeNothing)
}

func agesChangeNothing(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
	e := m.NewEngine()
	plain := e.Run(o)
	for i := range line.Stations {
		o.AgesAt = append(o.AgesAt, i)
	}
	rec := e.Run(o)
	passed := int64(0)
	for i := range rec.Stations {
		if members := (&holder{line: line, m: m}).members(i); members[len(members)-1] == i {
			passed += rec.Stations[i].Passed
		}
		for j := range rec.Stations[i].Checks {
			c := &rec.Stations[i].Checks[j]
			if int64(len(c.Exposures)) != c.Count || len(c.Exposures) > 0 && slices.Min(c.Exposures) < 0 {
				t.Errorf("%s: %d tests with exposures %v", line.Stations[i].Name, c.Count, c.Exposures)
			}
			c.Exposures = nil
		}
	}
	if rec.Ages.Count != passed {
		t.Errorf("%d ages, %d pieces passed", rec.Ages.Count, passed)
	}
	rec.Ages = nil
	if d := cmp.Diff(plain, rec); d != "" {
		t.Error(d)
	}
	o.AgesAt = nil
	if d := cmp.Diff(plain, e.Run(o)); d != "" {
		t.Error("after ages: ", d)
	}
}

// agesOf runs a line and returns the ages behind its last station.
func agesOf(t *testing.T, line sim.Line, o sim.Options) (sim.Record, *sim.Ages) {
	t.Helper()
	o.AgesAt = []int{len(line.Stations) - 1}
	rec := compile(t, line).NewEngine().Run(o)
	return rec, rec.Ages
}

// Two stations and a belt without stops: every piece is as old as two cycles and the transit, and what the
// belt holds up.
func TestAgesOfASteadyLine(t *testing.T) {
	belt := sim.Buffer{Name: "belt", Holds: 10, Transit: 7 * s, Conveyor: true}
	_, ages := agesOf(t, withBuffer(one("A", "", 2), one("B", "", 2), belt), sim.Options{Measure: 101 * s})
	// B ends at 11, 13 … 99: 45 pieces, each 2 + 7 + 2 s old.
	if ages.Count != 45 || ages.Sum != 45*11*int64(s) {
		t.Errorf("got %d ages that sum to %d", ages.Count, ages.Sum)
	}
	if want := sim.AgeClass(11 * s); ages.Classes[want] != 45 {
		t.Errorf("the classes are %v", ages.Classes)
	}
}

// Little's law by hand. A works in 2 s, B in 3 s, three places between: from 20 s on the line is full. In a
// window of 6 s, a multiple of all cycles, the mean content is the number of pieces that leave a second times their mean age.
func TestLittlesLaw(t *testing.T) {
	line := withBuffer(one("A", "", 2), one("B", "", 3), sim.Buffer{Name: "buffer", Holds: 3})
	rec, ages := agesOf(t, line, sim.Options{WarmUp: 60 * s, Measure: 60 * s})
	// The buffer holds 3 from when A, held until B takes, puts its piece, so always; 1 is in B, 1 in A: 5. B gives one in
	// 3 s, so that each is 15 s old.
	if ages.Count != 20 || ages.Sum != 20*15*int64(s) {
		t.Errorf("got %d ages that sum to %d", ages.Count, ages.Sum)
	}
	content := float64(rec.Buffers[0].LevelTime)/60e6 + 2 // in the buffer, and one at each station, always
	if flow := float64(ages.Count) / 60; content != flow*float64(ages.Sum)/float64(ages.Count)/1e6 {
		t.Errorf("the mean content is %v, %v a second times a mean age of %v is not", content, flow, float64(ages.Sum)/float64(ages.Count)/1e6)
	}
}

// First in, first out: no piece is younger than the cycles and transits of its way.
func TestRandomLinesAgesAreLongEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := &liner{t: t, unit: coarseGrid}
		least := sim.Micros(0)
		for i := range l.count("stations", 1, 5) {
			st := one(fmt.Sprint("station ", i), "", 1)
			cycle := l.time("cycle", 50_000, 2*s)
			st.Cycle = sim.Fixed(float64(cycle))
			least += cycle
			st.Takes, st.Gives = l.pieces("takes", 1, 4), l.pieces("gives", 1, 4)
			if l.chance("stops", 2) {
				st.Stops = []sim.Stop{{Name: "jam", Every: l.must(sim.Exponential(5)), Lasts: l.law("lasts", 50_000, 5*s)}}
			}
			if i > 0 {
				before := &l.line.Stations[i-1]
				b := sim.Buffer{Name: fmt.Sprint("buffer ", i), From: []string{before.Name}, Holds: 8 + l.pieces("places", 0, 20)}
				if l.chance("belt", 2) {
					b.Conveyor, b.Transit = true, l.time("transit", 50_000, 5*s)
					least += b.Transit
				}
				st.From, l.line.Buffers = b.Name, append(l.line.Buffers, b)
			}
			l.line.Stations = append(l.line.Stations, st)
		}
		m, err := sim.Compile(l.line)
		if err != nil {
			t.Fatal(err)
		}
		rec := m.NewEngine().Run(sim.Options{Seed: 5, Measure: 100 * s, AgesAt: []int{len(l.line.Stations) - 1}})
		for class, n := range rec.Ages.Classes {
			if n > 0 && class < sim.AgeClass(least) {
				t.Errorf("%d pieces of class %d, the least way takes %d, class %d", n, class, least, sim.AgeClass(least))
			}
		}
		if rec.Ages.Sum < rec.Ages.Count*int64(least) {
			t.Errorf("%d pieces have ages that sum to %d, the least is %d each", rec.Ages.Count, rec.Ages.Sum, least)
		}
	})
}

// Last in, first out: the piece that B takes when its jam is over is the last that has come.
//
// A gives one a second, born a second before. B works the first from 1 to 2, the second (born 1) from 2 with a jam from
// 2.5 to 5.5, until 6. The third, fourth and fifth lie in the store then; the sixth comes after B has taken. Until
// 8 s three pieces leave: at 2 (2 s old), at 6 (5 s) and at 7: the third, born at 2, or the fifth, born at 4.
func TestAgesOfLastInFirstOut(t *testing.T) {
	for lastIn, want := range map[bool]sim.Micros{false: (2 + 5 + 5) * s, true: (2 + 5 + 3) * s} {
		b := one("B", "", 1)
		b.Stops = []sim.Stop{jamAt(2.5, 3)}
		line := withBuffer(one("A", "", 1), b, sim.Buffer{Name: "store", Holds: 9, LastIn: lastIn})
		_, ages := agesOf(t, line, sim.Options{Measure: 8 * s})
		if ages.Count != 3 || ages.Sum != int64(want) {
			t.Errorf("last in %v: %d ages that sum to %d, not to %d", lastIn, ages.Count, ages.Sum, want)
		}
	}
}

// The oldest part counts: C puts a piece of A, and one of S from a store that is full, together.
func TestAgesOfTheOldestPart(t *testing.T) {
	c := one("C", "of A", 4)
	c.Also = []sim.Input{{From: "of S", Takes: 1}}
	_, ages := agesOf(t, sim.Line{
		Stations: []sim.Station{one("A", "", 4), one("S", "", 1), c},
		Buffers:  []sim.Buffer{{Name: "of A", From: []string{"A"}, Holds: 1}, {Name: "of S", From: []string{"S"}, Holds: 3}},
	}, sim.Options{Measure: 13 * s})
	// C begins at 4 and at 8, and ends at 8 and 12. S has ended at 1, 2, 3, 4 (held until C takes at 4; its next is done at
	// 5): the parts of S are born at 0 and 1, those of A at 0 and 4. The pieces are 8 and 11 s old.
	if ages.Count != 2 || ages.Sum != 19*int64(s) {
		t.Errorf("got %d ages that sum to %d", ages.Count, ages.Sum)
	}
}

// A check at B takes the good pieces of two cycles after four, for 3 s.
func TestExposures(t *testing.T) {
	check := sim.Check{Name: "leak test", Every: sim.Fixed(4), Clock: sim.CycleClock, Takes: 2, Lasts: sec(3)}
	b := one("B", "", 1)
	b.Checks = []sim.Check{check}
	for name, c := range map[string]struct {
		buffer sim.Buffer
		want   []int64
	}{
		// B ends at 2, 3 …; its fifth and sixth pieces, born at 4 and 5, are tested from 7 to 10: nothing was good before, A
		// has given 10. The next, from the cycle that ends at 11, are tested from 12 to 15: A has given 15, and 4 when the oldest of
		// the good ones was born.
		"first in, first out": {sim.Buffer{Name: "store", Holds: 9}, []int64{10, 11}},
		// Three lie there at first. B takes two of them, at 0 and 1, and from then on always what came last: the piece
		// that A gave a second ago. Its fifth cycle, from 4 to 5, has the piece born at 2: the test is over at 9, A
		// has given 9. The next is over at 14, A has given 14, and 2 when the good one was born; and one of the three still
		// lies there.
		"last in, first out": {sim.Buffer{Name: "store", Holds: 9, AtStart: 3, LastIn: true}, []int64{9, 13}},
	} {
		m := compile(t, withBuffer(one("A", "", 1), b, c.buffer))
		rec := m.NewEngine().Run(sim.Options{Measure: 15*s + 1, AgesAt: []int{}})
		if d := cmp.Diff(c.want, rec.Stations[1].Checks[0].Exposures); d != "" {
			t.Errorf("%s: %s", name, d)
		}
		if rec.Ages.Count != 0 {
			t.Errorf("%s: %d ages that nobody asked for", name, rec.Ages.Count)
		}
	}
}
