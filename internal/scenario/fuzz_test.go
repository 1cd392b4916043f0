package scenario_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/scenarios"
)

// seeds are all examples and all bad inputs.
func seeds(f *testing.F) [][]byte {
	f.Helper()
	var texts [][]byte
	examples, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil || len(examples) < 5 {
		f.Fatalf("%d examples: %v", len(examples), err)
	}
	for _, name := range examples {
		text, err := scenarios.FS.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		texts = append(texts, text)
	}
	bad, err := filepath.Glob(badFolder + "*.yaml")
	if err != nil {
		f.Fatal(err)
	}
	good, err := filepath.Glob(secondWords + "*.yaml")
	if err != nil || len(good) < 20 {
		f.Fatalf("%d good files: %v", len(good), err)
	}
	more, err := filepath.Glob(wholeWords + "*.yaml")
	if err != nil || len(more) < 9 {
		f.Fatalf("%d good files: %v", len(more), err)
	}
	for _, name := range append(append(bad, good...), more...) {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		texts = append(texts, text)
	}
	return texts
}

// FuzzRead reads any text: it never panics, and whatever it refuses it refuses
// with a place inside the text.
func FuzzRead(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := scenario.Read("fuzz.yaml", text, scenario.Options{})
		checkAnswer(t, s, err)
	})
}

// FuzzSet changes any value of an example.
func FuzzSet(f *testing.F) {
	for _, set := range []string{
		"cartoner.cycle=90/min", "transfer store.holds=0", "blister machine.stops.minor stop.lasts.mean=90 s", "run.seed=7",
		"cartoner.speed steps=[{from level: 60 %, back at: 30 %, run at: 90/min}]", "crews.operators=5", "line=[]", "a.b=c", "=", "cartoner.takes={transfer store: 3 blisters}", "run.replications.half-width=1 %", "run.warm-up=auto", "calendar.shifts.early.to=13:00", "calendar.shifts.night={from: 22:00, to: 06:00}", "calendar.days=[Mon-Wed, Sat]", "calendar.during breaks={relief: 1 person}", "calendar.overtime={on: Sun, from: 20:00, to: 24:00}", "crews.technicians.late=0", "crews.technicians.can also=operators", "run.starts=Thu 08:00", "run.measure=1 week", "cartoner.incomplete stack=empty pocket", "blister machine.lanes={rate: 300/min, holds: 8 blisters}", "blister machine.consumes.forming foil.web store={length: 8 m, refill: 1.3}", "blister machine.reset=1 min", "transfer belt.sensors.full.at=3 m", "transfer store.kind=beside the line", "transfer store.hand rate=90/min", "blister machine.reject runs.enter=0.3 per 1000 cycles", "cartoner.closing.heat-up=none", "cartoner.consumes.leaflets.mis-picks.per 1000=0.5", "transfer store.turns=x first", "cartoner.takes={", "title=a: b",
	} {
		f.Add(set)
	}
	text, err := scenarios.FS.ReadFile("lowmere.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, set string) {
		checkSet(t, "lowmere.yaml", text, set)
	})
}

// checkSet changes a value of a text; where that is accepted, the text with the change in it is the same model.
func checkSet(t *testing.T, file string, text []byte, set string) {
	t.Helper()
	s, err := scenario.Read(file, text, scenario.Options{Sets: []string{set}})
	checkAnswer(t, s, err)
	if err != nil {
		return
	}
	again, err := scenario.Read("again.yaml", s.Source, scenario.Options{})
	if err != nil || again.Hash() != s.Hash() {
		t.Fatalf("%q: the text with the change in it is another model: %v", set, err)
	}
}

func checkAnswer(t *testing.T, s *scenario.Scenario, err error) {
	t.Helper()
	if (s == nil) == (err == nil) {
		t.Fatalf("scenario %v with error %v", s, err)
	}
	if err == nil {
		return
	}
	var complaints scenario.Complaints
	if !errors.As(err, &complaints) || len(complaints) == 0 {
		t.Fatalf("the error is not a list of complaints: %v", err)
	}
	for _, c := range complaints {
		if c.File == "" || c.Line < 1 || c.Column < 1 || c.Text == "" || c.Excerpt == "" {
			t.Fatalf("a complaint without its place: %+v", c)
		}
	}
}
