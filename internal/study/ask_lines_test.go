package study

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// TestMeasuresOfSeveralLines: a bare name means all lines that have it, and never a cause of another line.
func TestMeasuresOfSeveralLines(t *testing.T) {
	const text = `tuckline: 1
lines:
  line 1:
    - {station: filler, cycle: 60/min}
    - {buffer: store, holds: 20 pieces}
    - {station: packer, cycle: 60/min, stops: {jam: {every: 100 cycles, lasts: 1 min}}}
  line 2: {like: line 1}
  line 3: [{station: filler, cycle: 60/min}]
`
	s, err := scenario.Read("lines", []byte(text), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	m, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	for words, want := range map[string][]string{
		"filler blocked":                      {"line 1.filler blocked", "line 2.filler blocked", "line 3.filler blocked"},
		"line 2.filler blocked":               {"line 2.filler blocked"},
		"store level":                         {"line 1.store level", "line 2.store level"},
		"good output":                         {"good output"},
		"stops of filler because of jam":      {"stops of line 1.filler because of jam", "stops of line 2.filler because of jam", "stops of line 3.filler because of jam"},
		"free  places needed at line 1.store": {"free places needed at line 1.store"},
	} {
		found, err := measuresAsked(words, s, m)
		if err != nil {
			t.Error(err)
		}
		var got []string
		for _, one := range found {
			got = append(got, one.words)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", words, diff)
		}
	}
	if err := CheckMeasures([]string{"sealer blocked"}, s, m); err == nil {
		t.Error("a station that no line has is asked for")
	}
	if got := len(Summarise(s, m, []sim.Record{m.NewEngine().Run(sim.Options{Seed: 1, Measure: sim.Hour})}, []string{"packer down"}).Measures); got != 2 {
		t.Errorf("%d rows", got)
	}
}
