package keyfigure

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// randomStops are up to two stops of any clock.
func randomStops(t *rapid.T) (all []sim.Stop) {
	for k := range rapid.IntRange(0, 2).Draw(t, "stops") {
		clock := rapid.SampledFrom([]sim.Clock{sim.CalendarClock, sim.CalendarClock, sim.CycleClock, sim.PieceClock, sim.RunningClock}).Draw(t, "clock")
		every := rapid.Float64Range(1, 60).Draw(t, "every")
		if clock == sim.CalendarClock || clock == sim.RunningClock {
			every = minutes(every)
		}
		all = append(all, fixedStop("s"+strconv.Itoa(k), clock, every, rapid.Float64Range(0.1, 20).Draw(t, "lasts")))
	}
	return all
}

// randomMerge is a line of one to three groups: in each, rows of one to three stations side by
// side come together in a store. Any of them may stop with any other. Alike: every piece is
// worth one at the count, and no station stops with another.
func randomMerge(t *rapid.T, alike bool) *scenario.Scenario {
	pieces, rejects := int64(3), []float64{0, 0, 0.3}
	if alike {
		pieces, rejects = 1, []float64{0}
	}
	b := &build{}
	from := ""
	for group := range rapid.IntRange(1, 3).Draw(t, "groups") {
		var ends []string
		for row := range rapid.IntRange(1, 3).Draw(t, "rows") {
			before := from
			for place := range rapid.IntRange(1, 3).Draw(t, "stations") {
				name := strconv.Itoa(100*group + 10*row + place)
				b.station(sim.Station{
					Name: name, From: before, Stops: randomStops(t),
					Takes: rapid.Int64Range(1, pieces).Draw(t, "takes"), Gives: rapid.Int64Range(1, pieces).Draw(t, "gives"),
					RejectShare: rapid.SampledFrom(rejects).Draw(t, "rejects"),
				}, scenario.Station{}, rapid.Float64Range(20, 120).Draw(t, "speed"), 0)
				before = name
			}
			ends = append(ends, before)
		}
		from = "store " + strconv.Itoa(group)
		b.store(from, 100, ends...)
	}
	b.station(sim.Station{Name: "packer", From: from, Takes: 1, Gives: 1, Stops: randomStops(t)}, scenario.Station{}, 90, 0)
	last := len(b.Line.Stations) - 1
	b.Answer.CountedAfter = []int{last}
	if one := rapid.IntRange(0, 2*last).Draw(t, "stops with"); one < last && !alike {
		b.Line.Stations[one].StopsWith = b.Line.Stations[rapid.IntRange(one+1, last).Draw(t, "of")].Name
	}
	return &b.Scenario
}

// Without any buffer a line makes no more than with buffers without limit, whatever stands
// side by side and whatever stops it.
func TestRigidIsNoMoreThanTheBound(t *testing.T) {
	for name, line := range map[string]func(*rapid.T) *scenario.Scenario{
		"merges": func(t *rapid.T) *scenario.Scenario { return randomMerge(t, false) },
		"assemblies and splits": func(t *rapid.T) *scenario.Scenario {
			s := randomNet(t)
			for i := range s.Line.Stations {
				s.Line.Stations[i].Stops = append(s.Line.Stations[i].Stops, randomStops(t)...)
			}
			return s
		},
	} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				b := Derive(line(t)).Bounds
				if b.Rigid > b.Unlimited*(1+1e-6) || math.IsNaN(b.Rigid) || b.Rigid <= 0 {
					t.Fatalf("rigid %v, the bound is %v", b.Rigid, b.Unlimited)
				}
			})
		})
	}
}

// Where all pieces are worth the same, and nothing stops with another, that follows from the
// arithmetic by itself, without any limit put to it.
func TestRigidIsBelowTheBoundByItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := randomMerge(t, true)
		f := Derive(s)
		if _, rate := withoutBuffers(newFlow(&s.Line), f.Stations); rate > f.Bounds.Unlimited*(1+1e-9) {
			t.Fatalf("rigid %v, the bound is %v", rate, f.Bounds.Unlimited)
		}
	})
}

// Where every station loses the same share of its time by the calendar, every piece
// loses as much as stations it passes, whatever the order of rows and stores.
func TestEqualCalendarStopsOfRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.IntRange(1, 5).Draw(t, "rows")
		s := rows(k)
		lost := rapid.Float64Range(0, 0.5).Draw(t, "lost")
		for i := range s.Line.Stations {
			if lost > 0 {
				s.Line.Stations[i].Stops = calendarStop(lost)
			}
		}
		if got, want := Derive(s).Bounds.RigidEfficiency, math.Pow(1-lost, 3); math.Abs(got-want) > 1e-9 {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}
