package scenario_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

const wholeWords = "../../testdata/whole-words/"

// whole reads one of the files of the words of the whole line.
func whole(t *testing.T, name string, sets ...string) *scenario.Scenario {
	t.Helper()
	text, err := os.ReadFile(wholeWords + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := scenario.Read(name, text, scenario.Options{Sets: sets})
	if err != nil {
		t.Fatalf("%s %q\n%v", name, sets, err)
	}
	return s
}

// TestWholeWordsAreRead changes the words of the whole line one by one, looks at the model, and
// reads the text with the change in it again. Figures by hand.
func TestWholeWordsAreRead(t *testing.T) {
	crew := sim.Work{Crew: "operators", People: 1, Priority: 5}
	nobody := sim.Work{Priority: 5}
	station := func(i int) func(*scenario.Scenario) sim.Station {
		return func(s *scenario.Scenario) sim.Station { return s.Line.Stations[i] }
	}
	buffer := func(s *scenario.Scenario) sim.Buffer { return s.Line.Buffers[0] }
	machine := station(0)
	for _, c := range []struct {
		file, set string
		look      func(s *scenario.Scenario) any
		want      any
	}{
		{
			"reels", "", func(s *scenario.Scenario) any {
				m := machine(s).Materials[0]
				return []any{m.Web, m.Store, m.SpliceScrap, m.SpliceFails, m.Prepare.On}
			},
			[]any{true, sim.WebStore{On: true, Length: 8_000_000, Refill: 1.3}, int64(8), 0.1, false},
		},
		{"reels", "blister machine.consumes.forming foil.web store.length=12 m", func(s *scenario.Scenario) any { return machine(s).Materials[0].Store.Length }, sim.Micrometres(12_000_000)},
		{"reels", "blister machine.consumes.forming foil.web store={length: 6 m, refill: 1.5}", func(s *scenario.Scenario) any { return machine(s).Materials[0].Store.Refill }, 1.5},
		{"reels", "blister machine.consumes.forming foil.splice scrap=0 cycles", func(s *scenario.Scenario) any { return machine(s).Materials[0].SpliceScrap }, int64(0)},
		{"reels", "blister machine.consumes.forming foil.splice fails=2 %", func(s *scenario.Scenario) any { return machine(s).Materials[0].SpliceFails }, 0.02},
		{"reels", "blister machine.consumes.lidding foil.prepare.lasts=5 min", func(s *scenario.Scenario) any { return machine(s).Materials[1].Prepare }, sim.Prepare{On: true, Lasts: sim.Fixed(300e6), Crew: crew}},
		{"reels", "blister machine.consumes.coding ribbon.change by=prepared", func(s *scenario.Scenario) any {
			m := machine(s).Materials[2]
			return []any{m.Web, m.Prepare.On, m.Store.On}
		}, []any{false, false, false}},
		{
			"reels", "cartoner.consumes.blanks.mis-picks.per 1000=0.8", func(s *scenario.Scenario) any { return station(1)(s).Materials[0].MisPicks },
			sim.MisPicks{Share: 0.8 / 1000, Retries: 2, Stops: true, Lasts: sim.Fixed(60e6), Crew: crew},
		},
		{"reels", "cartoner.consumes.blanks.mis-picks={per 1000: 2}", func(s *scenario.Scenario) any { return station(1)(s).Materials[0].MisPicks }, sim.MisPicks{Share: 0.002, Crew: nobody}},
		{"reels", "cartoner.consumes.blanks.refill.alarm at=600 blanks", func(s *scenario.Scenario) any { return station(1)(s).Materials[0].Alarm }, sim.Level{On: true, Level: 600}},

		{
			"rejects", "", func(s *scenario.Scenario) any {
				m := machine(s)
				return []any{m.RejectShare, m.RejectsAfter, m.RejectStop.After, m.RejectStop.Crew}
			},
			[]any{0.004, int64(8), int64(3), crew},
		},
		{"rejects", "blister machine.reject runs.enter=3 per 2 000 cycles", func(s *scenario.Scenario) any { return machine(s).Runs }, sim.RejectRuns{Enter: 0.0015, Share: 0.3, Length: 12.5}},
		{"rejects", "blister machine.reject runs.length=1 cycle", func(s *scenario.Scenario) any { return machine(s).Runs.Length }, 1.0},
		{"rejects", "blister machine.stop after=5 cycles", func(s *scenario.Scenario) any { return machine(s).RejectStop.After }, int64(5)},
		{"rejects", "blister machine.reset=90 s", func(s *scenario.Scenario) any { return machine(s).RejectStop }, sim.RejectStop{After: 3, Lasts: sim.Fixed(90e6), Crew: nobody}},
		{"rejects", "blister machine.reset.lasts.mean=2 min", func(s *scenario.Scenario) any { return machine(s).RejectStop.Lasts.Mean() }, 120e6},
		{"rejects", "blister machine.inspection.rejects after=0 cycles", func(s *scenario.Scenario) any { return machine(s).RejectsAfter }, int64(0)},
		{
			"rejects", "blister machine.checks.leak test.takes=6 blisters", func(s *scenario.Scenario) any { return machine(s).Checks[0] },
			sim.Check{Name: "leak test", Every: sim.Fixed(45 * 60e6), Clock: sim.RunningClock, Takes: 6, Lasts: sim.Fixed(180e6), Crew: crew},
		},
		{"rejects", "blister machine.checks.weight.every=500 cycles", func(s *scenario.Scenario) any {
			c := machine(s).Checks[1]
			return []any{c.Clock, c.Every.Mean(), c.Crew.People}
		}, []any{sim.CycleClock, 500.0, 2}},
		{"rejects", "", func(s *scenario.Scenario) any { return machine(s).Checks[1].Clock }, sim.PieceClock},
		{"rejects", "print-and-check.no-reads=0.2 %", func(s *scenario.Scenario) any { return station(2)(s).NoReads }, 0.002},
		{"rejects", "print-and-check.lost per stop=0 cartons", func(s *scenario.Scenario) any { return station(2)(s).LostPerStop }, int64(0)},

		{"cartoner", "", func(s *scenario.Scenario) any {
			return []any{machine(s).HeatRecovery, s.Stations[0].Guaranteed, s.Stations[1].Guaranteed}
		}, []any{20 * sim.Second, 0.92, 0.0}},
		{
			"cartoner", "", func(s *scenario.Scenario) any {
				c := station(1)(s)
				return []any{c.EmptyPockets, c.HeatUp, c.Steps[0].Delay}
			},
			[]any{sim.EmptyPockets{On: true, Most: 7}, 45 * sim.Minute, 5 * sim.Second},
		},
		{"cartoner", "blister machine.guaranteed=90.5 %", func(s *scenario.Scenario) any { return s.Stations[0].Guaranteed }, 0.905},
		{"cartoner", "cartoner.incomplete stack=empty pocket", func(s *scenario.Scenario) any { return station(1)(s).EmptyPockets }, sim.EmptyPockets{On: true, Most: 5}},
		{"cartoner", "cartoner.incomplete stack=wait", func(s *scenario.Scenario) any { return station(1)(s).EmptyPockets }, sim.EmptyPockets{}},
		{"cartoner", "cartoner.incomplete stack.empty pocket=3 cycles", func(s *scenario.Scenario) any { return station(1)(s).EmptyPockets.Most }, int64(3)},
		{"cartoner", "cartoner.closing={by: tuck-in}", func(s *scenario.Scenario) any { return station(1)(s).HeatUp }, sim.Micros(0)},
		{"cartoner", "cartoner.closing.heat-up=none", func(s *scenario.Scenario) any { return station(1)(s).HeatUp }, sim.Micros(0)},

		{"lanes", "", func(s *scenario.Scenario) any { return s.Names() }, []string{"blister machine", "blister machine to blister machine lanes", "blister machine lanes", "store", "cartoner"}},
		{
			"lanes", "blister machine.lanes.rate=240/min", func(s *scenario.Scenario) any {
				l := station(1)(s)
				return []any{l.Name, l.Takes, l.Gives, l.Cycle.Mean(), l.From}
			},
			[]any{"blister machine lanes", int64(1), int64(1), 250e3, "blister machine to blister machine lanes"},
		},
		{"lanes", "blister machine.lanes.holds=12 blisters", func(s *scenario.Scenario) any { b := buffer(s); return []any{b.Holds, b.From} }, []any{int64(12), []string{"blister machine"}}},
		{"lanes", "blister machine.lanes.stops.jam.lasts=90 s", func(s *scenario.Scenario) any {
			j := station(1)(s).Stops[0]
			return []any{j.Lasts, j.Clock, j.Every.Mean()}
		}, []any{sim.Fixed(90e6), sim.PieceClock, 8000.0}},
		{"lanes", "blister machine.lanes={rate: 300/min}", func(s *scenario.Scenario) any {
			return []any{station(1)(s).From, buffer(s).Name, buffer(s).Holds, s.Line.Buffers[1].From[0]}
		}, []any{"blister machine to blister machine lanes", "blister machine to blister machine lanes", int64(8), "blister machine lanes"}},

		// 4 m and 1 m of pieces 62 mm apart are 64.5 and 16.1 pieces; at 0.4 m/s the belt runs 65 × 62 mm in 10.075 s, 17 × 62 mm in
		// 2.635 s.
		{
			"sensors", "", func(s *scenario.Scenario) any { b := buffer(s); return []any{b.Full, b.Clear, b.Stands} },
			[]any{sim.Sensor{On: true, At: 65, Delay: 2 * sim.Second, Travel: 10_075_000}, sim.Sensor{On: true, At: 17, Delay: 3 * sim.Second, Travel: 2_635_000}, false},
		},
		{"sensors", "belt.sensors.full.at=6.2 m", func(s *scenario.Scenario) any { return buffer(s).Full.At }, int64(100)},
		{"sensors", "belt.sensors={full: {at: 3 m, delay: 1 s}}", func(s *scenario.Scenario) any { b := buffer(s); return b.Clear == b.Full && b.Full.At == 49 }, true},
		{"standing-belt", "", func(s *scenario.Scenario) any { return buffer(s).Stands }, true},
		{"standing-belt", "belt.accumulating=yes", func(s *scenario.Scenario) any { return buffer(s).Stands }, false},

		{
			"store-in-line", "", func(s *scenario.Scenario) any {
				b := buffer(s)
				return []any{b.Kind, b.LastIn, b.Keeps, b.Out, b.In, b.Surplus}
			},
			[]any{sim.InLine, true, int64(60), sim.Micros(181_818), sim.Micros(208_333), sim.Micros(0)},
		},
		{"store-in-line", "", func(s *scenario.Scenario) any {
			j := buffer(s).Stops[0]
			return []any{j.Name, j.Clock, j.Class, j.Crew}
		}, []any{"jam", sim.PieceClock, sim.Breakdown, sim.Work{Crew: "operators", People: 1, Priority: 3}}},
		{"store-in-line", "store.stops.air.lasts=6 min", func(s *scenario.Scenario) any { j := buffer(s).Stops[1]; return []any{j.Clock, j.Class, j.Lasts} }, []any{sim.CalendarClock, sim.External, sim.Fixed(360e6)}},
		{"store-in-line", "store.keeps=0 blisters", func(s *scenario.Scenario) any { return buffer(s).Keeps }, int64(0)},
		{"store-in-line", "store.leaves=first in first out", func(s *scenario.Scenario) any { return buffer(s).LastIn }, false},
		{"store-in-line", "store.in at most=10 blisters/s", func(s *scenario.Scenario) any { return buffer(s).In }, sim.Micros(100_000)},
		{"store-in-line", "store.out at most=300/min", func(s *scenario.Scenario) any { return buffer(s).Out }, sim.Micros(200_000)},
		{"store-beside", "store.surplus=20/min", func(s *scenario.Scenario) any { b := buffer(s); return []any{b.Kind, b.Surplus} }, []any{sim.BesideLine, 3 * sim.Second}},
		{
			"hand-magazine", "", func(s *scenario.Scenario) any { b := buffer(s); return []any{b.Kind, b.AtStart, b.Hand} },
			[]any{sim.HandMagazine, int64(300), sim.Hand{PerPiece: 666_667, Load: 30, Crew: crew}},
		},
		{"hand-magazine", "magazine.returns.share=25 %", func(s *scenario.Scenario) any { return buffer(s).Returns }, sim.Returns{Share: 0.25, Inspection: sim.Fixed(12e6), Crew: crew}},
		{"hand-magazine", "magazine.load=15 blisters", func(s *scenario.Scenario) any { return buffer(s).Hand.Load }, int64(15)},
		{"hand-magazine", "magazine.hand rate=120/min", func(s *scenario.Scenario) any { return buffer(s).Hand.PerPiece }, sim.Micros(500_000)},
		{"hand-magazine", "magazine.stock=600 blisters", func(s *scenario.Scenario) any { return buffer(s).AtStart }, int64(600)},
		{"hand-magazine", "magazine.crew=2 operators", func(s *scenario.Scenario) any { return buffer(s).Hand.Crew.People }, 2},
	} {
		var sets []string
		if c.set != "" {
			sets = []string{c.set}
		}
		s := whole(t, c.file, sets...)
		if got := c.look(s); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s, %s: got %+v, want %+v", c.file, c.set, got, c.want)
		}
		again, err := scenario.Read("again", s.Source, scenario.Options{})
		if err != nil || again.Hash() != s.Hash() || !reflect.DeepEqual(again.Line, s.Line) {
			t.Errorf("%s, %s: the new text is another model: %v", c.file, c.set, err)
		}
		before := whole(t, c.file)
		same := reflect.DeepEqual(before.Line, s.Line) && reflect.DeepEqual(before.Stations, s.Stations) && reflect.DeepEqual(before.Answer, s.Answer)
		if (before.Hash() == s.Hash()) != same {
			t.Errorf("%s, %s: the hash says that the same model is another, or another the same", c.file, c.set)
		}
	}
}

// TestWholeWordsRun reads every file, compiles it and runs it until something comes out.
func TestWholeWordsRun(t *testing.T) {
	files, err := filepath.Glob(wholeWords + "*.yaml")
	if err != nil || len(files) < 9 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		t.Run(name, func(t *testing.T) {
			s := whole(t, name)
			if len(s.Warnings) > 0 {
				t.Errorf("warnings: %q", s.Warnings)
			}
			model, err := sim.Compile(s.Line)
			if err != nil {
				t.Fatal(err)
			}
			run := model.NewEngine().Run(sim.Options{Seed: 1, Measure: 4 * sim.Hour})
			if out := run.Stations[s.Answer.CountedAfter[0]].Passed; out == 0 {
				t.Error("nothing came out")
			}
		})
	}
}

// A change below a copied entry is its own; lanes are changed inside of their machine.
func TestLanesAreChangedInsideTheirMachine(t *testing.T) {
	s := whole(t, "merged-lanes", "machine 2.lanes.rate=180/min")
	if one, two := s.Line.Stations[1], s.Line.Stations[3]; one.Cycle.Mean() != 400e3 || two.Name != "machine 2 lanes" || math.Abs(two.Cycle.Mean()-1e6/3) > 1e-3 {
		t.Errorf("lanes pass on at %v and %v", one.Cycle, two.Cycle)
	}
	again, err := scenario.Read("again", s.Source, scenario.Options{})
	if err != nil || again.Hash() != s.Hash() {
		t.Errorf("the new text is another model: %v", err)
	}
	text, err := os.ReadFile(wholeWords + "lanes.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, err = scenario.Read("lanes.yaml", text, scenario.Options{Sets: []string{"blister machine lanes.cycle=200/min"}})
	if want := `"blister machine lanes" are written inside of "blister machine"; their words are rate, holds and stops, such as "blister machine.lanes.rate"`; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("got %v, want %s", err, want)
	}
}

// Lanes stand behind their machine for everybody who names it.
func TestWhatFollowsLanes(t *testing.T) {
	s := read(t, `line:
  - {station: a, cycle: 1 s, gives: 2 blisters, lanes: {rate: 200/min}, sends: {to: [x, y], rule: in turn}, random numbers as: old}
  - {buffer: x, holds: 20 blisters}
  - {station: c, from: x, cycle: 1 s, takes: 2 blisters, gives: 1 carton}
  - {buffer: y, holds: 20 blisters}
  - {station: d, from: y, cycle: 1 s, takes: 2 blisters, gives: 1 carton, stops with: a lanes}
  - {station: b, like: a, sends: {to: [p, q], rule: fewest pieces}, from: supply}
  - {buffer: p, holds: 20 blisters}
  - {station: e, from: p, cycle: 1 s, takes: 2 blisters, gives: 1 carton}
  - {station: f, cycle: 1 s, takes: {q: 1 blister, g: 1 leaflet}, gives: 1 carton}
  - {station: g, from: supply, cycle: 1 s, gives: 2 leaflets, lanes: {rate: 200/min}}
  - {buffer: q, holds: 20 blisters}
answer: {counted after: [c, d, e, f]}
`)
	byName := map[string]sim.Station{}
	for _, one := range s.Line.Stations {
		byName[one.Name] = one
	}
	if one := byName["a"]; len(one.Sends.To) > 0 || one.RandomAs != "old" {
		t.Errorf("a: %+v", one)
	}
	if one := byName["a lanes"]; !reflect.DeepEqual(one.Sends, sim.Sends{To: []string{"x", "y"}, Rule: sim.InTurn}) || one.RandomAs != "old lanes" || one.From != "a to a lanes" {
		t.Errorf("a lanes: %+v", one)
	}
	if one := byName["b lanes"]; !reflect.DeepEqual(one.Sends.To, []string{"p", "q"}) || one.RandomAs != "" {
		t.Errorf("b lanes, like a: %+v", one)
	}
	if got := byName["d"].StopsWith; got != "a lanes" {
		t.Errorf("d stops with %s", got)
	}
	if one := byName["f"]; !reflect.DeepEqual(one.Also, []sim.Input{{From: "g lanes", Takes: 1}}) {
		t.Errorf("f takes from %+v", one.Also)
	}
	s = read(t, `line:
  - {station: a, cycle: 1 s, gives: 2 blisters, lanes: {rate: 200/min}}
  - {station: b, from: supply, cycle: 1 s, gives: 2 blisters}
  - {buffer: m, from: [a, b], holds: 20 blisters, turns: a first}
  - {station: c, cycle: 1 s, takes: 2 blisters, gives: 1 carton}
`)
	if m := s.Line.Buffers[1]; m.Turns.First != "a lanes" || !reflect.DeepEqual(m.From, []string{"a lanes", "b"}) {
		t.Errorf("the merge: %+v", m)
	}
	for _, after := range []string{"blister machine", "blister machine lanes"} {
		if s := whole(t, "lanes", "answer={counted after: "+after+"}"); s.Answer.Unit != "blisters" || s.Line.Stations[s.Answer.CountedAfter[0]].Name != after {
			t.Errorf("counted after %s: %+v", after, s.Answer)
		}
	}
}

// What is read and is not what it may seem. Figures by hand: 1 − 0.992⁴ = 0.0316 of the cycles have a
// reject, 0.0316³ = 3.2e-5, and (1 − 3.16e-5)/(3.16e-5 · 0.968) = 33,000.
func TestWarningsOfTheWholeLine(t *testing.T) {
	const machine = "run: {warm-up: 2 h}\nline:\n  - {station: a, cycle: 1 s, gives: 4 blisters, %s}\n  - {buffer: b, holds: 40 blisters}\n  - {station: c, cycle: 1 s, takes: 4 blisters, gives: 1 carton, %s}\n"
	for _, c := range []struct{ a, c, want string }{
		{"rejects: 0.8 %, stop after: 3 cycles, reset: 1 min", "gives: 1 carton", "a stops after 3 cycles in a row with a reject, but its rejects come one by one: 3.2 % of the cycles have one, so that 3 in a row begin with a probability of 0.0032 %, once in about 33 000 cycles. Write reject runs for those that come in a row."},
		{"rejects: 0 %, stop after: 3 cycles, reset: 1 min", "", "a stops after 3 cycles in a row with a reject, but its rejects come one by one: this practically never happens. Write reject runs for those that come in a row."},
		{"", "closing: {by: hot melt, heat-up: 45 min}", "The heat-up of c, 45 min, lies within the warm-up of the run, 2 h: the measured window does not show it."},
	} {
		text := fmt.Sprintf(machine, c.a, c.c)
		text = strings.NewReplacer(", }", "}", ", gives: 1 carton, gives: 1 carton", ", gives: 1 carton").Replace(text)
		if got := read(t, text).Warnings; !reflect.DeepEqual(got, []string{c.want}) {
			t.Errorf("warnings are\n%q, want\n%q", got, c.want)
		}
	}
	got := whole(t, "sensors", "belt.sensors={full: {at: 1 m, delay: 2 s}, clear: {at: 3 m, delay: 4 s}}").Warnings
	if want := "Of the sensors on belt, clear at 3 m lies farther from the exit than full at 1 m: what full stops starts again after 4 s even if nothing has moved, unless the queue has reached clear too."; !reflect.DeepEqual(got, []string{want}) {
		t.Errorf("warnings are %q, want %q", got, want)
	}
}

// A test that takes as many as come from one to the next leaves nothing: by hand 10 cartons, 10 cycles of 2, and 1 min at 60 cycles
// of 2 are 10, 20 and 120 of them. One fewer is a test.
func TestATestLeavesSomething(t *testing.T) {
	const line = "tuckline: 1\ntitle: x\nline:\n  - {station: c, cycle: 60/min, gives: 2 cartons, checks: {t: {every: %s, takes: %d cartons, lasts: 1 min}}}\n"
	for every, pieces := range map[string]int{"10 cartons": 10, "10 cycles": 20, "1 min running": 120, "1 min calendar": 120} {
		_, err := scenario.Read("line.yaml", []byte(fmt.Sprintf(line, every, pieces)), scenario.Options{})
		if want := fmt.Sprintf("takes %d at a time, but only %d come from one test to the next", pieces, pieces); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("every %s, %d: got %v", every, pieces, err)
		}
		if _, err := scenario.Read("line.yaml", []byte(fmt.Sprintf(line, every, pieces-1)), scenario.Options{}); err != nil {
			t.Errorf("every %s, %d: got %v", every, pieces-1, err)
		}
	}
}
