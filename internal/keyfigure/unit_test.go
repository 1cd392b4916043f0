package keyfigure

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// tiedUnit is a filler of 200 a minute before a label of 100 and a check of 80 on one drive; a case packer of 10.
// The label stands 1 min in 800 cycles, the check 1 min in 20 min of running and rejects 0.1.
func tiedUnit() *scenario.Scenario {
	b := &build{}
	b.station(sim.Station{Name: "filler", Takes: 1, Gives: 1}, scenario.Station{GivesUnit: "cartons"}, 200, 0)
	b.store("store", 100, "filler")
	b.station(sim.Station{Name: "label", From: "store", Takes: 1, Gives: 1, Coupled: "drive", Stops: []sim.Stop{fixedStop("jam", sim.CycleClock, 800, 1)}},
		scenario.Station{GivesUnit: "cartons"}, 100, 0)
	b.station(sim.Station{Name: "check", From: "label", Takes: 1, Gives: 1, Coupled: "drive", RejectShare: 0.1, Stops: []sim.Stop{fixedStop("fault", sim.RunningClock, minutes(20), 1)}},
		scenario.Station{GivesUnit: "cartons"}, 80, 0)
	b.station(sim.Station{Name: "packer", From: "check", Takes: 10, Gives: 1}, scenario.Station{GivesUnit: "cases"}, 20, 0)
	b.Answer = scenario.Answer{Unit: "cartons", CountedAfter: []int{2}}
	return &b.Scenario
}

// One unit: 80 cycles a minute, down 1/10 min per minute for the label (80 of 800 cycles) and
// 1/20 for the check; 0.9 of the cartons are good. Hand computation.
func TestOneDriveIsOneUnit(t *testing.T) {
	f := Derive(tiedUnit())
	for _, i := range []int{1, 2} {
		s := f.Stations[i]
		near(t, s.Name+": set speed", s.Set.Cycles, 80)
		near(t, s.Name+": alone", s.Alone, 1/1.15)
		near(t, s.Name+": at most", s.AtMost.Answer, 72/1.15)
		near(t, s.Name+": cycles", s.cycles, 1/0.9)
		if len(s.JoinedWith) > 0 || len(s.CoupledWith) != 1 {
			t.Errorf("%s: joined with %v, coupled with %v", s.Name, s.JoinedWith, s.CoupledWith)
		}
	}
	near(t, "minutes between jams", f.Stations[1].Stops[0].Minutes, 10)
	near(t, "bound", f.Bounds.Unlimited, 72/1.15)
	near(t, "tied", f.Bounds.Tied, 72)
	near(t, "rigid", f.Bounds.Rigid, 72/1.15)
	if text := f.constraintText(); text != "The constraint is label and check together." {
		t.Error(text)
	}
}

// The place behind a unit is fed by its last station, not by the one that gives it its name.
func TestHandOverBehindAUnit(t *testing.T) {
	s := tiedUnit()
	s.Line.Stations[2].Gives, s.Line.Stations[2].RejectShare = 2, 0
	f := Derive(s)
	for _, p := range f.Places {
		if p.Kind == "hand-over" && p.Feed != 160 {
			t.Errorf("%+v is fed with %v a minute, want 160", p, p.Feed)
		}
	}
	if len(f.Places) != 2 {
		t.Errorf("there is no place inside a unit: %+v", f.Places)
	}
}

// A longer cycle, a speed step and a top speed of one are those of both; who stops with one stops with both.
func TestAUnitHasWhatOneOfThemHas(t *testing.T) {
	s := tiedUnit()
	s.Line.Stations[1].Group = sim.Group{Every: 100, Adds: 10 * sim.Second}
	s.Line.Stations[1].Steps = []sim.SpeedStep{{From: 50, BackAt: 40, Cycle: 600_000}}
	s.Stations[1].TopCycle, s.Stations[2].TopCycle = minutes(1)/120, minutes(1)/100
	s.Line.Stations[3].StopsWith = "check"
	f := Derive(s)
	for _, i := range []int{1, 2} {
		one := f.Stations[i]
		near(t, one.Name+": group", one.GroupSeconds, 0.1)
		near(t, one.Name+": top speed", one.Top.Cycles, 100)
		near(t, one.Name+": fastest", one.Fastest.Cycles, 100)
		if diff := cmp.Diff([]string{"packer"}, one.JoinedWith); diff != "" {
			t.Error(diff)
		}
	}
	if diff := cmp.Diff([]string{"label", "check"}, f.Stations[3].JoinedWith); diff != "" {
		t.Error(diff)
	}
}

// The engine knows nothing of this arithmetic: a unit behind unlimited supply.
func TestAUnitAgreesWithTheEngine(t *testing.T) {
	s := tiedUnit()
	exponential := func(mean float64) sim.Law { return law(sim.Exponential(mean)) }
	s.Line.Stations[1].Stops[0].Every = exponential(800)
	s.Line.Stations[2].Stops[0].Every = exponential(minutes(20))
	s.Line.Stations = s.Line.Stations[:3]
	s.Stations = s.Stations[:3]
	got, want := passed(t, s.Line), Derive(s).Bounds.Unlimited
	if math.Abs(got-want) > 0.01*want {
		t.Errorf("the engine passes %v a minute, arithmetic %v", got, want)
	}
}

// What people see of the new words.
func TestTextOfUnitsAssembliesAndSplits(t *testing.T) {
	for _, c := range []struct {
		s    *scenario.Scenario
		want []string
	}{
		{tiedUnit(), []string{"one drive with  check", "one drive with  label"}},
		{assembled(), []string{"takes  blisters from store (3 a cycle), leaflets from leaflets (1 a cycle)"}},
		{branched(sim.InTurn), []string{"sends to  store 1, store 2 in turn"}},
		{branched(sim.FewestPieces), []string{"sends to  store 1, store 2, whichever has the fewest pieces"}},
		{branched(sim.FirstWithRoom), []string{"sends to  store 1, store 2, the first with room"}},
	} {
		var b strings.Builder
		if err := Derive(c.s).Text(&b); err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(b.String()), " ")
		for _, want := range c.want {
			if !strings.Contains(text, strings.Join(strings.Fields(want), " ")) {
				t.Errorf("%q is not in\n%s", want, b.String())
			}
		}
	}
}
