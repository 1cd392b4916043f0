package scenario_test

import (
	"reflect"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// twoWeeks runs a scenario once, as its calendar starts.
func twoWeeks(t *testing.T, s *scenario.Scenario) sim.Record {
	t.Helper()
	model, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	return model.NewEngine().Run(sim.Options{Seed: 1, Measure: 14 * 24 * sim.Hour})
}

// TestCalendarWordsHaveEffects: each word of working time and of people changes the course of the line, and the text
// with the change in it is another model.
func TestCalendarWordsHaveEffects(t *testing.T) {
	before := whole(t, "calendar")
	as := twoWeeks(t, before)
	for _, set := range []string{
		"run.starts=Wed 14:00", "calendar.days=[Wed, Mon-Tue, Thu]", "calendar.shifts.early.from=06:30", "calendar.shifts.early.to=13:55",
		"calendar.shifts.early={from: 06:00, to: 14:00, start-up: 20 min, tidy: 15 min}", "calendar.shifts.early.breaks={at: 11:00, lasts: 30 min}", "calendar.shifts.late.breaks.lasts=45 min",
		"calendar.shifts.early.start-up=0 min", "calendar.shifts.early.tidy=20 min", "calendar.shifts.late.days=Mon-Fri", "calendar.during breaks=line stands",
		"calendar.during breaks.relief=2 people", "calendar.cleaning={on: Wed, at: 13:00, lasts: 30 min}", "calendar.overtime.on=Sun",
		"calendar.overtime.to=13:00", "calendar.overtime.start-up=20 min", "crews.operators.people=3", "crews.operators.night=2", "crews.operators.late=3",
		"crews.operators.walk=40 s", "crews.operators.response.mean=2 min", "crews.operators={people: 2, night: 1}", "crews.technicians={people: 1, overtime: 0, walk: {dist: lognormal, mean: 1 min, cv: 0.5}}",
		"crews.technicians.overtime=1", "crews.technicians.busy elsewhere={share: 20 %, spell: 20 min}", "crews.technicians.walk.mean=2 min",
	} {
		s := whole(t, "calendar", set)
		changed := twoWeeks(t, s)
		if reflect.DeepEqual(as.Stations, changed.Stations) {
			t.Errorf("nothing changes with %s", set)
		}
		again, err := scenario.Read("again", s.Source, scenario.Options{})
		if err != nil || again.Hash() != s.Hash() || s.Hash() == before.Hash() {
			t.Errorf("%s: the text with the change in it is another model, or the hash the same: %v", set, err)
		}
	}
}

// TestSetsOfCalendars changes single values as they are typed.
func TestSetsOfCalendars(t *testing.T) {
	for _, c := range []struct {
		set  string
		look func(s *scenario.Scenario) any
		want any
	}{
		{"calendar.shifts.early.from=07:00", func(s *scenario.Scenario) any { return s.Calendar.Shifts[0].Scheduled }, 7 * sim.Hour},
		{"calendar.shifts.early.from=\"07:00\"", func(s *scenario.Scenario) any { return s.Calendar.Shifts[0].From }, 7 * sim.Hour},
		{"crews.operators.late=5", func(s *scenario.Scenario) any { return s.Line.Crews[0].ByShift }, []int{2, 5, 1, 2}},
		{"crews.operators.people=4", func(s *scenario.Scenario) any { return s.Line.Crews[0].ByShift }, []int{4, 4, 1, 4}},
		{"crews.technicians.can also=operators", func(s *scenario.Scenario) any { return s.Line.Crews[1].CanAlso }, []string{"operators"}},
		{"calendar.during breaks=line stands", func(s *scenario.Scenario) any { return len(s.Line.Crews) }, 2},
		{"calendar.during breaks={relief: 3}", func(s *scenario.Scenario) any { return s.Line.Crews[2] }, sim.Crew{Name: "relief", People: 3, InBreaks: 3, Relief: true, CanAlso: []string{"operators", "technicians"}}},
		{"run.starts=Mon 06:00", func(s *scenario.Scenario) any { return s.Run.Starts }, "Mon 06:00"},
		{"run.measure=1 day", func(s *scenario.Scenario) any { return s.ScheduledMeasure() }, s24},
		{"calendar.hours a year=4000 h", func(s *scenario.Scenario) any { return s.Calendar.Year }, 4000 * sim.Hour},
	} {
		s := whole(t, "calendar", c.set)
		if got := c.look(s); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s gives %v, want %v", c.set, got, c.want)
		}
	}
}

// s24 is the scheduled time of Monday: three shifts of 8 h.
const s24 = 24 * sim.Hour
