package scenario_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

const oneStation = "line: [{station: filler, cycle: 60/min}]\n"

// hours are the figures of a calendar in minutes.
func figures(c *scenario.Calendar) string {
	m := func(t sim.Micros) float64 { return float64(t) / float64(sim.Minute) }
	text := fmt.Sprint(m(c.Week), m(c.NetWeek), m(c.Day), m(c.Year), m(c.MeanShift()))
	for _, s := range c.Shifts {
		text += fmt.Sprint("; ", s.Name, " ", s.AWeek, " ", m(s.Scheduled), " ", m(s.Net))
	}
	return text
}

// spansText lists spans with their clock and minutes.
func spansText(s *scenario.Scenario) string {
	var at sim.Micros
	var lines []string
	for _, span := range s.Line.Calendar.Spans {
		line := []string{"works", "stands", "off"}[span.Line]
		crews := []string{"work", "rest", "away"}[span.Crews]
		lines = append(lines, strings.TrimSpace(fmt.Sprintf("%s %g %s %s %d %s", s.Calendar.Clock(at), float64(span.Lasts)/float64(sim.Minute), line, crews, span.Shift, span.Name)))
		at += span.Lasts
	}
	return strings.Join(lines, "\n")
}

// TestNightShiftOverTheWeekEnd: Sunday's night shift ends on Monday, its break lies after midnight; cleaning begins
// in it and goes on after it; the start lies within it. By hand.
func TestNightShiftOverTheWeekEnd(t *testing.T) {
	s := read(t, `run: {warm-up: 30 min, measure: 1 week, starts: Mon 00:30}
calendar:
  days: [Sun, Wed]
  shifts: {night: {from: 22:00, to: "06:00", start-up: 20 min, tidy: 15 min, breaks: [{at: 02:00, lasts: 30 min}]}}
  cleaning: {on: Thu, at: 05:30, lasts: 1 h}
  overtime: {on: Sat, from: 22:00, to: 24:00}
`+oneStation)
	want := `Mon 00:30 90 works work 0
Mon 02:00 30 stands rest 0 break
Mon 02:30 195 works work 0
Mon 05:45 15 stands work 0 tidy
Mon 06:00 3840 off away -1
Wed 22:00 20 stands work 0 start-up
Wed 22:20 220 works work 0
Thu 02:00 30 stands rest 0 break
Thu 02:30 180 works work 0
Thu 05:30 30 stands work 0 cleaning
Thu 06:00 30 stands away -1 cleaning
Thu 06:30 3810 off away -1
Sat 22:00 120 works work 1
Sun 00:00 1320 off away -1
Sun 22:00 20 stands work 0 start-up
Sun 22:20 130 works work 0`
	if got := spansText(s); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	// Two nights of 480 min, 120 min overtime, 30 min of cleaning outside. Net: 480 - 20 - 15 - 30 = 415, on Thursday
	// 15 less since cleaning ends the work at 05:30: 407.5 on average. The first working day is Wednesday.
	if got, want := figures(s.Calendar), "1110 935 480 57720 480; night 2 480 407.5; overtime 1 120 120"; got != want {
		t.Errorf("figures are %s, want %s", got, want)
	}
	// T0 after 30 scheduled minutes. 1110 more: 300 are left of this night, 510 of the next with the cleaning, 120 of
	// overtime, then 180 from Sunday 22:00.
	if got := s.Calendar.Clock(s.Run.WarmUp); got != "Mon 01:00" {
		t.Errorf("the window begins at %s", got)
	}
	if got := s.Calendar.Clock(s.Run.WarmUp + s.Run.Measure); got != "week 2 Mon 01:00" {
		t.Errorf("the window ends at %s", got)
	}
	if s.Run.Starts != "Mon 00:30" || s.ScheduledWarmUp() != 30*sim.Minute || s.ScheduledMeasure() != 1110*sim.Minute {
		t.Errorf("%+v", s.Run)
	}
	if want := []string{"The run starts at Mon 00:30, within the shift night; what is left of it is no whole shift."}; !reflect.DeepEqual(s.Warnings, want) {
		t.Errorf("warnings are %q", s.Warnings)
	}
}

// TestSpansOfARun: hours are scheduled hours, a day, a week and a year what the calendar has. By hand.
func TestSpansOfARun(t *testing.T) {
	const calendar = `
calendar:
  days: Mon-Thu
  shifts:
    early: {from: "06:00", to: "14:00", breaks: {at: "10:00", lasts: 30 min}}
    late: {from: "14:00", to: "20:00", days: [Mon, Thu]}
  hours a year: 2000 h
`
	for _, c := range []struct{ run, from, until string }{
		{"{measure: 8 h}", "Mon 06:00", "Mon 14:00"},
		{"{measure: 8 h, starts: Thu 06:00}", "Thu 06:00", "Thu 14:00"},
		{"{warm-up: 2 h, measure: 1 day}", "Mon 08:00", "Tue 08:00"},
		{"{warm-up: 15 h, measure: 0.5 day}", "Tue 07:00", "Tue 14:00"},
		{"{warm-up: 1 week, measure: a week}", "Thu 20:00", "week 2 Thu 20:00"}, // 32 + 12 = 44 h
		{"{measure: {likely: 2 weeks, low: 1 week, high: 3 weeks}}", "Mon 06:00", "week 2 Thu 20:00"},
		{"{measure: 1 year}", "Mon 06:00", "week 46 Tue 12:00"}, // 45 weeks are 1980 h, then 14 h on Monday and 6
		{"{starts: Sat 12:00}", "Sat 12:00", "week 2 Mon 14:00"},
		{"{starts: Fri 12:00, warm-up: 1 h}", "week 2 Mon 07:00", "week 2 Mon 15:00"},
	} {
		s := read(t, "run: "+c.run+calendar+oneStation)
		from, until := s.Calendar.Clock(s.Run.WarmUp), s.Calendar.Clock(s.Run.WarmUp+s.Run.Measure)
		if from != c.from || until != c.until {
			t.Errorf("%s is from %s to %s, want %s to %s", c.run, from, until, c.from, c.until)
		}
	}
	s := read(t, "answer: {per: shift}\nrun: {measure: 1 week}"+calendar+oneStation)
	// 4 × 8 h and 2 × 6 h are 44 h in 6 shifts; without the breaks 42 h; Monday has 14 h.
	if got, want := figures(s.Calendar), "2640 2520 840 120000 440; early 4 480 450; late 2 360 360"; got != want {
		t.Errorf("figures are %s, want %s", got, want)
	}
	if got := s.AnswerSpan(); got != 440*sim.Minute {
		t.Errorf("a shift of the answer has %v", got)
	}
	if s := read(t, "answer: {per: week}"+calendar+oneStation); s.AnswerSpan() != 44*sim.Hour {
		t.Errorf("a week of the answer has %v", s.AnswerSpan())
	}
	if s := read(t, "answer: {per: week}\nrun: {measure: 70 h}\n"+oneStation); s.AnswerSpan() != 70*sim.Hour || s.ScheduledMeasure() != 70*sim.Hour {
		t.Errorf("without a calendar a week of the answer has %v", s.AnswerSpan())
	}
	if s := read(t, oneStation); s.AnswerSpan() != sim.Hour || s.Calendar.Clock(5) != "" || s.Calendar.MeanShift() != 0 {
		t.Errorf("without a calendar an hour has %v", s.AnswerSpan())
	}
	if s := read(t, strings.Replace(calendar, "2000", "2500", 1)+oneStation); !slices.Contains(s.Warnings, "2500 h a year are 56.8 weeks of 44 h; a year has 52.") {
		t.Errorf("warnings are %q", s.Warnings)
	}
}

// TestClocks reads clocks and writes them, by hand.
func TestDaysAndClocks(t *testing.T) {
	s := read(t, "run: {starts: Thu 06:00}\ncalendar: {days: Mon-Fri, shifts: {early: {from: 6:00, to: 14:00}}}\n"+oneStation)
	for _, c := range []struct {
		clock string
		hours float64
		back  string
	}{
		{"Thu 06:00", 0, "Thu 06:00"},
		{"Fri 14:00", 32, "Fri 14:00"},
		{"week 1 Sun 24:00", 90, "week 2 Mon 00:00"},
		{"Sun 24:00", 90, "week 2 Mon 00:00"},
		{"Thu 05:59", 168 - 1.0/60, "week 2 Thu 05:59"},
		{"week 2 Fri 14:00", 200, "week 2 Fri 14:00"},
		{" week 12  Mon 6:00", 10*168 + 96, "week 12 Mon 06:00"},
	} {
		got, err := s.Calendar.At(c.clock)
		if want := sim.Micros(c.hours*60+0.5) * sim.Minute; err != nil || got != want {
			t.Errorf("%s is at %v h, %v; want %v", c.clock, float64(got)/float64(sim.Hour), err, c.hours)
		}
		if back := s.Calendar.Clock(got + 29*sim.Second); back != c.back {
			t.Errorf("%s is written %s, want %s", c.clock, back, c.back)
		}
	}
	for _, c := range [][2]string{
		{"week 1 Thu 05:00", "week 1 Thu 05:00 lies before the start, Thu 06:00; that week begins with the start"},
		{"14:00", `"14:00" is not a day and a time; write it as "Fri 14:00"`},
		{"Friday 14:00", `"Friday" is written Fri here`},
		{"Fri 14", `"14" is not a time of the day as it is written here: 06:00 or 18:30, hours from 00 to 24`},
		{"week 0 Fri 14:00", `"week 0 Fri 14:00" is not a day and a time; write it as "Fri 14:00"`},
	} {
		if _, err := s.Calendar.At(c[0]); err == nil || err.Error() != c[1] {
			t.Errorf("%s: %v, want %s", c[0], err, c[1])
		}
	}
	var none *scenario.Calendar
	if _, err := none.At("Fri 14:00"); err == nil || err.Error() != "a clock such as Fri 14:00 needs a calendar; without one there are no days" {
		t.Errorf("without a calendar: %v", err)
	}
}

// TestClocksThereAndBack: every minute after the start has one clock, and that is read as this minute.
func TestClocksThereAndBack(t *testing.T) {
	days := []string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"}
	rapid.Check(t, func(r *rapid.T) {
		starts := fmt.Sprintf("%s %02d:%02d", rapid.SampledFrom(days).Draw(r, "day"), rapid.IntRange(0, 23).Draw(r, "hour"), rapid.IntRange(0, 59).Draw(r, "minute"))
		s := read(t, "run: {starts: "+starts+"}\ncalendar: {days: Mon-Sun, shifts: {early: {from: 6:00, to: 14:00}}}\n"+oneStation)
		at := sim.Micros(rapid.IntRange(0, 4*7*24*60).Draw(r, "minutes")) * sim.Minute
		clock := s.Calendar.Clock(at)
		if !strings.HasPrefix(clock, "week") {
			clock = "week 1 " + clock
		}
		if back, err := s.Calendar.At(clock); err != nil || back != at {
			r.Fatalf("%s is at %v, %v; want %v", clock, back, err, at)
		}
		// Without its week it is the first of this day and time.
		_, short, _ := strings.Cut(clock[5:], " ")
		if first, err := s.Calendar.At(short); err != nil || first != at%(7*24*sim.Hour) {
			r.Fatalf("the first %s is at %v, %v; want %v", short, first, err, at%(7*24*sim.Hour))
		}
	})
}
