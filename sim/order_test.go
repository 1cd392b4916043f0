package sim_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// shuffled is the same line, declared in another order: stations, buffers, feeders of a
// buffer, stops, materials, crews, scrap rules.
func shuffled(t *rapid.T, line sim.Line) sim.Line {
	other := sim.Line{
		Stations: permuted(t, line.Stations), Buffers: permuted(t, line.Buffers), Crews: permuted(t, line.Crews),
		Calendar: line.Calendar, Orders: line.Orders,
	}
	other.Orders.CountedAfter = permuted(t, line.Orders.CountedAfter)
	for i := range other.Crews {
		other.Crews[i].CanAlso = permuted(t, other.Crews[i].CanAlso)
	}
	for i := range other.Stations {
		st := &other.Stations[i]
		st.Stops, st.Materials = permuted(t, st.Stops), permuted(t, st.Materials)
		st.Checks = permuted(t, st.Checks)
		st.AfterStop, st.AfterStandstill = permuted(t, st.AfterStop), permuted(t, st.AfterStandstill)
	}
	for i := range other.Buffers {
		other.Buffers[i].From = permuted(t, other.Buffers[i].From)
		other.Buffers[i].Stops = permuted(t, other.Buffers[i].Stops)
	}
	return other
}

func permuted[T any](t *rapid.T, list []T) []T {
	if len(list) < 2 {
		return slices.Clone(list)
	}
	return rapid.Permutation(list).Draw(t, "order")
}

// The order of declaration never matters: all figures are equal by name.
func TestRandomLinesInAnotherOrder(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		rec := m.NewEngine().Run(o)
		other := shuffled(t, line)
		m2, err := sim.Compile(other)
		if err != nil {
			t.Fatalf("in another order the line is refused: %v", err)
		}
		rec2 := m2.NewEngine().Run(o)
		for _, d := range byName(figures(m, line, &rec), figures(m2, other, &rec2)) {
			t.Error(d)
		}
		if rec.End != rec2.End || !slices.Equal(rec.Locked, rec2.Locked) {
			t.Errorf("ended with %v %q and with %v %q", rec.End, rec.Locked, rec2.End, rec2.Locked)
		}
	})
}
