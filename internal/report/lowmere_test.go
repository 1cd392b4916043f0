package report

import (
	"io"
	"io/fs"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
	"tuckline/scenarios"
)

// example runs one of the example files, so many shifts of it.
func example(t *testing.T, name string, shifts int) *study.Outcome {
	t.Helper()
	source, err := scenarios.FS.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	s, err := scenario.Read(name, source, scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	o, err := study.Run(t.Context(), s, study.Options{To: shifts, Bounds: true, Trace: true})
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func TestLowmereInABrowser(t *testing.T) {
	o := example(t, "lowmere.yaml", 20)
	b := openTab(t, written(t, Page{Outcome: o, Version: "tuckline test"}), 1200, 900)
	b.drawn(t)
	counts := ask[map[string]map[string]int](t, b, coloured)
	for _, chart := range []string{"spread", "mean", "states", "waits", "level-0", "level-1", "timeline", "stops", "losses", "rates"} {
		n := 0
		for colour, count := range counts[chart] {
			if colour != "line #d5dbde" {
				n += count
			}
		}
		if least := map[string]int{"spread": 8, "losses": 8, "level-0": 50, "level-1": 50, "timeline": 200}[chart]; n < max(least, 8) {
			t.Errorf("chart %s has %d shapes beside its axes: %v", chart, n, counts[chart])
		}
	}
	overflow(t, b)
	b.picture(t, "lowmere")
	b.quiet(t)
}

// Every example must make a page and a summary.
func TestEveryExampleIsReported(t *testing.T) {
	names, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil || len(names) < 5 {
		t.Fatalf("%d examples (%v)", len(names), err)
	}
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			o := example(t, name, 4)
			page := pageOf(t, Page{Outcome: o})
			if err := Terminal(io.Discard, Page{Outcome: o}); err != nil {
				t.Error(err)
			}
			if err := ReplicationsCSV(io.Discard, o); err != nil {
				t.Error(err)
			}
			if n := len(page); n < 50_000 || n > 2_000_000 {
				t.Errorf("the page has %d bytes without the chart engine", n)
			}
		})
	}
}
