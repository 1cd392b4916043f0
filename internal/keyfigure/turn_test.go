package keyfigure

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// branched is a blister machine of 160 blisters a minute that sends to the stores of two
// cartoners of 60 and 20 cartons of 2; the slow one rejects 0.1.
func branched(rule sim.SendRule) *scenario.Scenario {
	b := &build{}
	packs := scenario.Station{TakesUnit: "blisters", GivesUnit: "cartons"}
	b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 4, Sends: sim.Sends{To: []string{"store 1", "store 2"}, Rule: rule}},
		scenario.Station{GivesUnit: "blisters"}, 40, 0)
	b.store("store 1", 100, "blister machine")
	b.station(sim.Station{Name: "cartoner 1", From: "store 1", Takes: 2, Gives: 1}, packs, 60, 0)
	b.store("store 2", 100, "blister machine")
	b.station(sim.Station{Name: "cartoner 2", From: "store 2", Takes: 2, Gives: 1, RejectShare: 0.1}, packs, 20, 0)
	b.Answer = scenario.Answer{Unit: "cartons", CountedAfter: []int{1, 2}}
	return &b.Scenario
}

// In turn each cartoner gets half: 20 cartons each, whatever the first could do. Of 100 nominal cartons
// 50 × 0.9 + 50 are counted. Hand computation.
func TestInTurnEqualPieces(t *testing.T) {
	f := Derive(branched(sim.InTurn))
	near(t, "at set speed", f.Bounds.AtSet, 40)
	near(t, "bound", f.Bounds.Unlimited, 38)
	near(t, "tied", f.Bounds.Tied, 38)
	near(t, "rigid", f.Bounds.Rigid, 38)
	near(t, "flow of the first", f.Stations[1].Flow, 0.5)
	near(t, "cycles of the first", f.Stations[1].cycles, 50.0/95)
	near(t, "what is left of a blister", f.Stations[0].Yield, 0.95)
	near(t, "into the first store", f.Places[0].Feed, 80)
	near(t, "into the second store", f.Places[1].Feed, 80)
	if diff := cmp.Diff([]string{"cartoner 2"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
}

// By room or by the fewest pieces each takes what it can: 80 blisters go into
// 60 + 20 cartons, of which 60 + 18 are counted. The stores share the feed by the speeds behind them. Hand computation.
func TestOtherRulesFillBothBranches(t *testing.T) {
	for _, rule := range []sim.SendRule{sim.FirstWithRoom, sim.FewestPieces} {
		f := Derive(branched(rule))
		near(t, "at set speed", f.Bounds.AtSet, 80)
		near(t, "bound", f.Bounds.Unlimited, 78)
		near(t, "tied", f.Bounds.Tied, 78)
		near(t, "flow of the first", f.Stations[1].Flow, 0.75)
		near(t, "into the first store", f.Places[0].Feed, 120)
		near(t, "into the second store", f.Places[1].Feed, 40)
	}
}

// Only one of the branches is counted: it gets no more blisters than the other, which takes
// 40 for its 20 cartons. Hand computation.
func TestInTurnOneBranchCounted(t *testing.T) {
	s := branched(sim.InTurn)
	s.Answer.CountedAfter = []int{1}
	f := Derive(s)
	near(t, "bound", f.Bounds.Unlimited, 20)
}

// Both branches in turn come together again: 30 sets a minute of one piece each from the slower
// branch, for which the source gives 60 of its 100. Hand computation.
func TestTurnsThatAreAssembledAgain(t *testing.T) {
	b := &build{}
	for _, s := range []struct {
		sim.Station
		rate float64
	}{
		{sim.Station{Name: "source", Sends: sim.Sends{To: []string{"a", "b"}}}, 100},
		{sim.Station{Name: "a", From: "source"}, 30},
		{sim.Station{Name: "b", From: "source"}, 50},
		{sim.Station{Name: "set", From: "a", Also: []sim.Input{{From: "b", Takes: 1}}}, 90},
	} {
		s.Takes, s.Gives = 1, 1
		b.station(s.Station, scenario.Station{}, s.rate, 0)
	}
	b.Answer.CountedAfter = []int{3}
	f := Derive(&b.Scenario)
	near(t, "bound", f.Bounds.Unlimited, 30)
	near(t, "at set speed", f.Bounds.AtSet, 30)
	near(t, "cycles of the source", f.Stations[0].cycles, 2)
	if diff := cmp.Diff([]string{"a"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
}

// Pieces from all branches straight into one station, two of each.
func TestTurnsIntoOneStation(t *testing.T) {
	b := &build{}
	b.station(sim.Station{Name: "source", Takes: 1, Gives: 1, Sends: sim.Sends{To: []string{"x", "y", "z"}}}, scenario.Station{}, 120, 0)
	for _, name := range []string{"x", "y", "z"} {
		b.store(name, 20, "source")
	}
	b.station(sim.Station{Name: "set", From: "x", Takes: 2, Gives: 1, Also: []sim.Input{{From: "y", Takes: 2}, {From: "z", Takes: 2}}}, scenario.Station{}, 90, 0)
	b.Answer.CountedAfter = []int{1}
	f := Derive(&b.Scenario)
	near(t, "bound", f.Bounds.Unlimited, 20)
	near(t, "cycles of the source", f.Stations[0].cycles, 6)
}

// A split in turn behind a split in turn: quarters for two, a half for the third of 25 a minute.
// The quarters could be 20 and 30 a minute; the half could be 25, so that all
// together make 50. Hand computation.
func TestTurnsBehindTurns(t *testing.T) {
	b := &build{}
	one := func(name, from string, rate float64, to ...string) {
		b.station(sim.Station{Name: name, From: from, Takes: 1, Gives: 1, Sends: sim.Sends{To: to}}, scenario.Station{}, rate, 0)
	}
	one("a", "", 200, "b", "c")
	one("b", "a", 200, "d", "e")
	one("c", "a", 25)
	one("d", "b", 20)
	one("e", "b", 30)
	b.Answer.CountedAfter = []int{2, 3, 4}
	f := Derive(&b.Scenario)
	near(t, "bound", f.Bounds.Unlimited, 50)
	near(t, "tied", f.Bounds.Tied, 50)
	near(t, "the hand-over to e", f.Places[3].Feed, 100)
	if diff := cmp.Diff([]string{"c"}, f.Bounds.Constraint); diff != "" {
		t.Error(diff)
	}
}

// The engine knows nothing of this arithmetic: without stops the branches run as computed.
func TestSplitsAgreeWithTheEngine(t *testing.T) {
	for rule, want := range map[sim.SendRule][2]float64{sim.InTurn: {20, 18}, sim.FewestPieces: {60, 18}} {
		model, err := sim.Compile(branched(rule).Line)
		if err != nil {
			t.Fatal(err)
		}
		record := model.NewEngine().Run(sim.Options{Seed: 1, WarmUp: sim.Hour, Measure: 1000 * sim.Hour})
		for i, w := range want {
			if got := float64(record.Stations[1+i].Passed) / 60000; got < w*0.995 || got > w*1.005 {
				t.Errorf("rule %d: branch %d passes %v a minute, arithmetic %v", rule, i+1, got, w)
			}
		}
	}
}
