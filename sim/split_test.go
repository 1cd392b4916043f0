package sim_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// What is counted in [T0, T1) is what is counted in [T0, t) and in [t, T1).
func TestRandomLinesWindowSplits(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		unit := sim.Micros(1)
		if o.Measure%coarseGrid == 0 {
			unit = coarseGrid
		}
		first, second := o, o
		first.Measure = unit * sim.Micros(rapid.Int64Range(0, int64(o.Measure/unit)).Draw(t, "split"))
		second.WarmUp, second.Measure = o.WarmUp+first.Measure, o.Measure-first.Measure
		e := m.NewEngine()
		whole, a, b := e.Run(o), e.Run(first), e.Run(second)
		f, fa, fb := figures(m, line, &whole), figures(m, line, &a), figures(m, line, &b)
		for name, value := range f {
			if want, adds := joined(name, fa, fb); adds && value != want {
				t.Errorf("%s: %d in the whole window, %d and %d in its parts", name, value, fa[name], fb[name])
			}
		}
		chained(t, &a, &b)
	})
}

// joined is the figure of the whole window from those of its parts; false for what
// is no figure of a window.
func joined(name string, a, b map[string]int64) (int64, bool) {
	switch {
	case name == "run ended":
		return 0, false
	case strings.HasSuffix(name, " max"):
		return max(a[name], b[name]), true
	case strings.HasSuffix(name, " at first"):
		return a[name], true
	case strings.HasSuffix(name, " at last"):
		return b[name], true
	}
	return a[name] + b[name], true
}

// chained: what is inside at the end of the first part is inside at the beginning of the second.
func chained(t *rapid.T, a, b *sim.Record) {
	for i := range a.Stations {
		x, y := &a.Stations[i], &b.Stations[i]
		if x.InputInside[1] != y.InputInside[0] || x.OutputInside[1] != y.OutputInside[0] || x.PartInside[1] != y.PartInside[0] {
			t.Errorf("station %d: inside %d %d and %d %d", i, x.InputInside[1], x.OutputInside[1], y.InputInside[0], y.OutputInside[0])
		}
	}
	for i := range a.Buffers {
		if a.Buffers[i].Level[1] != b.Buffers[i].Level[0] {
			t.Errorf("place %d: level %d and %d", i, a.Buffers[i].Level[1], b.Buffers[i].Level[0])
		}
	}
}
