package scenario_test

import (
	"io/fs"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/scenarios"
	"tuckline/sim"
)

// TestExamplesReadAgain reads every example, and its text again.
func TestExamplesReadAgain(t *testing.T) {
	names, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil || len(names) < 5 {
		t.Fatalf("%d examples: %v", len(names), err)
	}
	for _, name := range names {
		s := example(t, name)
		again, err := scenario.Read(name, s.Source, scenario.Options{})
		if err != nil || again.Hash() != s.Hash() {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := sim.Compile(s.Line); err != nil {
			t.Errorf("%s cannot be compiled: %v", name, err)
		}
		for _, line := range s.Line.Stations {
			for _, stop := range line.Stops {
				if stop.Name == "breakdown" && stop.Class != sim.Breakdown {
					t.Errorf("%s: a breakdown of %s counts as %v", name, line.Name, stop.Class)
				}
			}
		}
	}
}

func TestFirstLineIsShort(t *testing.T) {
	text, err := scenarios.FS.ReadFile("first-line.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if lines := strings.Count(string(text), "\n"); lines >= 25 {
		t.Errorf("first-line.yaml has %d lines", lines)
	}
}

// TestCommandsInComments tries every --set that a comment of an example teaches.
func TestCommandsInComments(t *testing.T) {
	names, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	taught := 0
	for _, name := range names {
		text, err := scenarios.FS.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, set := range regexp.MustCompile(`--set "([^"]+)"`).FindAllStringSubmatch(string(text), -1) {
			example(t, name, set[1])
			taught++
		}
	}
	if taught < 4 {
		t.Errorf("only %d changes are taught", taught)
	}
}

// TestFormatSheets holds what was read against the figures of the format sheets:
// lengths of reels by π(D²−d²)/(4t) less what is unusable, rounded to the metre,
// places of belts by length through pitch, times by length through speed.
func TestFormatSheets(t *testing.T) {
	for _, c := range []struct {
		file                           string
		forming, lidding               float64 // m
		places                         int64
		transit                        sim.Micros
		restart, speedFrom, speedUntil int64
		set, top                       float64 // cycles/min of the cartoner
	}{
		{"lowmere.yaml", 1101, 2440, 129, 20 * sim.Second, 504, 360, 288, 80, 100},
		{"tarn-hollow.yaml", 1390, 2440, 62, 20 * sim.Second, 504, 360, 288, 72, 90},
		{"brackwater-merged.yaml", 1101, 2440, 172, 25 * sim.Second, 840, 600, 480, 150, 180},
		{"brackwater-wide.yaml", 1101, 2440, 120, 17500 * sim.Second / 1000, 840, 600, 480, 150, 180},
	} {
		s := example(t, c.file)
		reels := s.Line.Stations[0].Materials
		if f, l := math.Round(float64(reels[0].Amount)/1e6), math.Round(float64(reels[1].Amount)/1e6); f != c.forming || l != c.lidding {
			t.Errorf("%s: reels of %v and %v m, want %v and %v", c.file, f, l, c.forming, c.lidding)
		}
		belt, store := s.Line.Buffers[0], s.Line.Buffers[len(s.Line.Buffers)-1]
		if belt.Holds != c.places || belt.Transit != c.transit || !belt.Conveyor {
			t.Errorf("%s: the belt is %+v", c.file, belt)
		}
		if !store.Restart.On || store.Restart.Level != c.restart || store.StopUpstream != 0 {
			t.Errorf("%s: the store is %+v", c.file, store)
		}
		for i := range s.Line.Stations {
			if station := s.Line.Stations[i]; station.Name == "cartoner" {
				step := station.Steps[0]
				if step.From != c.speedFrom || step.BackAt != c.speedUntil || step.Cycle != sim.Micros(math.Round(60e6/c.top)) {
					t.Errorf("%s: the speed step is %+v", c.file, step)
				}
				if math.Abs(s.Stations[i].SetCycle-60e6/c.set) > 1e-6 || math.Abs(s.Stations[i].TopCycle-60e6/c.top) > 1e-6 {
					t.Errorf("%s: speeds are %+v", c.file, s.Stations[i])
				}
			}
		}
	}
}

// TestWarningsOfExamples: what the examples are warned of while they are read.
func TestWarningsOfExamples(t *testing.T) {
	const heatUp = "The heat-up of cartoner, 45 min, lies within the warm-up of the run, 2 h: the measured window does not show it."
	want := map[string][]string{
		"brackwater-merged.yaml": {heatUp},
		"brackwater-wide.yaml":   {heatUp},
	}
	names, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		if got := example(t, name).Warnings; !slices.Equal(got, want[name]) {
			t.Errorf("%s: warnings are %q, want %q", name, got, want[name])
		}
	}
}

// TestTeachingFiles holds what the comments of the small files say against what was read.
func TestTeachingFiles(t *testing.T) {
	// 8 m of 132 mm are 60 cycles of 1 s; a normal splice of 40 ± 6 s is 58.5 s at 99.9 % (z 3.09), 7.7 m at 7.92 m/min.
	foil := example(t, "lowmere-splicing.yaml").Line.Stations[0].Materials[0]
	if foil.Store.Length/foil.PerCycle != 60 || math.Abs(foil.Lasts.Mean()-40e6) > 1e3 || math.Abs((40+3.09*6)*7.92/60-7.7) > 0.05 {
		t.Errorf("the web store: %+v", foil)
	}
	// Runs take 12 of 3,333 + 12 cycles: 0.36 % at 30 %, the rest at 0.7 %.
	m := example(t, "lowmere-rejects.yaml").Line.Stations[0]
	in := m.Runs.Length / (1/m.Runs.Enter + m.Runs.Length)
	if all := in*m.Runs.Share + (1-in)*m.RejectShare; math.Abs(all-0.008) > 0.0002 {
		t.Errorf("rejects are %.4f in all", all)
	}
	// p = 1 − 0.993⁴ = 0.0277; three in a row once in (1 − p³)/(p³(1 − p)) = 48,300 cycles of 1 s (Feller XIII.7, from memory).
	p := 1 - math.Pow(1-m.RejectShare, 4)
	if cycles := (1 - p*p*p) / (p * p * p * (1 - p)); math.Abs(cycles/48_000-1) > 0.02 {
		t.Errorf("three in a row once in %.0f cycles", cycles)
	}
	// 5 m and 1 m of 62 mm are 80.6 and 16.1 pieces.
	if belt := example(t, "lowmere-sensors.yaml").Line.Buffers[0]; belt.Full.At != 81 || belt.Clear.At != 17 || belt.Holds != 129 {
		t.Errorf("the sensors: %+v", belt)
	}
	// 60/min on top of 240/min are 100 cartons of 3 a minute.
	beside := example(t, "lowmere-beside.yaml")
	if store := beside.Line.Buffers[2]; store.Surplus != sim.Second || !store.LastIn || store.Kind != sim.BesideLine || beside.Stations[2].SetCycle != 600e3 {
		t.Errorf("the store: %+v", store)
	}
	// 30 blisters at 90/min are 20 s.
	if hand := example(t, "lowmere-hand.yaml").Line.Buffers[2].Hand; math.Abs(float64(int64(hand.PerPiece)*hand.Load)-20e6) > 100 {
		t.Errorf("a load takes %d microseconds", int64(hand.PerPiece)*hand.Load)
	}
	// Two words of one station are all that serialisation changes.
	plain, coded := example(t, "tarn-hollow.yaml"), example(t, "tarn-hollow-serialised.yaml")
	check := &coded.Line.Stations[2]
	if check.NoReads != 0.003 || check.LostPerStop != 4 {
		t.Errorf("print-and-check: %+v", check)
	}
	check.NoReads, check.LostPerStop = 0, 0
	if plain.Hash() != coded.Hash() {
		t.Error("tarn-hollow-serialised.yaml differs in more from tarn-hollow.yaml")
	}
}
