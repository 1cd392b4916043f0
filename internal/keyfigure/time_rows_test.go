package keyfigure

import (
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// packedBy is two machines of 60 a minute that give into a store, the first of them first, and a packer of
// the same speed, which stops with the second.
func packedBy(first, second []sim.Stop) *scenario.Scenario {
	b := &build{}
	b.station(sim.Station{Name: "a", Takes: 1, Gives: 1, Stops: first}, scenario.Station{}, 60, 0)
	b.station(sim.Station{Name: "b", Takes: 1, Gives: 1, Stops: second}, scenario.Station{}, 60, 0)
	b.Line.Buffers = []sim.Buffer{{Name: "store", From: []string{"a", "b"}, Holds: 60, Turns: sim.Turns{First: "a"}}}
	b.Buffers = []scenario.Buffer{{Unit: "pieces"}}
	b.station(sim.Station{Name: "packer", From: "store", Takes: 1, Gives: 1, StopsWith: "b"}, scenario.Station{}, 60, 0)
	b.Answer.CountedAfter = []int{2}
	return &b.Scenario
}

// beats holds the bound and the rate at most of the last station against the engine.
func beats(t *testing.T, name string, s *scenario.Scenario) {
	t.Helper()
	got, f := passed(t, s.Line), Derive(s)
	last := f.Stations[len(f.Stations)-1]
	if got > f.Bounds.Unlimited*1.001 || got > last.AtMost.Answer*1.001 {
		t.Errorf("%s: the engine passes %v a minute, the bound is %v, at most %v", name, got, f.Bounds.Unlimited, last.AtMost.Answer)
	}
}

// What a run makes is below the bound where luck or the mix of the line is on its side. By
// planned shares the packer would make 60/1.25; in truth all comes from the machine that does not
// stop it.
func TestStopsOfAGroupAreChargedByTheRealMix(t *testing.T) {
	s := packedBy(nil, []sim.Stop{fixedStop("s", sim.CycleClock, 120, 1)})
	beats(t, "mix", s)
	near(t, "the packer at most", Derive(s).Stations[2].AtMost.Answer, 60)
}

// A slow packer goes on with its case while the machine before it stands: of stops of half a
// minute, one for each case, that takes one minute, nothing is left.
func TestACycleUnderWayIsEnded(t *testing.T) {
	s := chain(
		sim.Station{Name: "a", Stops: []sim.Stop{{Name: "s", Clock: sim.CycleClock, Every: law(sim.Exponential(60)), Lasts: sim.Fixed(minutes(0.5))}}},
		sim.Station{Name: "packer", Takes: 30, StopsWith: "a"},
	)
	s.Stations[1].SetCycle = minutes(1)
	s.Line.Stations[1].Cycle = sim.Fixed(minutes(1))
	beats(t, "case", s)
}

// Machines that keep step stop at the same time, again and again: 120 cycles of work of both, then
// one minute of both. Hand computation: 2 × 60 × 2/3.
func TestStopsThatKeepStepAreOne(t *testing.T) {
	stop := []sim.Stop{fixedStop("s", sim.CycleClock, 120, 1)}
	s := sideBySide(2, stop[0])
	s.Line.Stations[1].StopsWith = "m0"
	beats(t, "both", s)
	near(t, "bound", Derive(s).Bounds.Unlimited, 2*60/1.5)
}

// Calendar stops begin during other stops: both are over sooner than one after the other. Hand
// computation with laws without memory: half up by the calendar, half a minute down a minute of
// work; 0.5/(1 + 0.5 × 0.5) of the time if the calendar is the quicker one, so that it is
// up half of each stop, and not 0.5/1.5.
func TestCalendarStopsOverlapOthers(t *testing.T) {
	one := func(calendar, own sim.Law) *scenario.Scenario {
		return chain(sim.Station{Name: "a", Stops: []sim.Stop{
			{Name: "calendar", Clock: sim.CalendarClock, Every: calendar, Lasts: calendar},
			{Name: "own", Clock: sim.RunningClock, Every: own.Scale(2), Lasts: own},
		}})
	}
	random := func(m float64) sim.Law { return law(sim.Exponential(minutes(m))) }
	s := one(random(0.2), random(20))
	beats(t, "without memory", s)
	near(t, "without memory", Derive(s).Bounds.Unlimited, 60*0.5/1.25)
	beats(t, "calendar with a memory", one(sim.Fixed(minutes(0.2)), random(20)))
	beats(t, "long calendar with a memory", one(sim.Fixed(minutes(20)), random(20)))
	s = one(sim.Fixed(minutes(1)), sim.Fixed(minutes(1)))
	beats(t, "both with a memory", s)
	near(t, "both with a memory", Derive(s).Bounds.Unlimited, 60*0.5)
}

// Two calendar stops that always come together cost no more than one.
func TestCalendarStopsThatKeepStep(t *testing.T) {
	stop := fixedStop("q", sim.CalendarClock, minutes(9), 1)
	other := stop
	other.Name = "r"
	s := chain(sim.Station{Name: "a", Stops: []sim.Stop{stop, other}})
	beats(t, "two of the calendar", s)
	near(t, "bound", Derive(s).Bounds.Unlimited, 60*0.9)
}
