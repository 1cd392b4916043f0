package keyfigure

import (
	"math"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// near compares with a relative tolerance for rounding errors of floats only.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// chain is a serial line of stations that give and take 1, at 60 cycles/min.
func chain(stations ...sim.Station) *scenario.Scenario {
	b := &build{}
	for i, s := range stations {
		s.Takes, s.Gives = max(s.Takes, 1), max(s.Gives, 1)
		if i > 0 && s.From == "" {
			s.From = stations[i-1].Name
		}
		b.station(s, scenario.Station{TakesUnit: "cartons", GivesUnit: "cartons"}, 60, 0)
	}
	b.Answer = scenario.Answer{Unit: "cartons", CountedAfter: []int{len(stations) - 1}, Per: "hour"}
	return &b.Scenario
}

func fixedStop(name string, clock sim.Clock, every, lasts float64) sim.Stop {
	return sim.Stop{Name: name, Clock: clock, Every: sim.Fixed(every), Lasts: sim.Fixed(minutes(lasts))}
}

func TestEfficiencyAlone(t *testing.T) {
	group := sim.Station{Name: "a", Group: sim.Group{Every: 12, Adds: 3 * sim.Second}, Stops: []sim.Stop{fixedStop("s", sim.CycleClock, 480, 1)}}
	half := fixedStop("s", sim.CycleClock, 600, 1)
	half.RateFactor = 2
	tests := map[string]struct {
		station sim.Station
		want    float64
	}{
		"no stop": {sim.Station{Name: "a"}, 1},
		// source: 1/(1+x), x = 0.1, Gershwin 1994 (from memory); 600 cycles at 60/min are 10 min
		"cycles":  {sim.Station{Name: "a", Stops: []sim.Stop{fixedStop("s", sim.CycleClock, 600, 1)}}, 1 / 1.1},
		"running": {sim.Station{Name: "a", Stops: []sim.Stop{fixedStop("s", sim.RunningClock, minutes(10), 1)}}, 1 / 1.1},
		// hand computation: 1,200 pieces at 2 a cycle are 600 cycles
		"pieces": {sim.Station{Name: "a", Gives: 2, Stops: []sim.Stop{fixedStop("s", sim.PieceClock, 1200, 1)}}, 1 / 1.1},
		// hand computation: twice as often
		"rate factor": {sim.Station{Name: "a", Stops: []sim.Stop{half}}, 1 / 1.2},
		// hand computation: 9/(9+1) × 8/(8+2), independent alternating renewals that overlap
		"two calendars": {sim.Station{Name: "a", Stops: []sim.Stop{
			fixedStop("s", sim.CalendarClock, minutes(9), 1), fixedStop("q", sim.CalendarClock, minutes(8), 2),
		}}, 0.9 * 0.8},
		// hand computation: the mean cycle is 1 s + 3 s/12 = 1.25 s, 480 of them are 10 min
		"group": {group, 1 / 1.1},
	}
	for name, test := range tests {
		near(t, name, Derive(chain(test.station)).Stations[0].Alone, test.want)
	}
	near(t, "group: effective", Derive(chain(group)).Stations[0].Effective.Cycles, 48/1.1)
	near(t, "group: addition", Derive(chain(group)).Stations[0].GroupSeconds, 0.25)
}

// Changes count by what a refill adds; filled in time they count nothing. Hand computation.
func TestChangesCountByWhatARefillAdds(t *testing.T) {
	stocked := func(inTime bool) *scenario.Scenario {
		return chain(sim.Station{Name: "a", Materials: []sim.Material{{
			Name: "blanks", Amount: 2000, PerCycle: 1, Refill: 600, Lasts: sim.Fixed(minutes(1)), Alarm: sim.Level{On: inTime},
		}}})
	}
	near(t, "stops when empty", Derive(stocked(false)).Stations[0].Alone, 1/1.1)
	near(t, "filled in time", Derive(stocked(true)).Stations[0].Alone, 1)
}

// Two stations that stop together run 1/(1 + x1 + x2) of the time, whichever is asked. Hand computation.
func TestJoinedStopsAddUp(t *testing.T) {
	f := Derive(chain(
		sim.Station{Name: "a", Stops: []sim.Stop{fixedStop("s", sim.CycleClock, 600, 1)}},
		sim.Station{Name: "b", StopsWith: "a", Stops: []sim.Stop{fixedStop("s", sim.RunningClock, minutes(5), 1), fixedStop("q", sim.CalendarClock, minutes(9), 1)}},
		sim.Station{Name: "c", StopsWith: "b"},
		sim.Station{Name: "d"},
	))
	for i := range 3 {
		near(t, f.Stations[i].Name, f.Stations[i].Joined, 0.9/1.3)
	}
	// At most: clocks with a memory can keep step, so that only the worst of them is sure; b stands 0.2 min
	// for each minute of its work. The others end their cycle of 1/60 min at each of its stops, every
	// 300 cycles, and at each calendar stop, one in ten minutes.
	near(t, "b at most", f.Stations[1].AtMost.Answer, 60/1.2)
	for _, i := range []int{0, 2} {
		near(t, f.Stations[i].Name+" at most", f.Stations[i].AtMost.Answer, 60*(1+0.1/60)/(1+0.2*59/60))
	}
	near(t, "d", f.Stations[3].Joined, 1)
	near(t, "c alone", f.Stations[2].Alone, 1)
}

// Rejects from a station to the count are taken off its effective rate; a
// station behind the count is seen with what arrives there. Hand computation.
func TestYieldToTheCount(t *testing.T) {
	s := chain(
		sim.Station{Name: "blister machine", Gives: 4, RejectShare: 0.1},
		sim.Station{Name: "cartoner", Takes: 2, RejectShare: 0.2},
		sim.Station{Name: "label", RejectShare: 0.5},
		sim.Station{Name: "bundler", Takes: 10, RejectShare: 0.25},
		sim.Station{Name: "packer", Takes: 3},
	)
	s.Answer.CountedAfter = []int{2}
	f := Derive(s)
	for i, want := range []struct{ perPiece, yield float64 }{
		{0.5, 0.9 * 0.8 * 0.5}, {1, 0.8 * 0.5}, {1, 0.5}, {10, 1}, {30, 1 / 0.75},
	} {
		near(t, f.Stations[i].Name+": answer pieces a piece", f.Stations[i].PerPiece, want.perPiece)
		near(t, f.Stations[i].Name+": yield", f.Stations[i].Yield, want.yield)
	}
	near(t, "nominal", f.Stations[0].Set.Answer, 120)
	near(t, "effective", f.Stations[0].Effective.Answer, 120*0.36)
	near(t, "good blisters", f.Stations[0].Effective.Pieces, 240*0.9)
	near(t, "packer takes what the bundler leaves", f.Stations[4].Effective.Answer, 60*30/0.75)
}

// A station runs at its top speed only if a speed step says so. Hand computation.
func TestFastestIsWhatTheStepsUse(t *testing.T) {
	b := &build{}
	for _, name := range []string{"a", "b"} {
		line := sim.Station{Name: name, Takes: 1, Gives: 1, Stops: []sim.Stop{fixedStop("s", sim.CycleClock, 600, 1)}}
		if name == "b" {
			line.From = "a"
			line.Steps = []sim.SpeedStep{{From: 5, BackAt: 3, Cycle: 500_000}, {From: 9, BackAt: 7, Cycle: 750_000}}
		}
		b.station(line, scenario.Station{}, 60, 150)
	}
	b.Answer.CountedAfter = []int{1}
	f := Derive(&b.Scenario)
	near(t, "without a step", f.Stations[0].Fastest.Cycles, 60)
	near(t, "with steps", f.Stations[1].Fastest.Cycles, 120)
	// 600 cycles take 5 min at 120/min, so that one minute down is 0.2 of running.
	near(t, "at most", f.Stations[1].AtMost.Cycles, 120/1.2)
	if len(f.Warnings) != 2 {
		t.Errorf("both top speeds of 150/min are never reached, warnings: %q", f.Warnings)
	}
}
