package keyfigure

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// twoEnds is a blister machine of 160 blisters a minute and two cartoners side by
// side, of 60 and 20 cartons a minute, each with its own label of 90 and 30; behind
// the first label stands a bundler of 9 bundles of 10. Counted after both labels.
func twoEnds() *scenario.Scenario {
	b := &build{}
	blisters := scenario.Station{TakesUnit: "pieces", GivesUnit: "blisters"}
	packs := scenario.Station{TakesUnit: "blisters", GivesUnit: "cartons"}
	cartons := scenario.Station{TakesUnit: "cartons", GivesUnit: "cartons"}
	stop := fixedStop("jam", sim.CycleClock, 600, 1)
	b.Title = "Two ends of line"
	b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 4}, blisters, 40, 0)
	b.store("store", 400, "blister machine")
	b.station(sim.Station{Name: "cartoner 1", From: "store", Takes: 2, Gives: 1, RejectShare: 0.1, Stops: []sim.Stop{stop}}, packs, 60, 0)
	b.station(sim.Station{Name: "tamper label 1", From: "cartoner 1", Takes: 1, Gives: 1}, cartons, 90, 0)
	b.station(sim.Station{Name: "bundler 1", From: "tamper label 1", Takes: 10, Gives: 1}, scenario.Station{TakesUnit: "cartons", GivesUnit: "bundles"}, 9, 0)
	b.station(sim.Station{Name: "cartoner 2", From: "store", Takes: 2, Gives: 1, RejectShare: 0.2}, packs, 20, 0)
	b.station(sim.Station{Name: "tamper label 2", From: "cartoner 2", Takes: 1, Gives: 1, RejectShare: 0.5}, cartons, 30, 0)
	b.Answer = scenario.Answer{Unit: "cartons", CountedAfter: []int{2, 5}, Per: "shift"}
	return &b.Scenario
}

// Hand computation, per 100 nominal cartons: by set speed 75 go through the
// first branch and 25 through the second. 75 × 0.9 = 67.5 and
// 25 × 0.8 × 0.5 = 10 are counted.
func TestTwoEndsOfLine(t *testing.T) {
	f := Derive(twoEnds())
	if diff := cmp.Diff([]string{"tamper label 1", "tamper label 2"}, f.CountedAfter); diff != "" {
		t.Error(diff)
	}
	for i, want := range []struct{ perPiece, yield, flow, cycles float64 }{
		{0.5, 0.775, 1, 50 / 77.5},
		{1, 0.9, 0.75, 75 / 77.5},
		{1, 1, 0.75, 67.5 / 77.5},
		{10, 1, 0.75, 6.75 / 77.5},
		{1, 0.4, 0.25, 25 / 77.5},
		{1, 0.5, 0.25, 20 / 77.5},
	} {
		s := f.Stations[i]
		near(t, s.Name+": answer pieces a piece", s.PerPiece, want.perPiece)
		near(t, s.Name+": yield", s.Yield, want.yield)
		near(t, s.Name+": flow", s.Flow, want.flow)
		near(t, s.Name+": cycles a counted carton", s.cycles, want.cycles)
	}
}

// The branches add up: 60 × 0.9 / 1.1 of the first, 20 × 0.4 of the second, and
// the blister machine could make 80 × 0.775. All run at their set speed in
// a rigid line, and the only stop holds nothing but its own branch, so that it makes as much.
// Hand computation.
func TestBoundsOfTwoEndsOfLine(t *testing.T) {
	f := Derive(twoEnds())
	near(t, "bound", f.Bounds.Unlimited, 54/1.1+8)
	near(t, "at set speed", f.Bounds.AtSet, 80)
	near(t, "tied", f.Bounds.Tied, 62)
	near(t, "rigid", f.Bounds.Rigid, 54/1.1+8)
	if diff := cmp.Diff([]string{"cartoner 1", "cartoner 2"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
}

// Stations as far along in their branches are one point of the V-curve. The
// bundler has three quarters of the flow and none beside it: 90 of 60. Hand computation.
func TestStagesOfTwoEndsOfLine(t *testing.T) {
	f := Derive(twoEnds())
	var stations [][]int
	for i, stage := range f.Stages {
		stations = append(stations, stage.Stations)
		want := []struct{ flow, set, over float64 }{{1, 80, 0}, {1, 80, 0}, {1, 120, 0.5}, {0.75, 90, 0.5}}[i]
		near(t, "flow", stage.Flow, want.flow)
		near(t, "set", stage.Set, want.set)
		near(t, "over-speed", stage.OverSpeed, want.over)
	}
	if diff := cmp.Diff([][]int{{0}, {1, 4}, {2, 5}, {3}}, stations); diff != "" {
		t.Error(diff)
	}
}

// A blister is worth the mean of both ways where the cartons hold unlike
// numbers: of 160 blisters 120 go into 60 cartons of 2, 40 into 10 of 4. Hand computation.
func TestUnlikeCartonsSideBySide(t *testing.T) {
	s := twoEnds()
	s.Line.Stations[4].Takes = 4
	s.Stations[4].SetCycle *= 2
	f := Derive(s)
	near(t, "a blister", f.Stations[0].PerPiece, 70.0/160)
	near(t, "counted of a nominal carton", f.Stations[0].Yield, (60*0.9+10*0.4)/70)
	near(t, "cycles", f.Stations[0].cycles, 40/(60*0.9+10*0.4))
	near(t, "bound", f.Bounds.Unlimited, 54/1.1+4)
}

// Of two branches one is counted: what goes into the other is lost to the
// answer, and limits nothing. Hand computation: for 67.5 counted cartons the blister
// machine makes 200 blisters, 50 of which go into the other branch.
func TestOneOfTwoEndsOfLine(t *testing.T) {
	s := twoEnds()
	s.Answer.CountedAfter = []int{2}
	f := Derive(s)
	near(t, "bound", f.Bounds.Unlimited, 54/1.1)
	near(t, "tied", f.Bounds.Tied, 54)
	near(t, "blister machine", f.Stations[0].cycles, 50/67.5)
	near(t, "flow", f.Stations[0].Flow, 1/0.75)
	near(t, "what is left of the other branch", f.Stations[4].Effective.Answer, 0)
	near(t, "its cartons", f.Stations[4].PerPiece, 1)
	if diff := cmp.Diff([]string{"cartoner 1"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
}

// Two machines that nothing joins add up, each at its own speed. Hand computation.
func TestCountedAfterMachinesThatNothingJoins(t *testing.T) {
	b := &build{}
	stop := fixedStop("jam", sim.CycleClock, 600, 1)
	b.station(sim.Station{Name: "left", Takes: 1, Gives: 1, Stops: []sim.Stop{stop}}, scenario.Station{}, 60, 0)
	b.station(sim.Station{Name: "right", Takes: 1, Gives: 1}, scenario.Station{}, 30, 0)
	b.Answer.CountedAfter = []int{0, 1}
	f := Derive(&b.Scenario)
	near(t, "bound", f.Bounds.Unlimited, 60/1.1+30)
	near(t, "tied", f.Bounds.Tied, 90)
	near(t, "left", f.Stations[0].Flow, 2.0/3)
	near(t, "right", f.Stations[1].Flow, 1.0/3)
	if len(f.Stages) != 1 || len(f.Stages[0].Stations) != 2 {
		t.Errorf("they stand side by side: %+v", f.Stages)
	}
}

// Counting after all machines that give into a place is counting after the
// station that takes everything from it, if that rejects nothing.
func TestCountedBeforeAMergeIsCountedBehindIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stop := fixedStop("s", sim.CycleClock, rapid.Float64Range(10, 1e4).Draw(t, "every"), 1)
		k := rapid.IntRange(2, 5).Draw(t, "machines")
		s := sideBySide(k, stop)
		for i := range k {
			s.Line.Stations[i].RejectShare = rapid.Float64Range(0, 0.5).Draw(t, "rejects")
			s.Stations[i].SetCycle = rapid.Float64Range(1e5, 1e7).Draw(t, "cycle")
		}
		behind := Derive(s)
		s.Answer.CountedAfter = nil
		for i := range k {
			s.Answer.CountedAfter = append(s.Answer.CountedAfter, i)
		}
		before := Derive(s)
		for what, pair := range map[string][2]float64{
			"bound":         {behind.Bounds.Unlimited, before.Bounds.Unlimited},
			"rigid":         {behind.Bounds.Rigid, before.Bounds.Rigid},
			"tied":          {behind.Bounds.Tied, before.Bounds.Tied},
			"cycles":        {behind.Stations[0].cycles, before.Stations[0].cycles},
			"of the packer": {behind.Stations[k].cycles, before.Stations[k].cycles},
		} {
			if d := pair[0] - pair[1]; d > 1e-9*pair[0] || -d > 1e-9*pair[0] {
				t.Fatalf("%s: %v behind the merge, %v before it", what, pair[0], pair[1])
			}
		}
		slices.Reverse(s.Answer.CountedAfter)
		if again := Derive(s); again.Bounds.Unlimited != before.Bounds.Unlimited || len(before.Warnings) != len(again.Warnings) {
			t.Fatalf("the order of the counts matters: %+v and %+v", again.Bounds, before.Bounds)
		}
	})
}
