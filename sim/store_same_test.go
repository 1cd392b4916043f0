package sim_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// sameRecord compares what two lines did; the number of events is no result.
func sameRecord(t *rapid.T, what string, a, b sim.Line, o sim.Options) sim.Record {
	t.Helper()
	run := func(line sim.Line) sim.Record {
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		rec := m.NewEngine().Run(o)
		rec.Events = 0
		return rec
	}
	first := run(a)
	if d := cmp.Diff(first, run(b)); d != "" {
		t.Errorf("%s: %s", what, d)
	}
	return first
}

// between says that one station puts into a buffer and one takes from it.
func between(line *sim.Line, b *sim.Buffer) bool {
	takers, feeders := 0, 0
	for i := range line.Stations {
		st := &line.Stations[i]
		if slices.Contains(b.From, st.Name) {
			feeders++
		}
		if st.From == b.Name || slices.ContainsFunc(st.Also, func(in sim.Input) bool { return in.From == b.Name }) {
			takers++
		}
	}
	return len(b.From) == 1 && feeders == 1 && takers == 1
}

// A rate that never binds changes nothing: on the coarse grid a station puts and takes at most every
// 50 ms, so that a microsecond a piece is never too short. Without stops that scrap, stops together and empty pockets: what a stop
// frees that strikes before any work, and a pocket behind a start level, wait for the next event of the line, and a rate
// adds events.
func TestRateThatNeverBindsChangesNothing(t *testing.T) {
	changed := 0
	rapid.Check(t, func(t *rapid.T) {
		line := randomLine(t, coarseGrid)
		for i := range line.Stations {
			line.Stations[i].EmptyPockets, line.Stations[i].StopsWith = sim.EmptyPockets{}, ""
			for j := range line.Stations[i].Stops {
				line.Stations[i].Stops[j].Scraps = false
			}
		}
		other := line
		other.Buffers = slices.Clone(line.Buffers)
		for i := range other.Buffers {
			if between(&line, &other.Buffers[i]) {
				other.Buffers[i].In, other.Buffers[i].Out = 1, 1
				changed++
			}
		}
		sameRecord(t, "a rate of a microsecond a piece", line, other, sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: 60 * s})
	})
	if changed < 100 {
		t.Errorf("only %d rates", changed)
	}
}

// A sensor that never reports changes nothing: its delay is longer than the run.
func TestSensorThatNeverReportsChangesNothing(t *testing.T) {
	changed := 0
	for _, unit := range []sim.Micros{fineGrid, coarseGrid} {
		rapid.Check(t, func(t *rapid.T) {
			line := randomLine(t, unit)
			l := liner{t: t, unit: unit, line: line}
			other := line
			other.Buffers = slices.Clone(line.Buffers)
			for i := range other.Buffers {
				b := &other.Buffers[i]
				_, takes, _, _, _, _ := l.neighbours(b)
				if b.Transit > 0 && b.Holds >= takes && (!b.Start.On || b.Start.Level <= b.Holds) {
					b.Full = sim.Sensor{On: true, At: l.pieces("full at", max(takes, b.Start.Level), b.Holds), Delay: 61 * s, Travel: b.Transit / 2}
					changed++
				}
			}
			sameRecord(t, "a sensor that never reports", line, other, sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: 60 * s})
		})
	}
	if changed < 100 {
		t.Errorf("only %d sensors", changed)
	}
}

// What goes out first changes how long pieces stay, not how many go.
func TestLastInFirstOutGivesTheSameOutput(t *testing.T) {
	given := int64(0)
	for _, unit := range []sim.Micros{fineGrid, coarseGrid} {
		rapid.Check(t, func(t *rapid.T) {
			line := randomStores(t, unit)
			other := line
			other.Buffers = slices.Clone(line.Buffers)
			for i := range other.Buffers {
				other.Buffers[i].LastIn = !other.Buffers[i].LastIn
			}
			rec := sameRecord(t, "last in first out", line, other, sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: 60 * s})
			for i := range rec.Buffers {
				given += rec.Buffers[i].GivenBack
			}
		})
	}
	if given == 0 {
		t.Error("no store gave anything back")
	}
}

// A belt that does not accumulate is as good as one that does where the exit always takes: the station behind
// works off a piece in 40 ms, and none comes within 50 ms of another.
func TestABeltThatNeverStandsIsAsGoodAsAnother(t *testing.T) {
	passed := int64(0)
	rapid.Check(t, func(t *rapid.T) {
		l := &liner{t: t, unit: coarseGrid}
		l.crews()
		a := l.station(0, 1)
		a.Gives = 1
		b := sim.Station{Name: "packer", From: "belt", Takes: 1, Gives: 1, Cycle: sec(0.04)}
		belt := sim.Buffer{Name: "belt", From: []string{a.Name}, Holds: l.pieces("holds", 1, 20), Transit: l.time("transit", 50_000, 3*s), Conveyor: true}
		l.line.Stations, l.line.Buffers = []sim.Station{a, b}, []sim.Buffer{belt}
		other := l.line
		other.Buffers = slices.Clone(l.line.Buffers)
		other.Buffers[0].Stands = true
		rec := sameRecord(t, "a belt that stands", l.line, other, sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: 60 * s})
		passed += rec.Buffers[0].Out
	})
	if passed < 1000 {
		t.Errorf("only %d pieces", passed)
	}
}

// On any belt, one that accumulates passes at least as much as one that does not; here a plain line with stops
// by cycles.
func TestAnAccumulatingBeltPassesNoLess(t *testing.T) {
	more := 0
	rapid.Check(t, func(t *rapid.T) {
		l := &liner{t: t, unit: fineGrid}
		a, b := one("A", "", 1), one("B", "belt", 1)
		a.Cycle, b.Cycle = l.law("cycle", 50_000, 2*s), l.law("cycle", 50_000, 2*s)
		for _, st := range []*sim.Station{&a, &b} {
			st.Stops = []sim.Stop{{Name: "jam", Every: l.cycles(), Lasts: l.law("lasts", 50_000, 5*s)}}
		}
		belt := sim.Buffer{Name: "belt", From: []string{"A"}, Holds: l.pieces("holds", 1, 20), Transit: l.time("transit", 50_000, 3*s), Conveyor: true}
		passed := func(stands bool) int64 {
			belt.Stands = stands
			m, err := sim.Compile(sim.Line{Stations: []sim.Station{a, b}, Buffers: []sim.Buffer{belt}})
			if err != nil {
				t.Fatal(err)
			}
			rec := m.NewEngine().Run(sim.Options{Seed: 1, Measure: 60 * s})
			return rec.Stations[1].Passed
		}
		accumulates, stands := passed(false), passed(true)
		if accumulates < stands {
			t.Errorf("%d pieces over a belt that accumulates, %d over one that does not", accumulates, stands)
		}
		if accumulates > stands {
			more++
		}
	})
	if more == 0 {
		t.Error("both always passed the same")
	}
}
