package study

import (
	"context"
	"math"
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
)

// twoDays has twice 8 h with a break of 30 min on two days, one cycle a second without stops: the window of a week has 32
// scheduled hours and 30 of work, 108,000 pieces. The cycle under way when work ends goes on afterwards.
func twoDays(t *testing.T, run, per string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("calendar.yaml", []byte(`tuckline: 1
run: {`+run+`, replications: 2}
answer: {per: `+per+`}
calendar:
  days: [Mon, Thu]
  shifts:
    early: {from: "06:00", to: "14:00", breaks: {at: "10:00", lasts: 30 min}}
    late: {from: "14:00", to: "22:00", breaks: {at: "18:00", lasts: 30 min}, tidy: 15 min}
crews: {operators: {people: 2, late: 1}}
line: [{station: filler, cycle: 1 s}]
`), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Per hour is per scheduled hour, per shift and week those of the calendar, however long the window is. A late shift works 7.25 h,
// an early one 7.5 h: 26,100 and 27,000 pieces; a week has two of both.
func TestCountsArePerScheduledHour(t *testing.T) {
	for _, c := range []struct {
		run, per          string
		hours, hour       float64
		total, least, p50 float64
		spread, left      string
	}{
		{"measure: 1 week", "week", 32, 106_200.0 / 32, 106_200, 106_200, 106_200, "windows", ""},
		{"measure: 1 week", "shift", 32, 106_200.0 / 32, 106_200.0 / 4, 26_100, 26_550, "shifts", ""},
		{"measure: 8 h", "shift", 8, 27_000.0 / 8, 27_000, 27_000, 27_000, "shifts", ""},
		{"measure: 8 h, starts: Thu 14:00", "shift", 8, 26_100.0 / 8, 26_100, 26_100, 26_100, "shifts", ""},
		// From 08:00 to 16:00: 2 h and 3.5 h of the first shift, 2 h of the second. No whole shift, but as long as one.
		{"warm-up: 2 h, measure: 8 h", "shift", 8, 27_000.0 / 8, 27_000, 27_000, 27_000, "windows", ""},
		{"warm-up: 2 h, measure: 9 h", "shift", 9, 30_600.0 / 9, 27_200, 0, 0, "none", "How single shifts differ is left out"},
		{"measure: 1 day", "week", 16, 53_100.0 / 16, 106_200, 0, 0, "none", "How single weeks differ is left out"},
		{"measure: 1 week", "hour", 32, 106_200.0 / 32, 106_200, 106_200, 106_200, "windows", ""},
	} {
		out, err := Run(context.Background(), twoDays(t, c.run, c.per), Options{Workers: 1})
		if err != nil {
			t.Fatal(err)
		}
		r, o := out.Results, out.Results.Output
		near := func(what string, got, want, off float64) {
			if math.Abs(got-want) > off {
				t.Errorf("%s, per %s: %s is %v, want %v", c.run, c.per, what, got, want)
			}
		}
		near("scheduled hours", r.MeasuredHours, c.hours, 0)
		near("an hour", o.PerHour.Mean, c.hour, 0.3)
		near("total", o.Total.Mean, c.total, 3)
		near("P50", o.ShiftP50, c.p50, 3)
		if len(out.Shifts) > 0 {
			near("the least", out.Shifts[0]+min(0, out.Shifts[len(out.Shifts)-1]-out.Shifts[0]), c.least, 3)
		}
		if said := strings.Join(r.Warnings, " "); o.SpreadOf != c.spread || !strings.Contains(said, c.left) || c.left == "" && strings.Contains(said, "left out") {
			t.Errorf("%s, per %s: spread of %q, warnings %q", c.run, c.per, o.SpreadOf, said)
		}
	}
}

// Shares are of scheduled time: in a week of 32 h 30 min of breaks four times are 1/16, 15 min of tidying twice 1/64; of the
// 88 h from Monday 06:00 to Thursday 22:00 56 are off shift. The tree closes without them.
func TestSharesAreOfScheduledTime(t *testing.T) {
	out, err := Run(context.Background(), twoDays(t, "measure: 1 week", "week"), Options{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	states := out.Results.Stations[0].States
	near("running", states.Running.Mean, 29.5/32)
	near("planned", states.Planned.Mean, 2.5/32)
	near("off shift", states.OffShift.Mean, 56.0/88)
	sum := 0.0
	for _, b := range out.Results.LossTrees[0].Branches {
		sum += b.Share.Mean
		if b.Kind == result.LossPlanned {
			near(b.Cause, b.Share.Mean, map[string]float64{"break": 2.0 / 32, "tidy": 0.5 / 32}[b.Cause])
		}
	}
	near("the tree", sum, 1)
}

// Causes are per shift or week too. A week of 32 h has four breaks of 30 min and two tidies of 15 min: a quarter of that is in a mean
// shift of 8 h, 30 min and 7.5 min, at 60 pieces a minute 1,800 and 450. A week has 120 min and 30 min, however many are measured; the
// 16 h of one day have half of it, twice of that is a week. Per hour they are of the window.
func TestCausesArePerSpanOfTheAnswer(t *testing.T) {
	for _, c := range []struct {
		run, per             string
		breaks, tidy, pieces float64
	}{
		{"measure: 1 week", "shift", 30, 7.5, 1_800},
		{"measure: 1 week", "week", 120, 30, 7_200},
		{"measure: 2 week", "week", 120, 30, 7_200},
		{"measure: 1 day", "week", 120, 30, 7_200},
		{"measure: 2 week", "hour", 240, 60, 14_400},
	} {
		out, err := Run(context.Background(), twoDays(t, c.run, c.per), Options{Workers: 1})
		if err != nil {
			t.Fatal(err)
		}
		if len(out.Causes) < 2 || out.Causes[0].Stop != "break" || out.Causes[1].Stop != "tidy" {
			t.Fatalf("%s per %s: the causes are %+v", c.run, c.per, out.Causes)
		}
		breaks, tidy := out.Causes[0], out.Causes[1]
		if math.Abs(breaks.Minutes.Mean-c.breaks) > 1e-9 || math.Abs(tidy.Minutes.Mean-c.tidy) > 1e-9 || math.Abs(breaks.Pieces.Mean-c.pieces) > 1e-6 {
			t.Errorf("%s per %s: breaks of %v min, %v pieces, tidying of %v min; want %v, %v, %v",
				c.run, c.per, breaks.Minutes.Mean, breaks.Pieces.Mean, tidy.Minutes.Mean, c.breaks, c.pieces, c.tidy)
		}
	}
}

// A repair from 9:30 to 11:00 over the break from 10 to 11, which the fitter takes from 11 to 12: of 8 h he is there for 7,
// and at work for 1.5 of them.
func TestCrewBusyOverABreak(t *testing.T) {
	s, err := scenario.Read("break.yaml", []byte(`tuckline: 1
answer: {in: cartons, counted after: packer, per: shift}
run: {measure: 8 h, replications: 2}
calendar: {days: Mon, shifts: {early: {from: "06:00", to: "14:00", breaks: [{at: "10:00", lasts: 60 min}]}}}
crews: {fitters: 1}
line: [{station: packer, cycle: 60/min, gives: 1 carton, stops: {jam: {every: 210 min calendar, lasts: 90 min, crew: fitters}}}]
`), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	crew := mustRun(t, s, Options{}).Results.Crews[0]
	if want := 1.5 / 7; math.Abs(crew.Busy.Mean-want) > 1e-9 {
		t.Errorf("busy %v of the time present, by hand %v", crew.Busy.Mean, want)
	}
}

// A stop of the clock comes at 16:00, when nobody is there, and is worked on from 6:00 on: nobody waits at night. The next
// comes at 7:00, beside a repair from 6:00 to 8:00, and waits for an hour. So the one stops its station for the 2 h of its work, the
// other for an hour and 5 min.
func TestNobodyWaitsAtNight(t *testing.T) {
	s, err := scenario.Read("night.yaml", []byte(`tuckline: 1
answer: {in: cartons, counted after: packer, per: shift}
run: {measure: 16 h, replications: 2}
calendar: {days: Mon-Fri, shifts: {early: {from: "06:00", to: "14:00"}}}
crews: {fitters: 1}
line:
  - {station: filler, cycle: 60/min, gives: 1 carton, stops: {jam: {every: 10 h calendar, lasts: 120 min, crew: fitters}}}
  - {station: packer, cycle: 60/min, takes: 1 carton, gives: 1 carton, stops: {jam: {every: 25 h calendar, lasts: 5 min, crew: fitters}}}
`), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r := mustRun(t, s, Options{}).Results
	if wait := r.Crews[0].MeanWaitS.Mean; wait != 1800 {
		t.Errorf("two requests wait %v s on average, by hand 0 and 3,600", wait)
	}
	for i, want := range []float64{120, 65} {
		if stopped := r.KeyFigures.Stations[i].Stops[0].StoppedMinutes.Mean; stopped != want {
			t.Errorf("station %d is stopped for %v min a stop, by hand %v", i, stopped, want)
		}
	}
}

// An answer per shift is the mean shift of the calendar, overtime and cleaning left aside, where whole shifts of every kind lie in the
// window; one cycle a second. Five shifts of 8 h work from end to end, 28,800 each, however much overtime, start-up or cleaning there
// is. With two long and one short shift a week, 8 h twice and 4 h once, it is (2 · 28,800 + 14,400) / 3 = 24,000, also where the
// window has two shifts of both kinds. A window without a whole short shift is scaled and says so.
func TestMeanShift(t *testing.T) {
	cleaned := `  days: Mon-Fri
  shifts: {early: {from: "06:00", to: "14:00"}}
  cleaning: {on: Fri, at: "14:00", lasts: 8 h}
  overtime: {on: Sat, from: "06:00", to: "10:00", start-up: 2 h}
`
	mixed := `  days: [Mon, Tue]
  shifts: {long: {from: "06:00", to: "14:00"}, short: {days: Tue, from: "14:00", to: "18:00"}}
`
	halves := `  days: Mon-Fri
  shifts:
    early: {from: "06:00", to: "14:00"}
    late: {from: "14:00", to: "22:00", breaks: [{at: "18:00", lasts: 4 h}]}
`
	for _, c := range []struct {
		calendar, run string
		total         float64
		said          string
	}{
		{cleaned, "measure: 1 week", 28_800, ""},
		{mixed, "measure: 1 week", 24_000, ""},
		{mixed, "warm-up: 8 h, measure: 20 h", 24_000, ""},
		// From 08:00 to 16:00 nothing stands: 8 h. The mean shift is (28,800 + 14,400) / 2.
		{halves, "warm-up: 2 h, measure: 8 h", 28_800, `the window from Mon 08:00 to Mon 16:00, scaled to the 8 h of a shift`},
		{halves, "warm-up: 2 h, measure: 1 week", 21_600, ""},
	} {
		s := read(t, "tuckline: 1\nrun: {"+c.run+", replications: 2}\nanswer: {per: shift}\ncalendar:\n"+c.calendar+"line: [{station: filler, cycle: 1 s}]\n")
		out, err := Run(context.Background(), s, Options{Workers: 1, Show: []string{"good output"}})
		if err != nil {
			t.Fatal(err)
		}
		said := strings.Join(out.Results.Warnings, " ")
		if got := out.Results.Output.Total.Mean; math.Abs(got-c.total) > 2 || out.Results.Measures[0].Value.Mean != got {
			t.Errorf("%s: %v per shift, asked for %v, want %v", c.run, got, out.Results.Measures[0].Value.Mean, c.total)
		}
		if n := len(out.RunningMean); n == 0 || out.RunningMean[n-1].Mean != out.Results.Output.Total.Mean {
			t.Errorf("%s: the last of the running means is not the answer", c.run)
		}
		if out.MeanShift != (c.said == "") || !strings.Contains(said, c.said) || c.said == "" && strings.Contains(said, "Per shift") {
			t.Errorf("%s: mean shift %t, warnings %q", c.run, out.MeanShift, said)
		}
	}
}

// By name of shift: an early shift works 7.5 h, a late one 7.25 h, 27,000 and 26,100 pieces at one a second, whatever the answer is
// per. The whole early shift of one day alone is compared with nothing.
func TestByShift(t *testing.T) {
	for run, want := range map[string]map[string]float64{
		"measure: 1 week": {"early": 27_000, "late": 26_100}, "measure: 8 h": nil, "warm-up: 2 h, measure: 1 week": {"early": 27_000, "late": 26_100},
	} {
		out, err := Run(context.Background(), twoDays(t, run, "week"), Options{Workers: 1})
		if err != nil {
			t.Fatal(err)
		}
		made := out.Results.Output.ByShift
		if len(made) != len(want) {
			t.Errorf("%s: %+v", run, made)
		}
		for _, one := range made {
			if math.Abs(one.Good.Mean-want[one.Name]) > 3 || one.Good.N != 2 {
				t.Errorf("%s: %s makes %v, want %v", run, one.Name, one.Good, want[one.Name])
			}
		}
	}
}
