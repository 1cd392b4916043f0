package sim_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"tuckline/sim"
)

// Calendars and crews that cannot be are refused, each with its path and what would be right.
func TestRefusedCalendarsAndCrews(t *testing.T) {
	asks := func(crew string, people int) []sim.Station {
		st := one("A", "", 1)
		st.Stops = []sim.Stop{{Name: "jam", Every: sec(4), Clock: sim.RunningClock, Lasts: sec(1), Crew: sim.Work{Crew: crew, People: people}}}
		return []sim.Station{st}
	}
	endless := sim.Fixed(1e308).Scale(1e3)
	day := calendar(hours(0, "wrw", 10, 5, 10), hours(1, "w", 10))
	for _, c := range []struct {
		what  string
		line  sim.Line
		paths []string
		says  string
	}{
		{"no working time", sim.Line{Calendar: calendar(hours(0, "bo", 5, 5))}, []string{"calendar"}, "no working time"},
		{"a span of nothing", sim.Line{Calendar: calendar(hours(0, "ww", 0, -5))}, []string{"calendar", "calendar"}, "at least 1"},
		{"a shift below -1", sim.Line{Calendar: calendar(hours(-2, "w", 5))}, []string{"calendar"}, "-1 is off shift"},
		{"too long", sim.Line{Calendar: sim.Calendar{Spans: []sim.Span{{Lasts: 1 << 61}, {Lasts: 1 << 61}, {Lasts: 1 << 61}}}}, []string{"calendar"}, "a week is enough"},
		{"no such time", sim.Line{Calendar: sim.Calendar{Spans: []sim.Span{{Lasts: 5}, {Lasts: 5, Line: 7}}}}, []string{"calendar"}, "no such time"},
		{"numbers for three of two shifts", sim.Line{Calendar: day, Crews: []sim.Crew{{Name: "fitters", ByShift: []int{1, 2, 3}}}}, []string{"crews.fitters.people"}, "3 numbers for 2 shifts"},
		{"numbers by shift without shifts", sim.Line{Crews: []sim.Crew{{Name: "fitters", ByShift: []int{1}}}}, []string{"crews.fitters.people"}, "1 numbers for 0 shifts"},
		{"less than nobody", sim.Line{Calendar: day, Crews: []sim.Crew{{Name: "fitters", ByShift: []int{1, -1}, InBreaks: -1}}}, []string{"crews.fitters.in breaks", "crews.fitters.people"}, "0 or more"},
		{"less than nobody at all", sim.Line{Crews: []sim.Crew{{Name: "fitters", People: -2}}}, []string{"crews.fitters.people"}, "0 or more"},
		{"nobody", sim.Line{Calendar: day, Crews: []sim.Crew{{Name: "fitters", People: 3, ByShift: []int{0, 0}}}}, []string{"crews.fitters"}, "at least one person"},
		{"relief by nobody", sim.Line{Calendar: day, Crews: []sim.Crew{{Name: "relief", People: 3, Relief: true}}}, []string{"crews.relief.in breaks"}, "at least one person"},
		{"help for nobody known", sim.Line{Crews: []sim.Crew{{Name: "fitters", People: 1, CanAlso: []string{"operators"}}}}, []string{"crews.fitters.can also"}, `no crew "operators"`},
		{"help for itself", sim.Line{Crews: []sim.Crew{{Name: "fitters", People: 1, CanAlso: []string{"fitters"}}}}, []string{"crews.fitters.can also"}, "other crews"},
		{"a way without a mean", sim.Line{Crews: []sim.Crew{{Name: "fitters", People: 1, Walk: endless, Response: endless}}}, []string{"crews.fitters.response", "crews.fitters.walk"}, "mean"},
		{"more than are ever there", sim.Line{
			Stations: asks("fitters", 3), Calendar: day,
			Crews: []sim.Crew{{Name: "fitters", ByShift: []int{2, 1}}, {Name: "operators", ByShift: []int{0, 1}, CanAlso: []string{"fitters"}}},
		}, []string{"A.stops.jam.crew"}, "it asks for 3 of 2 fitters and would wait for ever"},
		{"relief is never there without breaks", sim.Line{
			Stations: asks("relief", 1), Crews: []sim.Crew{{Name: "relief", InBreaks: 2, Relief: true}},
		}, []string{"A.stops.jam.crew"}, "it asks for 1 of 0 relief"},
		{"less than nobody asked for", sim.Line{Stations: asks("fitters", -1), Crews: []sim.Crew{{Name: "fitters", People: 1}}}, []string{"A.stops.jam.people"}, "1 or more"},
		{"as many as are there at once", sim.Line{
			Stations: asks("fitters", 3), Calendar: day,
			Crews: []sim.Crew{{Name: "fitters", ByShift: []int{1, 2}}, {Name: "operators", ByShift: []int{0, 1}, CanAlso: []string{"fitters"}}},
		}, nil, ""},
	} {
		if len(c.line.Stations) == 0 {
			c.line.Stations = []sim.Station{one("A", "", 1)}
		}
		_, err := sim.Compile(c.line)
		var problems sim.Problems
		errors.As(err, &problems)
		var paths []string
		for _, p := range problems {
			paths = append(paths, p.Path)
		}
		slices.Sort(paths)
		if !slices.Equal(paths, c.paths) || err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, not at %q with %q", c.what, err, c.paths, c.says)
		}
	}
}
