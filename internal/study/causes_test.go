package study

import (
	"math"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// twoWebs are two blister machines alike that feed one cartoner; they are what
// limits the line. Each has a label printer that stops with it.
func twoWebs(t *testing.T) *scenario.Scenario {
	s, must := steady(), law(t)
	s.Line.Stations, s.Stations = nil, nil
	add := func(name, from string, takes, gives int64, cycle float64) *sim.Station {
		s.Line.Stations = append(s.Line.Stations, sim.Station{Name: name, From: from, Takes: takes, Gives: gives, Cycle: sim.Fixed(cycle)})
		s.Stations = append(s.Stations, scenario.Station{GivesUnit: "blisters", SetCycle: cycle, TopCycle: cycle})
		return &s.Line.Stations[len(s.Line.Stations)-1]
	}
	stop := func(name string, every, lasts float64) sim.Stop {
		return sim.Stop{Name: name, Every: must(sim.Exponential(every)), Clock: sim.CycleClock, Lasts: sim.Fixed(lasts)}
	}
	for _, n := range []string{"1", "2"} {
		web := add("web "+n, "", 1, 4, 1e6)
		web.Stops = []sim.Stop{stop("minor stop", 400, 30e6), stop("breakdown "+n, 3000, 120e6)}
		add("printer "+n, "web "+n, 4, 4, 0.2e6)
		s.Line.Stations[len(s.Line.Stations)-1].Stops = []sim.Stop{stop("minor stop", 2000, 20e6)}
		s.Line.Stations[len(s.Line.Stations)-1].StopsWith = "web " + n
	}
	add("cartoner", "store", 2, 1, 0.1e6)
	s.Line.Buffers = []sim.Buffer{{Name: "store", From: []string{"printer 1", "printer 2"}, Holds: 400}}
	s.Buffers = []scenario.Buffer{{Unit: "blisters"}}
	s.Answer.CountedAfter = []int{4}
	s.Run.Replications = 10
	return s
}

// Causes of several limiting stations are all sums over them, so that their
// order can be compared; stops of one name are one cause.
func TestCausesOfTwoLimitingStations(t *testing.T) {
	o := mustRun(t, twoWebs(t), Options{})
	if o.Constraint != "web 1 and web 2" {
		t.Fatalf("the constraint is %s", o.Constraint)
	}
	mean := func(time func(*sim.Record) sim.Micros) float64 {
		sum := 0.0
		for i := range o.Records {
			sum += float64(time(&o.Records[i])) / float64(sim.Minute) / float64(len(o.Records))
		}
		return sum
	}
	// At the webs every moment of a standstill belongs to one stop, also where several are open.
	stop := func(of, k int) float64 {
		return mean(func(r *sim.Record) (time sim.Micros) {
			for _, web := range []int{0, 2} {
				for _, by := range r.Stations[web].StoppedBy {
					if by.Station == of && by.Cause == k {
						time += by.Down + by.Waiting + by.Planned
					}
				}
			}
			return time
		})
	}
	// Stops of a station are in the order of their names.
	want := map[string]float64{
		"minor stop of web 1, web 2":         stop(0, 1) + stop(2, 1),
		"breakdown 1 of web 1":               stop(0, 0),
		"breakdown 2 of web 2":               stop(2, 0),
		"minor stop of printer 1, printer 2": stop(1, 0) + stop(3, 0),
	}
	for _, cause := range o.Causes {
		if cause.Stop == "" {
			continue
		}
		name := cause.Stop + " of " + strings.Join(cause.Stations, ", ")
		minutes, known := want[name]
		if !known || cause.Minutes.Mean < minutes*(1-1e-12) || cause.Minutes.Mean > minutes*(1+1e-12) {
			t.Errorf("%s: got %v min, want %v", name, cause.Minutes.Mean, minutes)
		}
		// 4 blisters a second are 120 cartons a minute.
		if pieces := 120 * cause.Minutes.Mean; cause.Pieces.Mean < pieces*(1-1e-9) || cause.Pieces.Mean > pieces*(1+1e-9) {
			t.Errorf("%s: %v cartons in %v min", name, cause.Pieces.Mean, cause.Minutes.Mean)
		}
		delete(want, name)
	}
	if len(want) > 0 {
		t.Errorf("not named: %v", want)
	}
	if !slices.IsSortedFunc(o.Causes, func(a, b Cause) int { return int(b.Pieces.Mean*1e6 - a.Pieces.Mean*1e6) }) {
		t.Error("the causes are not in order")
	}
}

// Two limiting stations that stop with each other: a stop of either costs both.
func TestCausesOfLimitingStationsJoined(t *testing.T) {
	s := twoWebs(t)
	s.Line.Stations[0].StopsWith = "web 2"
	s.Line.Stations[1].StopsWith, s.Line.Stations[3].StopsWith = "", ""
	o := mustRun(t, s, Options{})
	if o.Constraint != "web 1 and web 2" {
		t.Fatalf("the constraint is %s", o.Constraint)
	}
	seen := map[string]bool{}
	for _, cause := range o.Causes {
		name := cause.Stop + " of " + strings.Join(cause.Stations, ", ")
		if seen[name] {
			t.Errorf("%s is listed twice", name)
		}
		seen[name] = true
	}
	if !seen["minor stop of web 1, web 2"] || !seen["breakdown 1 of web 1"] || !seen["breakdown 2 of web 2"] {
		t.Errorf("causes: %v", seen)
	}
}

// Causes are the branches of the loss tree, what ran without giving good pieces too: a record by hand, of 1,000 s.
func TestCausesAreTheLossTree(t *testing.T) {
	s := steady()
	m, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	rec := sim.Record{Window: 1000 * sim.Second, Stations: make([]sim.StationRecord, 2)}
	r := &rec.Stations[0] // 4 a cycle of 1 s
	r.Cycles, r.ScrappedCycles, r.Rejected, r.Sampled, r.EmptyPockets = 800, 20, 40, 12, 5
	r.States[sim.Running], r.States[sim.Starved], r.States[sim.Blocked] = 850*sim.Second, 100*sim.Second, 50*sim.Second
	v := viewOf(s, m, []sim.Record{rec, rec})
	want := map[result.LossKind]float64{ // in s
		result.LossStarved: 100, result.LossBlocked: 50, result.LossSlower: 45, result.LossScrap: 20, result.LossRejects: 10, result.LossPockets: 5, result.LossSamples: 3,
	}
	causes := causesOf(v, []int{0})
	for _, cause := range causes {
		if got := 60 * cause.Minutes.Mean; math.Abs(got-want[cause.Kind]) > 1e-9 {
			t.Errorf("%s: got %v s, want %v", cause.Kind, got, want[cause.Kind])
		}
		if !slices.Equal(cause.At, []string{s.Line.Stations[0].Name}) {
			t.Errorf("%s is of %v", cause.Kind, cause.At)
		}
	}
	if len(causes) != len(want) || causes[0].Kind != result.LossStarved || causes[len(causes)-1].Kind != result.LossSamples {
		t.Errorf("got %+v", causes)
	}
}
