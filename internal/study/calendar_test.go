package study

import (
	"context"
	"math"
	"slices"
	"testing"

	"tuckline/internal/scenario"
)

// Twice 8 h with a break of 30 min on two days, one cycle a second without stops: the window of a week has 32 scheduled
// hours and 30 of work, 108,000 pieces. The cycle under way when work ends goes on afterwards.
func TestCountsArePerScheduledHour(t *testing.T) {
	read := func(run, per string) *scenario.Scenario {
		s, err := scenario.Read("calendar.yaml", []byte(`tuckline: 1
run: {`+run+`, replications: 2}
answer: {per: `+per+`}
calendar:
  days: [Mon, Thu]
  shifts:
    early: {from: "06:00", to: "14:00", breaks: {at: "10:00", lasts: 30 min}}
    late: {from: "14:00", to: "22:00", breaks: {at: "18:00", lasts: 30 min}}
line: [{station: filler, cycle: 1 s}]
`), scenario.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	out, err := Run(context.Background(), read("measure: 1 week", "week"), Options{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	r := out.Results
	if total, hour := r.Output.Total.Mean, r.Output.PerHour.Mean; math.Abs(total-108_000) > 1 || math.Abs(hour-108_000.0/32) > 0.05 {
		t.Errorf("%v a week, %v an hour", total, hour)
	}
	if r.MeasuredHours != 32 || r.WarmUpHours != 0 || slices.ContainsFunc(r.Warnings, func(w string) bool { return w == oddSpan(read("measure: 1 day", "week")) }) {
		t.Errorf("%v h after %v h, warnings %q", r.MeasuredHours, r.WarmUpHours, r.Warnings)
	}
	for _, c := range []struct{ run, per, want string }{
		{"measure: 1 week", "week", ""},
		{"measure: 8 h", "shift", ""},
		{"measure: 8 h, starts: Thu 14:00", "shift", ""},
		{"measure: 1 week", "hour", ""},
		{"measure: 1 day", "week", "The measured window has 16 scheduled hours, a week of the calendar has 32: totals are those of the window; write measure: 32 h for those of a week."},
		{"measure: 1 week", "shift", "The measured window has 32 scheduled hours, a shift of the calendar has 8: totals are those of the window; write measure: 8 h for those of a shift."},
	} {
		if got := oddWindow(read(c.run, c.per)); got != c.want {
			t.Errorf("%s, per %s: %q, want %q", c.run, c.per, got, c.want)
		}
	}
}
