package scenario_test

import (
	"fmt"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/scenarios"
)

// TestSet changes values of every kind of place and looks at the model and the
// text: comments stay, and the text read again is the same model.
func TestSet(t *testing.T) {
	for _, c := range []struct {
		set  string
		look func(s *scenario.Scenario) any
		want string
		line string // of the new text
	}{
		{"transfer store.holds=480 blisters", func(s *scenario.Scenario) any { return s.Line.Buffers[1].Holds }, "480", "    holds: 480 blisters                 # 3 min at 240/min; the question: 0, 240, 480, 720, 1200 or 2400?"},
		{"blister machine.stops.minor stop.lasts.mean=90 s", func(s *scenario.Scenario) any { return s.Line.Stations[0].Stops[0].Lasts }, "lognormal, mean 9e+07, cv 0.9", "        lasts: {dist: lognormal, mean: 90 s, cv: 0.9}"},
		{"blister machine.stops.minor stop.every={dist: weibull, mean: 900 cycles, cv: 1.2}", func(s *scenario.Scenario) any { return s.Line.Stations[0].Stops[0].Every.Kind() }, "weibull", "        every: {dist: weibull, mean: 900 cycles, cv: 1.2}   # counted in cycles: a machine that stands does not jam"},
		{"run.replications=10", func(s *scenario.Scenario) any { return s.Run.Replications }, "10", "  replications: 10"},
		{"run.seed = 7", func(s *scenario.Scenario) any { return s.Run.Seed }, "7", "  seed: 7"},
		{"crews.operators=5", func(s *scenario.Scenario) any { return s.Line.Crews[0].People }, "5", "  operators: 5"},
		{"crews.technicians.busy elsewhere.share=25 %", func(s *scenario.Scenario) any { return s.Line.Crews[1].ElsewhereShare }, "0.25", "  technicians: {people: 1, busy elsewhere: {share: 25 %, spell: 20 min}}      # half of one technician's time"},
		{"transfer store.levels.stop upstream=90 %", func(s *scenario.Scenario) any { return s.Line.Buffers[1].StopUpstream }, "648", "    levels: {stop upstream: 90 %, restart upstream: 70 %, start downstream: 20 %, empty out at batch end: yes}"},
		{"cartoner.stop rate factor=1.5", func(s *scenario.Scenario) any { return s.Line.Stations[1].Stops[0].RateFactor }, "1.5", "    stop rate factor: 1.5"},
		{"transfer store.transit=5 s", func(s *scenario.Scenario) any { return s.Line.Buffers[1].Transit }, "5000000", "    transit: 5 s"},
		{"cartoner.consumes.leaflets.refill.amount=300 leaflets", func(s *scenario.Scenario) any { return s.Line.Stations[1].Materials[1].Refill }, "300", "        refill: {amount: 300 leaflets, lasts: 0.5 min, alarm at: 300 leaflets, crew: operators}"},
		{"cartoner.speed steps=[{from level: 60 %, back at: 30 %, run at: 90/min}]", func(s *scenario.Scenario) any { return s.Line.Stations[1].Steps }, "[{432 216 666667 0}]", "    speed steps: [{from level: 60 %, back at: 30 %, run at: 90/min}]                        # else, at 100/min, it empties the store of 144 and waits for 144 each 3 min"},
		{"blister machine.after standstill.scrap=12 cycles", func(s *scenario.Scenario) any { return s.Line.Stations[0].AfterStandstill[0].Cycles }, "12", "    after standstill: {if longer than: 1 min, scrap: 12 cycles}                     # any standstill, also \"store full\""},
		{"run.at start.transfer belt=10 %", func(s *scenario.Scenario) any { return s.Line.Buffers[0].AtStart }, "13", "  at start: {reels: part used, magazines: part used, transfer store: empty, transfer belt: 10 %}   # a shift never begins with every reel new"},
		{"title=Lowmere: what if", func(s *scenario.Scenario) any { return s.Title }, "Lowmere: what if", `title: "Lowmere: what if"`},
	} {
		if strings.HasPrefix(c.set, "title") {
			c.set = `title="Lowmere: what if"`
		}
		s := example(t, "lowmere.yaml", c.set)
		if got := fmt.Sprint(c.look(s)); got != c.want {
			t.Errorf("%s gives %s, want %s", c.set, got, c.want)
		}
		if !strings.Contains(string(s.Source), "\n"+c.line+"\n") {
			t.Errorf("%s: the text has no line %q", c.set, c.line)
		}
		again, err := scenario.Read("again", s.Source, scenario.Options{})
		if err != nil || again.Hash() != s.Hash() {
			t.Errorf("%s: the new text is another model: %v", c.set, err)
		}
	}
}

// TestSetTwiceAndBelowLike changes below a copied entry, where nothing is written yet.
func TestSetTwiceAndBelowLike(t *testing.T) {
	s := example(t, "brackwater-merged.yaml",
		"blister machine 2.stops.minor stop.lasts.mean=3 min",
		"blister machine 2.stops.minor stop.lasts.cv=1.1",
		"blister machine 2.cycle=45/min",
		"blister machine 1.rejects=1 %")
	one, two := s.Line.Stations[0], s.Line.Stations[1]
	if got := fmt.Sprint(two.Stops[0].Lasts, two.RejectShare, one.Stops[0].Lasts); got != "lognormal, mean 1.8e+08, cv 1.1 0.01 lognormal, mean 1.08e+08, cv 0.9" {
		t.Errorf("got %s", got)
	}
	if two.Cycle.Mean() != 60e6/45.0 || one.Cycle.Mean() != 1.2e6 {
		t.Errorf("cycles %v and %v", one.Cycle, two.Cycle)
	}
	again, err := scenario.Read("again", s.Source, scenario.Options{})
	if err != nil || again.Hash() != s.Hash() {
		t.Errorf("the new text is another model: %v\n%s", err, s.Source)
	}
}

// TestBadSets holds the whole messages of wrong changes against a file.
func TestBadSets(t *testing.T) {
	text, err := scenarios.FS.ReadFile("lowmere.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, set := range []string{
		"cartoner", "cartoner.cycle", "=90/min", "cartoner=90/min", "cartonner.cycle=90/min", "cartoner.cycel=90/min",
		"cartoner.cycle=90", "cartoner.cycle=", "cartoner.cycle=[1 s, 2 s]", "cartoner.cycle={dist: lognormal, mean: 1 s}",
		"cartoner.cycle.mean=1 s", "cartoner.speed steps.from level=40 %", "cartoner.speed steps.0.from level=40 %",
		"blister machine.stops.minor stp.lasts.mean=90 s", "blister machine.stops.minor stop.lasts.men=90 s",
		"transfer store.holds=2", "transfer store.holds=2 blisters", "transfer store.holds=720 cartons", "transfer store.levels.stop=90 %",
		"crews.operator=2", "crews.operators.people=2", "run.replication=10", "run.seed=1.5", "calendar.days=Monday", "calendar.shifts.erly.to=15:00", "calendar.shifts.early.to=15:00", "crews.operators.late=2", "crews.technicians.lat=2", "money.currency=EUR",
		"line=[]", "run.at start.transfer stor=10 %", "cartoner.cycle={", "cartoner.cycle=90/min: x", "title.x=y", "wheelbase=3", "cartoner.cycle=*x",
	} {
		_, err := scenario.Read("lowmere.yaml", text, scenario.Options{Sets: []string{set}})
		if err == nil {
			t.Errorf("%s was taken", set)
			continue
		}
		fmt.Fprintf(&all, "--set %q\n%v\n\n", set, err)
	}
	golden(t, "testdata/bad-sets.txt", all.String())
}
