package report

import (
	"bytes"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
)

// linesOutcome has two equal lines of two stations; the filler, 30 cycles a minute against 60, limits both.
func linesOutcome(t *testing.T, more string) *study.Outcome {
	t.Helper()
	s, err := scenario.Read("lines.yaml", []byte(`tuckline: 1
answer: {in: pieces, per: shift, counted after: packer}
run: {measure: 1 h, replications: 3}
lines:
  north: [{station: filler, cycle: 2 s, gives: 1 piece}, {station: packer, cycle: 1 s, takes: 1 piece, gives: 1 piece, stops: {jam: {every: 200 cycles, lasts: 10 s}}}]
  south: {like: north}
`+more), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	o, err := study.Run(t.Context(), s, study.Options{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// Several lines: headings speak of a station of each, tables and the terminal name the line once.
func TestSeveralLinesAreNamedOnce(t *testing.T) {
	o := linesOutcome(t, "")
	v, err := viewOf(Page{Outcome: o})
	if err != nil {
		t.Fatal(err)
	}
	var states section
	for _, one := range v.Sections {
		if one.ID == "states" {
			states = one
		}
		said := one.Heading + one.Reading
		for _, chart := range one.Charts {
			said += string(chart.Option)
		}
		if strings.Contains(said, "north.") {
			t.Errorf("%s has a name with a dot", one.ID)
		}
	}
	if want := "The filler of each line runs"; !strings.HasPrefix(states.Heading, want) {
		t.Errorf("heading %q, want it to begin %q", states.Heading, want)
	}
	var first []string
	for _, row := range states.Table.Rows {
		first = append(first, row[0].Text)
	}
	if got, want := strings.Join(first, "|"), "north|"+within+"filler|"+within+"packer|south|"+within+"filler|"+within+"packer"; got != want {
		t.Errorf("rows %q, want %q", got, want)
	}
	var out bytes.Buffer
	if err := Terminal(&out, Page{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"The filler of each line limits its line", "\n  north\n    filler ", "\n  south\n    filler "} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the terminal lacks %q:\n%s", want, out.String())
		}
	}
}

func TestStationsOfSeveralLinesInASentence(t *testing.T) {
	s := subjectOf(linesOutcome(t, "  east: {like: north}\n"))
	for want, names := range map[string][]string{
		"filler of each line":           {"north.filler", "south.filler", "east.filler"},
		"filler of north and east":      {"north.filler", "east.filler"},
		"north packer":                  {"north.packer"},
		"north filler and south packer": {"north.filler", "south.packer"},
	} {
		if got := s.stationList(names); got != want {
			t.Errorf("%v: %q, want %q", names, got, want)
		}
	}
	rows := [][]cell{{text("north.filler")}, {text("south.filler")}, {text("north.packer")}, {text("south.packer")}}
	if got := s.byLine(table{Words: 1, Rows: rows}); len(got.Rows) != 4 {
		t.Errorf("%d rows where lines alternate, want the four as they are", len(got.Rows))
	}
}
