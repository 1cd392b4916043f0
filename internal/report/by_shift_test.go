package report

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
)

// One piece a second. A week has five early shifts of 8 h, 28,800 each, 8 h of cleaning after them and 4 h of overtime of which 2 h
// are start-up: 7,200. All of it are 5 · 28,800 + 7,200 in 52 h, 2,908 an hour. Early is the mean shift: the rest is left aside and said so.
// The piece that is done at the very end of a shift is its own, as no other begins then. Of the overtime it is not: the window ends
// with it, and what comes at its end is not in it: 7,199.
func TestAnswerPerMeanShift(t *testing.T) {
	s, err := scenario.Read("shift.yaml", []byte(`tuckline: 1
answer: {in: pieces, per: shift}
run: {measure: 1 week, replications: 2}
calendar:
  days: Mon-Fri
  shifts: {early: {from: "06:00", to: "14:00"}}
  cleaning: {on: Fri, at: "14:00", lasts: 8 h}
  overtime: {on: Sat, from: "06:00", to: "10:00", start-up: 2 h}
line: [{station: filler, cycle: 1 s, gives: 1 piece}]
`), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	o, err := study.Run(t.Context(), s, study.Options{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(spaced(strings.Join(subjectOf(o).answer(), " "))), " ")
	said = strings.ReplaceAll(said, "\u00a0", " ")
	for _, want := range []string{
		"per shift of 8 h on average, overtime and cleaning outside of shifts left aside; over all scheduled time it makes 2 908 ± 0 per hour.",
		"The line makes 28 800 ± 0 pieces", "By shift, in pieces: early 28 800 ± 0 and overtime 7 199 ± 0.",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in %q", want, said)
		}
	}
}
