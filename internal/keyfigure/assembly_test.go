package keyfigure

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// assembled is a blister machine of 180 blisters a minute, a folder of 70 leaflets and a cartoner
// of 80 cartons that takes 3 blisters and 1 leaflet; behind the label, which is counted, a bundler takes
// 10 cartons and 1 sleeve. The folder stands 1 min in 350 of its cycles.
func assembled() *scenario.Scenario {
	b := &build{}
	b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 4}, scenario.Station{GivesUnit: "blisters"}, 45, 0)
	b.store("store", 240, "blister machine")
	b.station(sim.Station{Name: "folder", Takes: 1, Gives: 1, Stops: []sim.Stop{fixedStop("jam", sim.CycleClock, 350, 1)}}, scenario.Station{GivesUnit: "leaflets"}, 70, 0)
	b.store("leaflets", 50, "folder")
	b.Buffers[1].Unit = "leaflets"
	b.station(sim.Station{Name: "cartoner", From: "store", Takes: 3, Gives: 1, Also: []sim.Input{{From: "leaflets", Takes: 1}}, RejectShare: 0.1},
		scenario.Station{TakesUnit: "blisters", GivesUnit: "cartons"}, 80, 0)
	b.station(sim.Station{Name: "label", From: "cartoner", Takes: 1, Gives: 1}, scenario.Station{TakesUnit: "cartons", GivesUnit: "cartons"}, 100, 0)
	b.station(sim.Station{Name: "sleeves", Takes: 1, Gives: 2, RejectShare: 0.5}, scenario.Station{GivesUnit: "sleeves"}, 6, 0)
	b.station(sim.Station{Name: "bundler", From: "label", Takes: 10, Gives: 1, Also: []sim.Input{{From: "sleeves", Takes: 1}}},
		scenario.Station{TakesUnit: "cartons", GivesUnit: "bundles"}, 9, 0)
	b.Answer = scenario.Answer{Unit: "cartons", CountedAfter: []int{3}, Per: "hour"}
	return &b.Scenario
}

// Hand computation. A carton needs 3 blisters and 1 leaflet; 0.9 of the cartons are counted. For 0.9 counted
// cartons the blister machine makes 3/4 cycles, folder and cartoner 1, the label 0.9, the bundler
// 0.09, the sleeves 0.09 cycles with one good of two sleeves each.
func TestWorthOfWhatIsAssembled(t *testing.T) {
	f := Derive(assembled())
	for i, want := range []struct{ perPiece, yield, flow, cycles float64 }{
		{1.0 / 3, 0.9, 1, 0.75 / 0.9},
		{1, 0.9, 1, 1 / 0.9},
		{1, 0.9, 1, 1 / 0.9},
		{1, 1, 1, 1},
		{10, 0.5, 1, 0.1},
		{10, 1, 1, 0.1},
	} {
		s := f.Stations[i]
		near(t, s.Name+": answer pieces a piece", s.PerPiece, want.perPiece)
		near(t, s.Name+": yield", s.Yield, want.yield)
		near(t, s.Name+": flow", s.Flow, want.flow)
		near(t, s.Name+": cycles a counted carton", s.cycles, want.cycles)
	}
	for _, w := range f.Warnings {
		t.Errorf("nothing is to be warned of, got %q", w)
	}
}

// Each input has to carry the whole flow: 180/3 = 60 cartons of blisters and
// 70 of leaflets, 54 and 70 × 0.9/1.2 = 52.5 with rejects and stops; in the rigid line the folder's
// stop takes 1/350 min of each cycle at 54 a minute. Hand computation.
func TestBoundsOfAnAssembly(t *testing.T) {
	f := Derive(assembled())
	near(t, "at set speed", f.Bounds.AtSet, 60)
	near(t, "bound", f.Bounds.Unlimited, 52.5)
	near(t, "tied", f.Bounds.Tied, 54)
	near(t, "rigid", f.Bounds.Rigid, 54/(1+54/0.9/350))
	if diff := cmp.Diff([]string{"folder"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
	near(t, "leaflets in", f.Places[1].Feed, 70)
	near(t, "leaflets out", f.Places[1].Drain, 80)
	near(t, "blisters out", f.Places[0].Drain, 240)
}

// Sleeves that come too slowly hold back what was counted before them. Of 2 × 2.5 sleeves
// a minute half are good, for 25 cartons. Hand computation.
func TestWhatIsPutInBehindTheCountBounds(t *testing.T) {
	s := assembled()
	s.Stations[4].SetCycle = float64(sim.Minute) / 2.5
	f := Derive(s)
	near(t, "bound", f.Bounds.Unlimited, 25)
	if diff := cmp.Diff([]string{"sleeves"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
}

// Two cartoners, each with its own folder of 20 and 50 leaflets, and blisters for 60
// cartons together: min(60, 20 + 50) at set speed, 20 + 30 with cartoners of 40 and 30. Hand computation.
func TestAssembliesSideBySide(t *testing.T) {
	b := &build{}
	b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 4}, scenario.Station{}, 30, 0)
	b.store("store", 240, "blister machine")
	for _, one := range []struct {
		name             string
		leaflets, carton float64
	}{{"1", 20, 40}, {"2", 50, 30}} {
		b.station(sim.Station{Name: "folder " + one.name, Takes: 1, Gives: 1}, scenario.Station{}, one.leaflets, 0)
		b.station(sim.Station{Name: "cartoner " + one.name, From: "store", Takes: 2, Gives: 1, Also: []sim.Input{{From: "folder " + one.name, Takes: 1}}}, scenario.Station{}, one.carton, 0)
	}
	b.Answer.CountedAfter = []int{2, 4}
	f := Derive(&b.Scenario)
	near(t, "bound", f.Bounds.Unlimited, 50)
	if diff := cmp.Diff([]string{"folder 1", "cartoner 2"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
}

// Blisters come as the second input, leaflets as the first: nothing changes but
// of whom speed steps read the level.
func TestOrderOfInputsDoesNotMatter(t *testing.T) {
	s := assembled()
	cartoner := &s.Line.Stations[2]
	cartoner.From, cartoner.Takes, cartoner.Also = "leaflets", 1, []sim.Input{{From: "store", Takes: 3}}
	bundler := &s.Line.Stations[5]
	bundler.From, bundler.Takes, bundler.Also = "sleeves", 1, []sim.Input{{From: "label", Takes: 10}}
	got, want := Derive(s), Derive(assembled())
	for i := range want.Stations {
		g, w := got.Stations[i], want.Stations[i]
		near(t, g.Name+": answer pieces a piece", g.PerPiece, w.PerPiece)
		near(t, g.Name+": yield", g.Yield, w.Yield)
		near(t, g.Name+": cycles", g.cycles, w.cycles)
	}
	near(t, "bound", got.Bounds.Unlimited, want.Bounds.Unlimited)
	near(t, "rigid", got.Bounds.Rigid, want.Bounds.Rigid)
	if !slices.Equal(got.Bounds.Constraint, want.Bounds.Constraint) {
		t.Errorf("the constraint is %v, want %v", got.Bounds.Constraint, want.Bounds.Constraint)
	}
}
