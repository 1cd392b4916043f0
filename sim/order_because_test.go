package sim_test

import (
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// A is starved from 3, when the batch is used up, until the changeover begins at 4, and from 9 on; B waits for the first
// piece after the changeover, from 6 to 7, which goes back to it. What B waits for at the very beginning is A's cycle.
func TestWaitsGoBackToOrders(t *testing.T) {
	line := sim.Line{Stations: []sim.Station{one("A", "", 1), one("B", "A", 1)}, Orders: batches("B", 2, "", 3, 3)}
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 12 * s, Attribute: true})
	want := [][]sim.Because{
		{
			{Station: 0, Cause: sim.CauseOrder, StarvedSpells: 2, Starved: 4 * s}, // 3 to 4, 9 to 12
		},
		{
			{Station: 0, Cause: sim.CauseOrder, StarvedSpells: 2, Starved: 3 * s}, // 6 to 7, 10 to 12
			{Station: 0, Cause: sim.CausePace, StarvedSpells: 1, Starved: 1 * s},
		},
	}
	for i := range want {
		if got := rec.Stations[i].Because; len(got) != len(want[i]) || !sameCauses(got, want[i]) {
			t.Errorf("the waits of %s go back to\n%+v, by hand\n%+v", line.Stations[i].Name, got, want[i])
		}
	}
}

func sameCauses(a, b []sim.Because) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// Causes sum to the states with orders too.
func TestRandomOrdersCausesSumToTheStates(t *testing.T) {
	onOrders(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		o.Attribute = true
		rec := m.NewEngine().Run(o)
		for i := range rec.Stations {
			r := &rec.Stations[i]
			var blocked, starved, waiting, down, planned sim.Micros
			for _, b := range r.Because {
				blocked, starved = blocked+b.Blocked, starved+b.Starved
			}
			for _, b := range r.StoppedBy {
				waiting, down, planned = waiting+b.Waiting, down+b.Down, planned+b.Planned
			}
			got := [5]sim.Micros{blocked, starved, waiting, down, planned}
			want := [5]sim.Micros{r.States[sim.Blocked], r.States[sim.Starved], r.States[sim.Waiting], r.States[sim.Down], r.States[sim.PlannedStop]}
			if got != want {
				t.Errorf("%s: blocked, starved, waiting, down, planned stop go back for %v to causes, the states have %v", line.Stations[i].Name, got, want)
			}
		}
	})
}
