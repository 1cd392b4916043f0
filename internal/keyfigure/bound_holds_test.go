package keyfigure

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// randomNet is a line with random speeds, pieces and stops in which two branches are put
// together, one drive follows, and a split with branches that are counted.
func randomNet(t *rapid.T) *scenario.Scenario {
	b := &build{}
	add := func(s sim.Station) {
		s.Takes, s.Gives = max(s.Takes, 1), max(s.Gives, 1)
		s.RejectShare = rapid.SampledFrom([]float64{0, 0, 0.2}).Draw(t, "rejects")
		if rapid.Bool().Draw(t, "stops") {
			s.Stops = []sim.Stop{fixedStop("s", sim.CycleClock, float64(rapid.IntRange(20, 400).Draw(t, "every")), rapid.Float64Range(0.1, 3).Draw(t, "lasts"))}
			if rapid.Bool().Draw(t, "without memory") {
				s.Stops[0].Every = law(sim.Exponential(s.Stops[0].Every.Mean()))
			}
		}
		if rapid.IntRange(0, 5).Draw(t, "calendar") == 0 {
			s.Stops = append(s.Stops, fixedStop("calendar", sim.CalendarClock, minutes(rapid.Float64Range(3, 60).Draw(t, "every")), rapid.Float64Range(0.1, 10).Draw(t, "lasts")))
		}
		b.station(s, scenario.Station{}, rapid.Float64Range(20, 120).Draw(t, "speed"), 0)
	}
	pieces := func(what string) int64 { return rapid.Int64Range(1, 3).Draw(t, what) }
	add(sim.Station{Name: "main", Gives: pieces("gives")})
	b.store("store", 60, "main")
	add(sim.Station{Name: "side", Gives: pieces("gives")})
	b.store("side store", 60, "side")
	if rapid.Bool().Draw(t, "unit") {
		add(sim.Station{Name: "assembly", From: "store", Takes: pieces("takes"), Also: []sim.Input{{From: "side store", Takes: pieces("also")}}, Coupled: "drive"})
		add(sim.Station{Name: "split", From: "assembly", Coupled: "drive"})
		b.Line.Stations[2].RejectShare = 0
	} else {
		add(sim.Station{Name: "assembly", From: "store", Takes: pieces("takes"), Also: []sim.Input{{From: "side store", Takes: pieces("also")}}})
		add(sim.Station{Name: "split", From: "assembly", Gives: pieces("gives")})
	}
	b.Line.Stations[3].Sends = sim.Sends{To: []string{"left", "right"}, Rule: rapid.SampledFrom([]sim.SendRule{sim.InTurn, sim.FirstWithRoom, sim.FewestPieces}).Draw(t, "rule")}
	b.store("left", 60, "split")
	add(sim.Station{Name: "one", From: "left", Takes: pieces("takes")})
	b.store("right", 60, "split")
	add(sim.Station{Name: "two", From: "right", Takes: pieces("takes")})
	if one := rapid.IntRange(-6, 4).Draw(t, "stops with"); one >= 0 {
		b.Line.Stations[one].StopsWith = b.Line.Stations[rapid.IntRange(one+1, 5).Draw(t, "of")].Name
	}
	b.Answer.CountedAfter = rapid.SampledFrom([][]int{{4, 5}, {4}, {3}}).Draw(t, "counted")
	return &b.Scenario
}

// No run makes more than the bound, whatever meets and parts on the way; what stands in
// stores at the beginning of the window, and rejects that come by chance, are allowed for.
func TestNoRunMakesMoreThanTheBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := randomNet(t)
		if rapid.Bool().Draw(t, "parts") {
			withParts(t, s)
			storeParts(t, s)
		}
		model, err := sim.Compile(s.Line)
		if err != nil {
			t.Fatal(err)
		}
		const minutes = 40 * 60
		record := model.NewEngine().Run(sim.Options{Seed: 1, WarmUp: 2 * sim.Hour, Measure: minutes * sim.Minute})
		passed := 0.0
		for _, i := range s.Answer.CountedAfter {
			passed += float64(record.Stations[i].Passed)
		}
		bound := Derive(s).Bounds.Unlimited * minutes
		if passed > bound*(1.01+luck(s, model, &record))+1000 {
			t.Fatalf("%v pieces passed, the bound is %v", passed, bound)
		}
	})
}

// luck is five standard deviations of what stops without memory, which come as often as they do
// by chance, make of the output: the share of time that they take, over the root of their number.
func luck(s *scenario.Scenario, m *sim.Model, r *sim.Record) (sum float64) {
	for i := range s.Line.Stations {
		for k, name := range m.StopNames(i) {
			at := slices.IndexFunc(s.Line.Stations[i].Stops, func(stop sim.Stop) bool { return stop.Name == name })
			if stop := &r.Stations[i].Stops[k]; at >= 0 && memoryless(&s.Line.Stations[i].Stops[at]) {
				sum += 5 * float64(stop.Down) / float64(r.Window) / math.Sqrt(float64(max(1, stop.Count)))
			}
		}
	}
	return sum
}

// Without stops, rejects and waiting for the other the bound is met: what the engine makes of
// any such line is close to it.
func TestTheBoundIsMetWithoutStops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := randomNet(t)
		s.Answer.CountedAfter = []int{4, 5}
		for i := range s.Line.Stations {
			s.Line.Stations[i].Stops, s.Line.Stations[i].RejectShare = nil, 0
		}
		s.Line.Stations[4].Takes, s.Line.Stations[5].Takes = 1, 1 // or a rule could send more where less comes of it
		model, err := sim.Compile(s.Line)
		if err != nil {
			t.Fatal(err)
		}
		const minutes = 40 * 60
		record := model.NewEngine().Run(sim.Options{Seed: 1, WarmUp: 2 * sim.Hour, Measure: minutes * sim.Minute})
		passed := float64(record.Stations[4].Passed + record.Stations[5].Passed)
		if bound := Derive(s).Bounds.Unlimited * minutes; passed < bound*0.97 {
			t.Fatalf("%v pieces passed, the bound is %v", passed, bound)
		}
	})
}

// A single station has nothing to wait for, so that its bound is close; it makes no more with whatever it has,
// but for what is left to chance in so many hours.
func TestNoStationMakesMoreThanItsBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := sim.Station{Name: "a", Takes: 1, Gives: rapid.Int64Range(1, 3).Draw(t, "gives"), RejectShare: rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "rejects"), Stops: randomStops(t)}
		if rapid.Bool().Draw(t, "without memory") {
			for k := range one.Stops {
				one.Stops[k].Every = law(sim.Exponential(one.Stops[k].Every.Mean()))
			}
		}
		s := chain(one)
		withParts(t, s)
		model, err := sim.Compile(s.Line)
		if err != nil {
			t.Fatal(err)
		}
		record := model.NewEngine().Run(sim.Options{Seed: 1, WarmUp: sim.Hour, Measure: 400 * sim.Hour})
		passed, bound := float64(record.Stations[0].Passed)/(400*60), Derive(s).Bounds.Unlimited
		if passed > bound*(1.02+luck(s, model, &record))+0.01 {
			t.Fatalf("%v pieces a minute passed, the bound is %v", passed, bound)
		}
	})
}
