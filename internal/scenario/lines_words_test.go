package scenario_test

import (
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// TestLinesAreRead looks at the model of three lines.
func TestLinesAreRead(t *testing.T) {
	s := whole(t, "lines")
	want := []string{
		"line 1.blister machine", "line 1.store", "line 1.cartoner", "line 1.print-and-check",
		"line 2.blister machine", "line 2.store", "line 2.cartoner", "line 2.print-and-check",
		"line 3.machine a", "line 3.machine a to line 3.machine a lanes", "line 3.machine a lanes", "line 3.machine b", "line 3.store", "line 3.cartoner",
	}
	if diff := cmp.Diff(want, s.Names()); diff != "" {
		t.Error(diff)
	}
	lines := []scenario.ProductionLine{
		{Name: "line 1", Stations: []int{0, 1, 2}, Buffers: []int{0}},
		{Name: "line 2", Stations: []int{3, 4, 5}, Buffers: []int{1}},
		{Name: "line 3", Stations: []int{6, 7, 8, 9}, Buffers: []int{2, 3}},
	}
	if diff := cmp.Diff(lines, s.Lines); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]int{1, 4, 9}, s.Answer.CountedAfter); diff != "" {
		t.Error(diff)
	}
	first, second := s.Line.Stations[0].Stops[0], s.Line.Stations[3].Stops[0]
	cv := func(law sim.Law) any { return reflect.ValueOf(law).Kind() }
	if first.Lasts.Mean() != 120e6 || second.Lasts.Mean() != 180e6 || cv(first.Lasts) != cv(second.Lasts) || second.Every.Mean() != 900 {
		t.Errorf("stops of %v and %v", first.Lasts.Mean(), second.Lasts.Mean())
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"random numbers", []string{s.Line.Stations[0].RandomAs, s.Line.Stations[3].RandomAs}, []string{"blister machine 1", "blister machine 2"}},
		{"stops with", []string{s.Line.Stations[2].StopsWith, s.Line.Stations[5].StopsWith}, []string{"line 1.cartoner", "line 2.cartoner"}},
		{"feeders", []any{s.Line.Stations[3].From, s.Line.Buffers[1].From, s.Line.Stations[4].From}, []any{"", []string{"line 2.blister machine"}, "line 2.store"}},
		{"merge", s.Line.Buffers[3].From, []string{"line 3.machine a lanes", "line 3.machine b"}},
		{"turns", s.Line.Buffers[3].Turns.First, "line 3.machine b"},
		{"at start", []int64{s.Line.Buffers[0].AtStart, s.Line.Buffers[1].AtStart, s.Line.Buffers[3].AtStart}, []int64{96, 24, 60}},
		{"cycles", []float64{s.Stations[1].SetCycle, s.Stations[4].SetCycle}, []float64{60e6 / 80, 60e6 / 70.0}},
	} {
		if diff := cmp.Diff(c.want, c.got); diff != "" {
			t.Errorf("%s: %s", c.what, diff)
		}
	}
}

// TestSetsOfLines changes values of one line, of one that copies it, and of all.
func TestSetsOfLines(t *testing.T) {
	cycles := func(s *scenario.Scenario) (all []float64) {
		for _, station := range s.Stations {
			if station.GivesUnit == "cartons" && station.TakesUnit == "blisters" {
				all = append(all, 60e6/station.SetCycle)
			}
		}
		return all
	}
	holds := func(s *scenario.Scenario) []int64 {
		return []int64{s.Line.Buffers[0].Holds, s.Line.Buffers[1].Holds, s.Line.Buffers[3].Holds}
	}
	lasts := func(s *scenario.Scenario) []float64 {
		return []float64{s.Line.Stations[0].Stops[0].Lasts.Mean() / 60e6, s.Line.Stations[3].Stops[0].Lasts.Mean() / 60e6}
	}
	for _, c := range []struct {
		set, text string
		look      any
		want      any
	}{
		{"line 1.cartoner.cycle=90/min", "cycle: 90/min", cycles, []float64{90, 70, 150}},
		{"line 2.cartoner.cycle=75/min", "cartoner: {cycle: 75/min}", cycles, []float64{80, 75, 150}},
		{"cartoner.cycle=100/min", "cartoner: {cycle: 100/min}", cycles, []float64{100, 100, 100}},
		{"line 1.store.holds=300 blisters", "holds: 300 blisters", holds, []int64{300, 300, 240}},
		{"line 2.store.holds=300 blisters", "store: {holds: 300 blisters}", holds, []int64{240, 300, 240}},
		{"store.holds=300 blisters", "holds: 300 blisters", holds, []int64{300, 300, 300}},
		{"line 1.blister machine.stops.minor stop.lasts.mean=5 min", "mean: 5 min", lasts, []float64{5, 3}},
		{"line 2.blister machine.stops.minor stop.lasts.mean=5 min", "mean: 5 min", lasts, []float64{2, 5}},
		{"blister machine.stops.minor stop.lasts.mean=5 min", "mean: 5 min", lasts, []float64{5, 5}},
		{"line 2.blister machine.stops.minor stop.lasts=4 min", "lasts: 4 min", lasts, []float64{2, 4}},
	} {
		s := whole(t, "lines", c.set)
		if got := reflect.ValueOf(c.look).Call([]reflect.Value{reflect.ValueOf(s)})[0].Interface(); !near(got, c.want) {
			t.Errorf("%s: %v, want %v", c.set, got, c.want)
		}
		if !strings.Contains(string(s.Source), c.text) {
			t.Errorf("%s: the text has no %q:\n%s", c.set, c.text, s.Source)
		}
		again, err := scenario.Read("again", s.Source, scenario.Options{})
		if err != nil || again.Hash() != s.Hash() {
			t.Errorf("%s: the text with the change in it is another model: %v", c.set, err)
		}
	}
}

func near(got, want any) bool {
	return cmp.Equal(got, want, cmp.Comparer(func(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }))
}

// TestBadSetsOfLines holds the messages of paths that lead nowhere against a file.
func TestBadSetsOfLines(t *testing.T) {
	text, err := os.ReadFile(wholeWords + "lines.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, set := range []string{
		"line 1=[]", "line 4.cartoner.cycle=90/min", "line 1.cartonner.cycle=90/min", "line 2.cartoner=90/min", "line 2.cartoner.cycel=90/min",
		"cartonner.cycle=90/min", "line 1.like=line 2", "line 2.like=line 4", "line 2.machine a.cycle=90/min", "machine a lanes.rate=90/min",
		"line 3.cartoner.stops with=bundler", "line 2.cartoner.cycle=90", "lines.line 1.cartoner.cycle=90/min",
	} {
		s, err := scenario.Read("lines.yaml", text, scenario.Options{Sets: []string{set}})
		if err == nil || s != nil {
			t.Errorf("%s was taken", set)
			continue
		}
		all.WriteString("--set \"" + set + "\"\n" + err.Error() + "\n\n")
	}
	golden(t, "testdata/bad-sets-lines.txt", all.String())
}

// TestLinesRunBesideEachOther: with people enough, a line among others does the same as alone, if it draws the same
// random numbers.
func TestLinesRunBesideEachOther(t *testing.T) {
	entries := `
  - station: blister machine
    cycle: 60/min
    gives: 4 blisters
    rejects: 1 %
    stops: {minor stop: {every: {dist: exponential, mean: 200 cycles}, lasts: {dist: lognormal, mean: 2 min, cv: 0.9}}}
  - {buffer: store, holds: 240 blisters}
  - station: cartoner
    cycle: 90/min
    takes: 3 blisters
    gives: 1 carton
    stops: {jam: {every: {dist: exponential, mean: 300 cycles}, lasts: {dist: exponential, mean: 1 min}}}
`
	read := func(text string) sim.Record {
		s, err := scenario.Read("lines", []byte("tuckline: 1\nanswer: {counted after: cartoner}\n"+text), scenario.Options{})
		if err != nil {
			t.Fatal(err)
		}
		record, _ := week(t, s)
		return record
	}
	alone := read("line:" + entries)
	both := read("lines:\n  line 1:" + strings.ReplaceAll(entries, "\n", "\n  ") +
		"\n  line 2: {like: line 1, blister machine: {random numbers as: blister machine}, cartoner: {random numbers as: cartoner}}\n")
	if diff := cmp.Diff(alone.Stations, both.Stations[2:], cmp.FilterPath(func(p cmp.Path) bool {
		return p.Last().String() == ".Because" || p.Last().String() == ".StoppedBy" // by the numbers of stations
	}, cmp.Ignore())); diff != "" {
		t.Errorf("the second line alone and beside the first: %s", diff)
	}
	if alone.Stations[1].Passed == both.Stations[1].Passed {
		t.Error("the first line draws the random numbers of the second")
	}
}

// TestLinesShareCrews: who works at one line is missing at the others. With one technician for four lines a breakdown
// waits longer than with four, and less comes out.
func TestLinesShareCrews(t *testing.T) {
	run := func(set string) (waits sim.Micros, cartons int64) {
		s := example(t, "four-lines.yaml", set)
		record, _ := week(t, s)
		for _, i := range s.Answer.CountedAfter {
			cartons += record.Stations[i].Passed
		}
		return record.Crews[1].WaitTime, cartons
	}
	oneWaits, one := run("crews.technicians=1")
	fourWaits, four := run("crews.technicians=4")
	if oneWaits <= 2*fourWaits || one >= four {
		t.Errorf("one technician: waits %v, %d cartons; four: %v, %d", oneWaits, one, fourWaits, four)
	}
}
