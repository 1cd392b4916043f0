package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The smallest numbers of places with which a line cannot lock, by hand: one to be taken may lie there
// beside what is given at once. Without transit and reservation the last piece passes
// straight through, so max(gives, takes) − 1; else gives + takes − 1.
func TestSmallestPlaces(t *testing.T) {
	for _, c := range []struct {
		name         string
		gives, takes int64
		transit      sim.Micros
		before       bool
		want         int64
	}{
		{"hand-over", 1, 1, 0, false, 0},
		{"gives more", 4, 3, 0, false, 3},
		{"takes more", 1, 10, 0, false, 9},
		{"transit", 4, 3, sim.Second, false, 6},
		{"before the cycle", 4, 3, 0, true, 6},
	} {
		line := sim.Line{
			Stations: []sim.Station{
				{Name: "a", Takes: 1, Gives: c.gives, Cycle: sim.Fixed(1e6), BlocksBefore: c.before},
				{Name: "b", From: "store", Takes: c.takes, Gives: 1, Cycle: sim.Fixed(1e6)},
			},
			Buffers: []sim.Buffer{{Name: "store", From: []string{"a"}, Holds: sim.Smallest, Transit: c.transit}},
		}
		m := compile(t, line)
		if got := m.Places()[0].Capacity; got != c.want {
			t.Errorf("%s: %d places, want %d", c.name, got, c.want)
		}
		line.Buffers[0].Holds = c.want - 1
		if _, err := sim.Compile(line); err == nil && c.want > 0 {
			t.Errorf("%s: %d places are accepted", c.name, c.want-1)
		}
	}
}
