package sim_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/sim"
)

// The line of TestCourseOfTheExample: A is blocked from 4 to 5, blocked from 7 to 8 and down from there to 12, which is one
// standstill of 5 s; B is starved from 0 to 2 and from 11 to 14. By hand.
func TestShortStandstills(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(3), Lasts: sec(4)}}
	m := compile(t, sim.Line{Stations: []sim.Station{a, one("B", "A", 3)}})
	short := func(o sim.Options) [2][]sim.Standstills {
		o.Attribute = true
		r := m.NewEngine().Run(o)
		return [2][]sim.Standstills{r.Stations[0].Short, r.Stations[1].Short}
	}
	for _, c := range []struct {
		what string
		o    sim.Options
		want [2][]sim.Standstills
	}{
		{"not asked for", sim.Options{Measure: 16 * s}, [2][]sim.Standstills{}},
		{"under 3 s", sim.Options{Measure: 16 * s, ShortUpTo: []sim.Micros{3 * s}}, [2][]sim.Standstills{{{Count: 1, Blocked: 1 * s}}, {{Count: 1, Starved: 2 * s}}}},
		{"one of the limit is not short", sim.Options{Measure: 16 * s, ShortUpTo: []sim.Micros{5 * s}}, [2][]sim.Standstills{{{Count: 1, Blocked: 1 * s}}, {{Count: 2, Starved: 5 * s}}}},
		{"under 6 s", sim.Options{Measure: 16 * s, ShortUpTo: []sim.Micros{6 * s}}, [2][]sim.Standstills{{{Count: 2, Blocked: 2 * s, Down: 4 * s}}, {{Count: 2, Starved: 5 * s}}}},
		// From 8 on: of that from 7 to 12 the 4 s in the window count, its length is 5 s all the same.
		{"the first edge", sim.Options{WarmUp: 8 * s, Measure: 8 * s, ShortUpTo: []sim.Micros{6 * s}}, [2][]sim.Standstills{{{Count: 1, Down: 4 * s}}, {{Count: 1, Starved: 3 * s}}}},
		{"the first edge, too long", sim.Options{WarmUp: 8 * s, Measure: 8 * s, ShortUpTo: []sim.Micros{5 * s}}, [2][]sim.Standstills{{{}}, {{Count: 1, Starved: 3 * s}}}},
		// Up to 10: the standstill of A has lasted 3 s so far.
		{"the last edge", sim.Options{Measure: 10 * s, ShortUpTo: []sim.Micros{4 * s}}, [2][]sim.Standstills{{{Count: 2, Blocked: 2 * s, Down: 2 * s}}, {{Count: 1, Starved: 2 * s}}}},
	} {
		if diff := cmp.Diff(c.want, short(c.o)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.what, diff)
		}
	}
}

// Time under a stop for material is none of a short standstill, but counts in its length: A stops every 2 cycles of 2 s
// for 1 s of material, and every 3 for a jam of 2 s.
func TestShortStandstillsWithoutMaterial(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{
		{Name: "jam", Every: sim.Fixed(3), Lasts: sec(2)},
		{Name: "label roll", Every: sim.Fixed(2), Lasts: sec(1), Class: sim.MaterialChange},
	}
	m := compile(t, sim.Line{Stations: []sim.Station{a}})
	// Works 0-4, roll 4-5, works 5-7, jam 7-9, works 9-11, roll 11-12, works 12-16, and at 16 both: jam first.
	r := m.NewEngine().Run(sim.Options{Measure: 16 * s, Attribute: true, ShortUpTo: []sim.Micros{10 * s, 1 * s, 4 * s}}).Stations[0]
	if want := []sim.Standstills{{Count: 3, Down: 2 * s}, {}, {Count: 3, Down: 2 * s}}; !slices.Equal(r.Short, want) || r.States[sim.Down] != 4*s {
		t.Errorf("got %+v, down %v, want %+v", r.Short, r.States[sim.Down], want)
	}
}
