package scenario_test

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

const secondWords = "../../testdata/second-words/"

// second reads one of the files of the second words.
func second(t *testing.T, name string, sets ...string) *scenario.Scenario {
	t.Helper()
	text, err := os.ReadFile(secondWords + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := scenario.Read(name, text, scenario.Options{Sets: sets})
	if err != nil {
		t.Fatalf("%s\n%v", name, err)
	}
	return s
}

// TestSecondWordsRun reads every file, compiles it and runs it until something comes out.
func TestSecondWordsRun(t *testing.T) {
	files, err := filepath.Glob(secondWords + "*.yaml")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		t.Run(name, func(t *testing.T) {
			s := second(t, name)
			model, err := sim.Compile(s.Line)
			if err != nil {
				t.Fatal(err)
			}
			run := model.NewEngine().Run(sim.Options{Seed: 1, Measure: sim.Hour})
			for _, i := range s.Answer.CountedAfter {
				if run.Stations[i].Passed == 0 {
					t.Errorf("nothing came out of %s", s.Line.Stations[i].Name)
				}
			}
		})
	}
}

// What the files say, in the words of the model; figures by hand.
func TestAssemblyIsRead(t *testing.T) {
	s := second(t, "assembly")
	cartoner := s.Line.Stations[2]
	if cartoner.From != "transfer store" || cartoner.Takes != 3 || !reflect.DeepEqual(cartoner.Also, []sim.Input{{From: "leaflets", Takes: 1}}) {
		t.Errorf("the cartoner takes %d from %s and %+v", cartoner.Takes, cartoner.From, cartoner.Also)
	}
	if !cartoner.Stops[0].Scraps || s.Stations[2].TakesUnit != "blisters" || s.Stations[2].GivesUnit != "cartons" {
		t.Errorf("the cartoner: %+v, %+v", cartoner.Stops[0], s.Stations[2])
	}
	if store := s.Line.Buffers[0]; store.Start != (sim.Level{On: true, Level: 48}) || store.Restart.Level != 168 {
		t.Errorf("20 %% and 70 %% of 240 are 48 and 168, the store is %+v", store)
	}
	if label, check := s.Line.Stations[3], s.Line.Stations[4]; label.Coupled != "end" || check.Coupled != "end" || check.From != "label" {
		t.Errorf("one drive: %+v, %+v", label, check)
	}
	want := scenario.Run{AutoWarmUp: true, Measure: 8 * sim.Hour, Replications: 400, HalfWidth: 0.02, AtMost: 400, Confidence: 0.95, Seed: 1}
	if s.Run != want {
		t.Errorf("run is %+v, want %+v", s.Run, want)
	}
	if s := second(t, "assembly", "cartoner.takes.transfer store=2 blisters", "run.replications.at most=60"); s.Line.Stations[2].Takes != 2 || s.Run.AtMost != 60 || s.Run.Replications != 60 {
		t.Errorf("after the change: %+v, %+v", s.Line.Stations[2], s.Run)
	}
	if s := second(t, "assembly", "run.replications=50"); s.Run.Replications != 50 || s.Run.HalfWidth != 0 || s.Run.AtMost != 0 {
		t.Errorf("a fixed number in place of a half-width: %+v", s.Run)
	}
}

// A carton of three blisters can get two from one place and one from another.
func TestProductFromTwoPlaces(t *testing.T) {
	s := read(t, `product: {carton: {blisters: 3}}
line:
  - {station: left, cycle: 30/min, gives: 2 blisters}
  - {station: right, from: supply, cycle: 30/min, gives: 1 blister}
  - {station: cartoner, takes: {left: 2 blisters, right: 1 blister}, gives: 1 carton, cycle: 30/min}
`)
	if s.Product.BlistersPerCarton != 3 || s.Line.Stations[2].Also[0].From != "right" {
		t.Errorf("read as %+v, %+v", s.Product, s.Line.Stations[2])
	}
}

func TestBranchesAreRead(t *testing.T) {
	s := second(t, "two-branches")
	machine, packer, sampler := s.Line.Stations[0], s.Line.Stations[3], s.Line.Stations[4]
	if want := (sim.Sends{To: []string{"store 1", "store 2"}, Rule: sim.FewestPieces}); !reflect.DeepEqual(machine.Sends, want) || machine.RandomAs != "blister machine 1" {
		t.Errorf("the machine: %+v", machine)
	}
	if packer.Priority != 1 || sampler.Priority != 9 || s.Line.Buffers[2].Turns != (sim.Turns{First: "cartoner 1"}) {
		t.Errorf("packer %+v, sampler %+v, belt %+v", packer, sampler, s.Line.Buffers[2])
	}
	for rule, want := range map[string]sim.SendRule{"in turn": sim.InTurn, "first with room": sim.FirstWithRoom, "fewest pieces": sim.FewestPieces} {
		if got := second(t, "two-branches", "blister machine.sends.rule="+rule).Line.Stations[0].Sends.Rule; got != want {
			t.Errorf("%s is rule %d, want %d", rule, got, want)
		}
	}
	for turns, want := range map[string]sim.Turns{"longest waiting": {}, "alternate": {Alternate: true}, "cartoner 2 first": {First: "cartoner 2"}} {
		if got := second(t, "two-branches", "belt.turns="+turns).Line.Buffers[2].Turns; got != want {
			t.Errorf("turns %s: %+v", turns, got)
		}
	}
}

// An entry that a station sends to is fed by it, not by the entry above.
func TestSendsFeedsWhatItNames(t *testing.T) {
	s := second(t, "split-in-turn")
	if from := s.Line.Buffers[1].From; !slices.Equal(from, []string{"source"}) {
		t.Errorf("branch b is fed by %v", from)
	}
	if len(s.Warnings) != 0 {
		t.Errorf("both ends are counted, so nothing is to be warned of: %q", s.Warnings)
	}
	s = second(t, "split-in-turn", "answer.counted after=server b")
	if want := "What server a gives leaves the line: branch b below it is fed by source, which sends to it."; !slices.Equal(s.Warnings, []string{want}) {
		t.Errorf("warnings are %q", s.Warnings)
	}
}

// A place of a split or merge that holds nothing is not there: its neighbours meet.
func TestSplitOverNothing(t *testing.T) {
	s := second(t, "split-in-turn", "branch a.holds=0")
	if to := s.Line.Stations[0].Sends.To; !slices.Equal(to, []string{"server a", "branch b"}) || s.Line.Stations[1].From != "source" {
		t.Errorf("source sends to %v, server a takes from %s", to, s.Line.Stations[1].From)
	}
	s = read(t, `line:
  - {station: a, cycle: 1 s}
  - {buffer: belt a, holds: 0}
  - {station: b, from: supply, cycle: 1 s}
  - {buffer: m, from: [belt a, b], holds: 4, turns: belt a first}
  - {station: c, cycle: 1 s}
`)
	if m := s.Line.Buffers[0]; m.Turns.First != "a" || !slices.Equal(m.From, []string{"a", "b"}) {
		t.Errorf("the merge: %+v", m)
	}
	s = second(t, "assembly", "transfer store.holds=0")
	if c := s.Line.Stations[2]; c.From != "blister machine" || c.Also[0].From != "leaflets" {
		t.Errorf("the cartoner takes from %s and %+v", c.From, c.Also)
	}
	if !strings.Contains(strings.Join(s.Warnings, " "), "transfer store holds 0 places and counts as not written: its levels") {
		t.Errorf("the start level lapses: %q", s.Warnings)
	}
}

func TestScrapInTimeAndRenewedClocks(t *testing.T) {
	if got := second(t, "scrap-in-time").Line.Stations[0].AfterStop; !slices.Equal(got, []sim.ScrapRule{{Lasts: 30 * sim.Second}}) {
		t.Errorf("30 s are %+v", got)
	}
	if got := second(t, "scrap-in-cycles").Line.Stations[0].AfterStop; !slices.Equal(got, []sim.ScrapRule{{Cycles: 20}}) {
		t.Errorf("20 cycles are %+v", got)
	}
	stops := second(t, "age-replacement").Line.Stations[0].Stops
	if !slices.Equal(stops[0].Renews, []string{"replacement"}) || !stops[0].Scraps || stops[1].Scraps {
		t.Errorf("%+v", stops)
	}
	if !second(t, "exponential-unreliable-calendar").Line.Stations[1].LoadsWhileStopped {
		t.Error("like: does not copy loads")
	}
}

// What like: copies, and what it does not.
func TestLikeOfTheSecondWords(t *testing.T) {
	s := read(t, `line:
  - {station: a, from: supply, cycle: 1 s}
  - {station: b, from: supply, cycle: 1 s}
  - {station: c, takes: {a: 1, b: 2}, gives: 1, cycle: 1 s, random numbers as: x, priority: 2}
  - {station: d, from: supply, cycle: 1 s}
  - {station: e, from: supply, cycle: 1 s}
  - {station: f, like: c, takes: {d: 3, e: 4}}
  - {station: g, like: c, from: c}
answer: {counted after: [g, f]}
`)
	f, g := s.Line.Stations[5], s.Line.Stations[6]
	if f.From != "d" || f.Takes != 3 || !slices.Equal(f.Also, []sim.Input{{From: "e", Takes: 4}}) || f.Priority != 2 || f.RandomAs != "" {
		t.Errorf("f is %+v", f)
	}
	if g.From != "c" || g.Takes != 1 || len(g.Also) != 0 {
		t.Errorf("g is %+v", g)
	}
}

// A start level in percent of a small store is never below what a cycle takes; 20 % of 12 are 2.
func TestStartLevelOfASmallStore(t *testing.T) {
	for holds, want := range map[string]int64{"12 blisters": 3, "16 blisters": 3, "18 blisters": 4, "2400 blisters": 480} {
		s := second(t, "assembly", "transfer store.holds="+holds, "transfer store.levels={start downstream: 20 %}")
		if got := s.Line.Buffers[0].Start.Level; got != want {
			t.Errorf("%s: starts at %d, want %d", holds, got, want)
		}
	}
}
