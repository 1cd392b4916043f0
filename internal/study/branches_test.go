package study

import (
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// twoEnds is a blister machine of 16 blisters a second and two cartoners side by
// side, of 1 and 2.5 cartons a second, each with its own label. Nothing is left to chance.
func twoEnds() *scenario.Scenario {
	s := steady()
	s.Line.Stations, s.Stations = nil, nil
	add := func(name, from string, takes, gives int64, cycle float64) {
		s.Line.Stations = append(s.Line.Stations, sim.Station{Name: name, From: from, Takes: takes, Gives: gives, Cycle: sim.Fixed(cycle)})
		s.Stations = append(s.Stations, scenario.Station{GivesUnit: "cartons", SetCycle: cycle, TopCycle: cycle})
	}
	add("blister machine", "", 1, 4, 0.25e6)
	add("cartoner 1", "store", 2, 1, 1e6)
	add("tamper label 1", "cartoner 1", 1, 1, 0.2e6)
	add("cartoner 2", "store", 2, 1, 0.4e6)
	add("tamper label 2", "cartoner 2", 1, 1, 0.2e6)
	s.Line.Buffers = []sim.Buffer{{Name: "store", From: []string{"blister machine"}, Holds: 400}}
	s.Buffers = []scenario.Buffer{{Unit: "blisters"}}
	s.Answer.CountedAfter = []int{2, 4}
	return s
}

// By hand: the cartoners always find blisters and make 3,600 and 9,000 cartons
// an hour, which is all that they can.
func TestTwoEndsOfLineAddUp(t *testing.T) {
	o := mustRun(t, twoEnds(), Options{Show: []string{"good output", "line efficiency", "yield"}})
	if got := o.Results.Output; got.PerHour.Mean != 12600 || got.Total.Mean != 12600 || got.ShiftP50 != 12600 {
		t.Errorf("output %+v", got)
	}
	for i, want := range []float64{12600, 1, 1} {
		if m := o.Results.Measures[i]; m.Value.Mean != want {
			t.Errorf("%s: got %v, want %v", m.Name, m.Value.Mean, want)
		}
	}
	if o.Constraint != "cartoner 1 and cartoner 2" || len(o.Causes) != 0 {
		t.Errorf("constraint %s, causes %+v", o.Constraint, o.Causes)
	}
	for after, want := range map[int]float64{2: 3600, 4: 9000} {
		s := twoEnds()
		s.Answer.CountedAfter = []int{after}
		if got := mustRun(t, s, Options{}).Results.Output.Total.Mean; got != want {
			t.Errorf("after station %d: got %v, want %v", after, got, want)
		}
	}
}

// What is rejected in both branches is lost to the answer; a blister counts
// half a carton, and what is rejected behind a count is not lost to it.
func TestLossesOfTwoEndsOfLine(t *testing.T) {
	s := twoEnds()
	for i, share := range []float64{0.01, 0.1, 0.02, 0.2, 0.05} {
		s.Line.Stations[i].RejectShare = share
	}
	s.Answer.CountedAfter = []int{2, 3}
	o := mustRun(t, s, Options{Show: []string{"rejects", "yield"}})
	var good, rejected, share float64
	for i := range o.Records {
		r := &o.Records[i]
		g := float64(r.Stations[2].Passed + r.Stations[3].Passed)
		lost := 0.5*float64(r.Stations[0].Rejected) + float64(r.Stations[1].Rejected+r.Stations[2].Rejected+r.Stations[3].Rejected)
		good, rejected, share = good+g/3, rejected+lost/3, share+g/(g+lost)/3
		if o.Shifts[i] != g {
			t.Errorf("replication %d: %v good pieces, want %v", i+1, o.Shifts[i], g)
		}
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if got < want*(1-1e-12) || got > want*(1+1e-12) {
			t.Errorf("%s: got %v, want %v", what, got, want)
		}
	}
	near("good", o.Results.Output.Total.Mean, good)
	near("rejects of the line", o.Results.Measures[0].Value.Mean, rejected)
	last := o.Results.Measures[len(o.Results.Measures)-1]
	near(last.Name, last.Value.Mean, share)
	if good == 0 || rejected == 0 {
		t.Error("nothing was good or nothing was rejected")
	}
}

// The ends of the span count after both labels too: without stops and rejects
// the line is as fast with a store without limit, and not faster.
func TestSpanOfTwoEndsOfLine(t *testing.T) {
	span := mustRun(t, twoEnds(), Options{Bounds: true}).Span
	if !span.Buffered || span.Now.Mean != 12600 || span.Unlimited.Mean != 12600 || span.None.Mean > 12600 || span.None.Mean < 3600 {
		t.Errorf("span %+v", span)
	}
}
