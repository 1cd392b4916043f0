package report

import (
	"bytes"
	"strings"
	"testing"

	"tuckline/sim"
)

func wordsOf(t *testing.T, in Page) string {
	t.Helper()
	var page bytes.Buffer
	if err := layoutOnly(&page, in); err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(strings.ReplaceAll(visibleText(page.String()), thin, " ")), " ")
}

// Of a week a day is traced, and of a long warm-up as much: every sentence
// about the trace says so, and its charts end with it.
func TestTracedPartIsSaid(t *testing.T) {
	o := inventedOutcome()
	o.Scenario.Answer.Per = "week"
	o.Scenario.Run.WarmUp, o.Scenario.Run.Measure = 48*sim.Hour, 168*sim.Hour
	o.TracedFrom, o.Traced = 24*sim.Hour, 24*sim.Hour
	got := wordsOf(t, Page{Outcome: o})
	for _, want := range []string{
		"In the traced 24 h the cartoner", "The first 24 h of the first simulated week, station by station.",
		"Left: the level in the first 24 h of one week, as traced.",
		"Charts of one traced week show the first 24 h of the first, after a warm-up of 24 h only.",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing", want)
		}
	}
	axis := subjectOf(o).clockAxis()
	if axis.Max != 24*3600.0 {
		t.Errorf("the axis ends at %v s", axis.Max)
	}
}

// The ticks of the clock stand at round times, ten of them at most.
func TestClockTicksAtRoundTimes(t *testing.T) {
	for window, want := range map[sim.Micros]float64{
		8 * sim.Hour: 3600, 24 * sim.Hour: 3 * 3600, 12 * sim.Hour: 2 * 3600, sim.Hour: 600, 10 * sim.Minute: 60, 20 * sim.Second: 5,
	} {
		o := inventedOutcome()
		o.Traced = window
		if got := subjectOf(o).clockAxis().MaxInterval; got != want {
			t.Errorf("%d: every %v s, want %v", window, got, want)
		}
	}
}
