package sim_test

import (
	"flag"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// More lines than usual, because they are cheap; a failure prints its seed, no file is left.
func init() {
	for name, value := range map[string]string{"rapid.checks": "300", "rapid.nofailfile": "true", "rapid.shrinktime": "5s"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
}

// onRandomLines checks a property of random lines, on a fine and on a coarse grid of time.
func onRandomLines(t *testing.T, property func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options)) {
	t.Helper()
	onLines(t, randomLine, property)
}

func onLines(t *testing.T, make func(*rapid.T, sim.Micros) sim.Line, property func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options)) {
	for name, unit := range map[string]sim.Micros{"fine": fineGrid, "coarse": coarseGrid} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				line := make(t, unit)
				m, err := sim.Compile(line)
				if err != nil {
					t.Fatalf("the line is refused: %v", err)
				}
				property(t, line, m, randomOptions(t, unit))
			})
		})
	}
}

func randomOptions(t *rapid.T, unit sim.Micros) sim.Options {
	l := liner{t: t, unit: unit}
	return sim.Options{
		Seed: rapid.Uint64().Draw(t, "seed"), Replication: l.count("replication", 0, 3),
		WarmUp: l.time("warm-up", 0, 20*s), Measure: l.time("measure", 1*s, 80*s),
	}
}

func TestRandomLinesConserve(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		var trace sim.Trace
		o.Trace, o.Classes = &trace, true
		rec := m.NewEngine().Run(o)
		for _, fault := range faults(line, m, o, &rec, &trace) {
			t.Error(fault)
		}
		for _, fault := range idleness(line, m, &trace) {
			t.Error(fault)
		}
		if rec.End == sim.Deadlock {
			t.Errorf("deadlock of %q since %d", rec.Locked, rec.EndedAt)
		}
	})
}

// A record is a function of the model and the options: not of the trace, of the classes
// or of what the engine ran before.
func TestRandomLinesSameRecord(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		fresh := m.NewEngine().Run(o)
		same := func(what string, rec sim.Record) {
			if d := cmp.Diff(fresh, rec); d != "" {
				t.Errorf("%s: %s", what, d)
			}
		}
		e := m.NewEngine()
		other := o
		other.Seed, other.WarmUp, other.Trace, other.Classes = o.Seed+1, 0, &sim.Trace{}, true
		e.Run(other)
		same("an engine used before", e.Run(o))
		traced := o
		traced.Trace = &sim.Trace{}
		same("with a trace", e.Run(traced))
		classed := o
		classed.Classes = true
		rec := e.Run(classed)
		for i := range rec.Buffers {
			rec.Buffers[i].Classes = nil
		}
		same("with classes", rec)
		same("after classes", e.Run(o))
	})
}

// A warm-up only cuts: the trace up to its end is that of a run without.
func TestRandomLinesWarmUpCuts(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		var cut, whole sim.Trace
		o.Trace = &cut
		m.NewEngine().Run(o)
		o.Trace, o.WarmUp, o.Measure = &whole, 0, o.WarmUp+o.Measure
		m.NewEngine().Run(o)
		if d := cmp.Diff(timeline(line, m, &whole), timeline(line, m, &cut)); d != "" {
			t.Error(d)
		}
		if d := cmp.Diff(whole.Stops, cut.Stops); d != "" {
			t.Error(d)
		}
	})
}
