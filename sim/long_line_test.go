package sim_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// longLine is a row of many stations: more than a word of bits, more timers than a scan.
func longLine(t *rapid.T, unit sim.Micros) sim.Line {
	l := &liner{t: t, unit: unit}
	l.crews()
	for n := range l.count("stations", 20, 90) {
		l.line.Stations = append(l.line.Stations, l.station(min(n, 1), n))
		if n > 0 {
			l.connect(n, []int{n - 1}, []int{n})
		}
	}
	l.join()
	l.extras()
	return l.line
}

// What holds for short lines holds for long ones: conservation, and that the order of
// declaration does not matter.
func TestLongLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := longLine(t, coarseGrid)
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatalf("the line is refused: %v", err)
		}
		var trace sim.Trace
		o := sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), WarmUp: 5 * s, Measure: 40 * s, Trace: &trace}
		rec := m.NewEngine().Run(o)
		for _, fault := range append(faults(line, m, o, &rec, &trace), idleness(line, m, &trace)...) {
			t.Error(fault)
		}
		if rec.End == sim.Deadlock {
			t.Errorf("deadlock of %q", rec.Locked)
		}
		other := line
		other.Stations, other.Buffers = slices.Clone(line.Stations), slices.Clone(line.Buffers)
		slices.Reverse(other.Stations)
		slices.Reverse(other.Buffers)
		m2, err := sim.Compile(other)
		if err != nil {
			t.Fatal(err)
		}
		o.Trace = nil
		rec2 := m2.NewEngine().Run(o)
		for _, d := range byName(figures(m, line, &rec), figures(m2, other, &rec2)) {
			t.Error(d)
		}
	})
}
