package keyfigure

import (
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// twoCartoners is a blister machine, two cartoners side by side, of 60 and 20
// cartons a minute, a label behind both, and two packers of 30 and 90.
func twoCartoners(stop sim.Stop) *scenario.Scenario {
	b := &build{}
	b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 4}, scenario.Station{}, 40, 0)
	b.store("store", 100, "blister machine")
	b.station(sim.Station{Name: "fast", From: "store", Takes: 2, Gives: 1, RejectShare: 0.1, Stops: []sim.Stop{stop}}, scenario.Station{}, 60, 0)
	b.station(sim.Station{Name: "slow", From: "store", Takes: 2, Gives: 1, RejectShare: 0.5, StopsWith: "label"}, scenario.Station{}, 20, 0)
	b.store("belt", 50, "fast", "slow")
	b.station(sim.Station{Name: "label", From: "belt", Takes: 1, Gives: 1, Stops: []sim.Stop{stop}}, scenario.Station{}, 160, 0)
	b.Answer = scenario.Answer{Unit: "cartons", CountedAfter: []int{3}}
	b.store("rest", 50, "label")
	b.station(sim.Station{Name: "packer 1", From: "rest", Takes: 1, Gives: 1}, scenario.Station{}, 30, 0)
	b.station(sim.Station{Name: "packer 2", From: "rest", Takes: 1, Gives: 1}, scenario.Station{}, 90, 0)
	return &b.Scenario
}

// The flow divides by set speed: three quarters and one quarter. What one
// blister is worth is the mean of both ways. Hand computation.
func TestStationsSideBySideShareTheFlow(t *testing.T) {
	stop := fixedStop("s", sim.CycleClock, 600, 1)
	f := Derive(twoCartoners(stop))
	by := map[string]Station{}
	for _, s := range f.Stations {
		by[s.Name] = s
	}
	for name, want := range map[string]struct{ flow, yield float64 }{
		"blister machine": {1, 0.75*0.9 + 0.25*0.5},
		"fast":            {0.75, 0.9},
		"slow":            {0.25, 0.5},
		"label":           {1, 1},
		"packer 1":        {0.25, 1},
		"packer 2":        {0.75, 1},
	} {
		near(t, name+": flow", by[name].Flow, want.flow)
		near(t, name+": yield", by[name].Yield, want.yield)
	}
	near(t, "a blister", by["blister machine"].PerPiece, 0.5)
}

// What a joined station loses per cycle of a station with a quarter of the
// flow. Hand computation: of 100 nominal cartons the slow cartoner makes 25, and
// 75 × 0.9 + 25 × 0.5 = 80 reach the label: 3.2 of its cycles for one of the
// slow cartoner, each with 1/600 min down.
func TestJoinedStopsOfAStationWithPartOfTheFlow(t *testing.T) {
	s := Derive(twoCartoners(fixedStop("s", sim.CycleClock, 600, 1))).Stations[2]
	near(t, s.Name, s.Joined, 1/(1+20*3.2/600))
}

// A rigid line with unlike stations side by side. Hand computation, per 100
// nominal cartons of 80 a minute: 80 are counted, so the tied speed is 64. The fast cartoner
// makes its 67.5 in 1.25 min and is down for 75/600 min, the slow one its 12.5 in 1.25 min;
// what both make together the label takes, and is down for 1/600 min each.
func TestRigidLineWithUnlikeStationsSideBySide(t *testing.T) {
	b := Derive(twoCartoners(fixedStop("s", sim.CycleClock, 600, 1))).Bounds
	near(t, "tied", b.Tied, 64)
	near(t, "rigid", b.Rigid, 1/(1/(67.5/1.375+12.5/1.25)+1.0/600))
}

// A calendar stop of a station with a quarter of the flow takes a quarter of
// its own share from a rigid line. Hand computation: 1 - 0.25 × 0.1.
func TestRigidLineLosesOnlyThePartThatStops(t *testing.T) {
	s := sideBySide(4, fixedStop("s", sim.CycleClock, 1e12, 1))
	s.Line.Stations[0].Stops = []sim.Stop{fixedStop("q", sim.CalendarClock, minutes(9), 1)}
	got := Derive(s).Bounds.RigidEfficiency
	if want := 1 - 0.25*0.1; got < want-1e-6 || got > want+1e-6 {
		t.Errorf("got %v, want %v", got, want)
	}
}

// A station in front of one of two parallel stations passes the part of the
// flow that goes there, and one behind it too. Hand computation.
func TestFlowOfBranches(t *testing.T) {
	b := &build{}
	add := func(name, from string, perMinute float64) {
		b.station(sim.Station{Name: name, From: from, Takes: 1, Gives: 1}, scenario.Station{}, perMinute, 0)
	}
	add("feed", "", 80)
	b.store("split", 10, "feed")
	add("a1", "split", 60)
	add("a2", "a1", 90)
	add("b1", "split", 20)
	add("b2", "b1", 30)
	b.store("merge", 10, "a2", "b2")
	add("packer", "merge", 80)
	for _, counted := range []int{0, 5} {
		b.Answer.CountedAfter = []int{counted}
		f := Derive(&b.Scenario)
		for i, want := range []float64{1, 0.75, 0.75, 0.25, 0.25, 1} {
			near(t, f.CountedAfter[0]+": "+f.Stations[i].Name, f.Stations[i].Flow, want)
		}
	}
}
