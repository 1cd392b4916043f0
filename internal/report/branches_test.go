package report

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
)

const twoEnds = `tuckline: 1
title: Fairholt, two ends of line
answer: {in: cartons, counted after: [tamper label 1, tamper label 2], per: shift}
run: {warm-up: 10 min, measure: 1 h, replications: 3}
line:
  - {station: blister machine, cycle: 240/min, gives: 4 blisters}
  - {buffer: store, holds: 400 blisters}
  - {station: cartoner 1, from: store, cycle: 60/min, takes: 2 blisters, gives: 1 carton}
  - {station: tamper label 1, cycle: 90/min}
  - {station: cartoner 2, from: store, cycle: 30/min, takes: 2 blisters, gives: 1 carton}
  - {station: tamper label 2, cycle: 60/min}
`

// A line with two ends, from the file to what people read: the cartoners always
// run and make 60 + 30 cartons a minute. Hand computation.
func TestTwoEndsOfLine(t *testing.T) {
	s, err := scenario.Read("fairholt.yaml", []byte(twoEnds), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	o, err := study.Run(t.Context(), s, study.Options{Trace: true})
	if err != nil {
		t.Fatal(err)
	}
	var terminal, page, rows strings.Builder
	if err := Terminal(&terminal, Page{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	if err := layoutOnly(&page, Page{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	if err := ReplicationsCSV(&rows, o); err != nil {
		t.Fatal(err)
	}
	says(t, strings.Join(strings.Fields(terminal.String()), " "), "The line makes 5 400 ± 0 cartons per shift", "The cartoner 1 and cartoner 2 limit the line")
	says(t, visibleText(page.String()), "Good cartons are counted after tamper label 1 and tamper label 2, added up")
	subject := subjectOf(o)
	says(t, subject.stageName(subject.Figures.Stages[2]), "tamper label 1 + tamper label 2")
	says(t, rows.String(), "\n1,horizon,1.1666666666666667,3600,3600,5400,")
}

func says(t *testing.T, text string, all ...string) {
	t.Helper()
	for _, part := range all {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not in\n%s", part, text)
		}
	}
}
