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
		// 5,000 capsules at 60 a cycle are 83 cycles of 1.2 s.
		var warned []string
		if c.file == "brackwater-wide.yaml" {
			warned = []string{"What is left of capsules at blister machine at the alarm lasts 100 s at set speed, a refill 120 s on average: the station stops for the rest. Write a higher alarm."}
		}
		if !slices.Equal(s.Warnings, warned) {
			t.Errorf("%s: warnings are %q", c.file, s.Warnings)
		}
	}
}
