package sim_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// What a line does is its own affair: beside another line that is not connected with it, every station and every
// buffer has the same record as alone. The other has instants of its own, a start level that is looked at in most of them, and
// now and then a supply that comes to its end.
func TestALineBesideAnotherIsTheSame(t *testing.T) {
	for name, make := range map[string]func(*rapid.T, sim.Micros) sim.Line{"lines": randomLine, "stores": randomStores} {
		t.Run(name, func(t *testing.T) {
			compared := 0
			onLines(t, make, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
				if sameBesideAnother(t, line, m, o) {
					compared++
				}
			})
			if compared < 60 {
				t.Errorf("only %d lines compared", compared)
			}
		})
	}
}

// sameBesideAnother says whether there was something to compare.
func sameBesideAnother(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) bool {
	both, err := sim.Compile(withLineBeside(t, line))
	if err != nil {
		t.Fatalf("both lines are refused: %v", err)
	}
	alone, beside := m.NewEngine().Run(o), both.NewEngine().Run(o)
	if alone.End != sim.HorizonReached || beside.End != sim.HorizonReached {
		return false // when nothing moves any more, no more stops are counted; the other line may still move
	}
	for i, st := range line.Stations {
		if d := cmp.Diff(alone.Stations[i], beside.Stations[i]); d != "" {
			t.Errorf("%s: %s", st.Name, d)
		}
	}
	for i, b := range line.Buffers {
		if d := cmp.Diff(alone.Buffers[i], beside.Buffers[i]); d != "" {
			t.Errorf("%s: %s", b.Name, d)
		}
	}
	if d := cmp.Diff(alone.Crews, beside.Crews); d != "" {
		t.Error(d)
	}
	return true
}

// withLineBeside adds a line of two stations that is not connected with any other.
func withLineBeside(t *rapid.T, line sim.Line) sim.Line {
	x, y := one("other X", "", 1), one("other Y", "other buffer", 1)
	x.Cycle = sim.Fixed(float64(rapid.Int64Range(1, 30).Draw(t, "cycle of X") * int64(coarseGrid)))
	y.Cycle = sim.Fixed(float64(rapid.Int64Range(1, 30).Draw(t, "cycle of Y") * int64(coarseGrid)))
	if rapid.Bool().Draw(t, "X has a supply") {
		x.Supply = rapid.Int64Range(1, 50).Draw(t, "supply of X")
	}
	other := sim.Buffer{Name: "other buffer", From: []string{x.Name}, Holds: 9, Start: sim.Level{On: true, Level: 3}}
	line.Stations = append(slices.Clone(line.Stations), x, y)
	line.Buffers = append(slices.Clone(line.Buffers), other)
	return line
}
