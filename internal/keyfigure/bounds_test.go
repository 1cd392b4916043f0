package keyfigure

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// Two equal machines, x = 0.1: without buffer 1/(1+2x), without limit 1/(1+x).
// Source: the printed values 0.8333 and 0.9091 of the two-machine law (Gershwin 1994; from memory).
func TestBoundsOfTwoEqualMachines(t *testing.T) {
	stop := []sim.Stop{fixedStop("s", sim.CycleClock, 600, 1)}
	b := Derive(chain(sim.Station{Name: "a", Stops: stop}, sim.Station{Name: "b", Stops: stop})).Bounds
	near(t, "rigid", b.RigidEfficiency, 1/1.2)
	near(t, "rigid rate", b.Rigid, 50)
	near(t, "unlimited", b.Unlimited, 60/1.1)
	if b.Buffered {
		t.Error("a line of hand-overs has no buffer")
	}
	if diff := cmp.Diff([]string{"a", "b"}, b.Constraint); diff != "" {
		t.Errorf("both are as narrow: %s", diff)
	}
}

// A rigid line of three with a calendar stop: 1/(1+0.1+0.2) × 0.9, at the
// slowest speed. Hand computation.
func TestRigidLineIsTiedToTheSlowest(t *testing.T) {
	s := chain(
		sim.Station{Name: "a", Stops: []sim.Stop{fixedStop("s", sim.CycleClock, 600, 1)}},
		sim.Station{Name: "b"},
		sim.Station{Name: "c", Stops: []sim.Stop{fixedStop("s", sim.PieceClock, 300, 1), fixedStop("q", sim.CalendarClock, minutes(9), 1)}},
	)
	s.Stations[1].SetCycle = 2e6 // 30/min: 600 cycles last 20 min, 300 last 10 min
	b := Derive(s).Bounds
	near(t, "tied", b.Tied, 30)
	near(t, "efficiency", b.RigidEfficiency, 0.9/(1+0.05+0.1))
	if diff := cmp.Diff([]string{"b"}, b.Constraint); diff != "" {
		t.Error(diff)
	}
}

// sideBySide is a line of k equal machines that give into one store, and one that takes from it.
func sideBySide(k int, stop sim.Stop) *scenario.Scenario {
	b := &build{}
	var names []string
	for i := range k {
		names = append(names, "m"+strconv.Itoa(i))
		b.station(sim.Station{Name: names[i], Takes: 1, Gives: 1, Stops: []sim.Stop{stop}}, scenario.Station{GivesUnit: "cartons"}, 60, 0)
	}
	b.store("store", 100, names...)
	b.station(sim.Station{Name: "packer", From: "store", Takes: 1, Gives: 1}, scenario.Station{GivesUnit: "cartons"}, 60*float64(k), 0)
	b.Answer = scenario.Answer{Unit: "cartons", CountedAfter: []int{k}}
	return &b.Scenario
}

// Equal machines side by side lose the share x of their own flow each, as one
// machine with all the flow would. Hand computation.
func TestMachinesSideBySideAddUp(t *testing.T) {
	for k := 1; k <= 5; k++ {
		f := Derive(sideBySide(k, fixedStop("s", sim.CycleClock, 600, 1)))
		near(t, "flow", f.Stations[0].Flow, 1/float64(k))
		near(t, "unlimited", f.Bounds.Unlimited, 60*float64(k)/1.1)
		near(t, "rigid", f.Bounds.RigidEfficiency, 1/1.1)
		if len(f.Stages) != 2 || len(f.Stages[0].Stations) != k {
			t.Errorf("%d machines: stages %+v", k, f.Stages)
		}
		near(t, "stage", f.Stages[0].Set, 60*float64(k))
		if len(f.Bounds.Constraint) != k {
			t.Errorf("%d machines are the constraint together, not %v", k, f.Bounds.Constraint)
		}
	}
}

// Two branches of two stations each, one narrow in each branch: the bound is
// the sum of what is narrow in each branch, 20 + 30. Hand computation.
func TestBoundFollowsBranches(t *testing.T) {
	b := &build{}
	rates := map[string]float64{"a1": 20, "a2": 90, "b1": 90, "b2": 30, "packer": 100}
	for _, s := range []sim.Station{{Name: "a1"}, {Name: "a2", From: "a1"}, {Name: "b1"}, {Name: "b2", From: "b1"}} {
		s.Takes, s.Gives = 1, 1
		b.station(s, scenario.Station{}, rates[s.Name], 0)
	}
	b.store("store", 100, "a2", "b2")
	b.station(sim.Station{Name: "packer", From: "store", Takes: 1, Gives: 1}, scenario.Station{}, 100, 0)
	b.Answer.CountedAfter = []int{4}
	f := Derive(&b.Scenario)
	near(t, "bound", f.Bounds.Unlimited, 50)
	if diff := cmp.Diff([]string{"a1", "b2"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
}

// randomLine is a serial line with random speeds, pieces, stops and rejects.
func randomLine(t *rapid.T) *scenario.Scenario {
	b := &build{}
	n := rapid.IntRange(1, 7).Draw(t, "stations")
	for i := range n {
		line := sim.Station{
			Name:        "s" + strconv.Itoa(i),
			Takes:       rapid.Int64Range(1, 12).Draw(t, "takes"),
			Gives:       rapid.Int64Range(1, 12).Draw(t, "gives"),
			RejectShare: rapid.Float64Range(0, 0.5).Draw(t, "rejects"),
			Stops: []sim.Stop{fixedStop("s", rapid.SampledFrom([]sim.Clock{sim.CycleClock, sim.PieceClock}).Draw(t, "clock"),
				rapid.Float64Range(10, 1e4).Draw(t, "every"), rapid.Float64Range(0.1, 30).Draw(t, "lasts"))},
		}
		if i > 0 {
			line.From = "s" + strconv.Itoa(i-1)
		}
		b.station(line, scenario.Station{GivesUnit: "pieces"}, rapid.Float64Range(1, 300).Draw(t, "speed"), 0)
	}
	b.Answer = scenario.Answer{Unit: "pieces", CountedAfter: []int{rapid.IntRange(0, n-1).Draw(t, "counted")}}
	return &b.Scenario
}

// What must hold in every serial line: the bound is the smallest rate, the
// rigid line is below it, and the order of declaration does not matter.
func TestBoundsOfRandomLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := randomLine(t)
		f := Derive(s)
		smallest := math.Inf(1)
		for _, one := range f.Stations {
			smallest = min(smallest, one.AtMost.Answer)
		}
		if math.Abs(f.Bounds.Unlimited-smallest) > 1e-9*smallest {
			t.Fatalf("bound %v, smallest rate %v", f.Bounds.Unlimited, smallest)
		}
		if f.Bounds.Rigid > f.Bounds.Unlimited*(1+1e-9) {
			t.Fatalf("rigid %v above the bound %v", f.Bounds.Rigid, f.Bounds.Unlimited)
		}
		slices.Reverse(s.Line.Stations)
		slices.Reverse(s.Stations)
		s.Answer.CountedAfter[0] = len(s.Stations) - 1 - s.Answer.CountedAfter[0]
		back := Derive(s)
		if math.Abs(back.Bounds.Rigid-f.Bounds.Rigid) > 1e-9*f.Bounds.Rigid || math.Abs(back.Bounds.Unlimited-f.Bounds.Unlimited) > 1e-9*smallest {
			t.Fatalf("declared backwards: %+v, before %+v", back.Bounds, f.Bounds)
		}
		if way := back.Way; way[0].Index != len(s.Stations)-1 {
			t.Fatalf("the way begins with %+v, not with the first station of the product", way[0])
		}
	})
}
