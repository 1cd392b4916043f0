package study

import (
	"slices"
	"strings"
	"testing"

	"tuckline/sim"
)

func warningsOf(t *testing.T, per string, measure sim.Micros, supply int64) []string {
	t.Helper()
	s := steady()
	s.Answer.Per, s.Run.Measure, s.Line.Stations[0].Supply = per, measure, supply
	return mustRun(t, s, Options{}).Results.Warnings
}

// A shift of a week and a week of a shift are windows that someone may have meant otherwise.
func TestWindowThatDoesNotFitItsWord(t *testing.T) {
	for _, c := range []struct {
		per     string
		measure sim.Micros
		want    string
	}{
		{"shift", 168 * sim.Hour, "A shift of 168 h is longer than a day: write per: week, or measure the hours of one shift."},
		{"week", 8 * sim.Hour, "A week of 8 h is shorter than a day: write per: shift, or measure the scheduled hours of a week."},
		{"week", 200 * sim.Hour, "A week of 200 h has more hours than a week: measure its scheduled hours, 168 h at most."},
		{"shift", 24 * sim.Hour, ""},
		{"week", 24 * sim.Hour, ""},
		{"week", 168 * sim.Hour, ""},
		{"hour", 200 * sim.Hour, ""},
	} {
		all := warningsOf(t, c.per, c.measure, 0)
		if c.want != "" && !slices.Contains(all, c.want) {
			t.Errorf("%s: %q is missing in %q", c.per, c.want, all)
		}
		if said := strings.Contains(strings.Join(all, " "), " of "+hoursWords(c.measure)); said != (c.want != "") {
			t.Errorf("%s of %d: %q", c.per, c.measure, all)
		}
	}
}

func TestWarningsNameTheWindows(t *testing.T) {
	for per, want := range map[string]string{
		"shift": "Only 3 shifts were simulated: take 20 or more before you rely on the intervals.",
		"week":  "Only 3 weeks were simulated: take 20 or more before you rely on the intervals.",
		"hour":  "Only 3 runs were simulated: take 20 or more before you rely on the intervals.",
	} {
		if all := warningsOf(t, per, sim.Hour, 0); !slices.Contains(all, want) {
			t.Errorf("%q is missing in %q", want, all)
		}
	}
}

// By hand: 7,200 pieces are 1,800 cycles of the web, a second each; its last 4
// blisters are 2 cartons, a quarter of a second each.
func TestEndOfTheInput(t *testing.T) {
	s := steady()
	s.Run.WarmUp, s.Run.Measure, s.Line.Stations[0].Supply = 0, sim.Hour, 1800
	o := mustRun(t, s, Options{})
	if got := o.UsedUp; got.N != 3 || got.AfterHours.Mean != 1800.5/3600 {
		t.Errorf("used up %+v, want 3 after %v h", got, 1800.5/3600)
	}
	if o.Results.Output.Total.Mean != 3600 {
		t.Errorf("%v cartons", o.Results.Output.Total.Mean)
	}
	if got := mustRun(t, steady(), Options{}).UsedUp; got.N != 0 {
		t.Errorf("without end: %+v", got)
	}
}
