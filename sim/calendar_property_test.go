package sim_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// One span of work without end is no calendar at all, to the last integer of the record.
func TestOneEndlessSpanIsNoCalendar(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, _ *sim.Model, o sim.Options) {
		line.Calendar = sim.Calendar{}
		for i := range line.Crews {
			line.Crews[i].ByShift = nil
		}
		o.Waits, o.Attribute = true, true
		none := runs(t, line, o)
		line.Calendar.Spans = []sim.Span{{Lasts: 1 << 61, Shift: rapid.IntRange(-1, 3).Draw(t, "shift")}}
		if d := cmp.Diff(none, runs(t, line, o)); d != "" {
			t.Error(d)
		}
	})
}

func runs(t *rapid.T, line sim.Line, o sim.Options) sim.Record {
	m, err := sim.Compile(line)
	if err != nil {
		t.Skip("people who come in breaks only are asked, and there is none")
	}
	return m.NewEngine().Run(o)
}

// Spans that only cut working time into parts change nothing either.
func TestSpansOfWorkAlone(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, _ *sim.Model, o sim.Options) {
		line.Calendar = sim.Calendar{}
		for i := range line.Crews {
			line.Crews[i].ByShift = nil
		}
		none := runs(t, line, o)
		for range rapid.IntRange(1, 4).Draw(t, "spans") {
			line.Calendar.Spans = append(line.Calendar.Spans, sim.Span{Lasts: sim.Micros(rapid.Int64Range(1, int64(30*s)).Draw(t, "span"))})
		}
		cut := runs(t, line, o)
		none.Events, cut.Events = 0, 0
		if none.End == sim.InputUsedUp {
			return // nothing is counted of other work after that, whatever the calendar does
		}
		if d := cmp.Diff(none, cut); d != "" {
			t.Error(d)
		}
	})
}

// Where nobody asks for people, breaks of theirs change nothing.
func TestBreaksOfPeopleWhomNobodyAsks(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, _ *sim.Model, o sim.Options) {
		line.Crews, line.Calendar = nil, sim.Calendar{}
		for i := range line.Stations {
			needNobody(&line.Stations[i])
		}
		line.Crews = []sim.Crew{{Name: "fitters", People: 2}}
		none := runs(t, line, o)
		line.Calendar.Spans = hours(0, "wruw", 7, 3, 5, 9)
		rested := runs(t, line, o)
		if none.Crews[0].Present < rested.Crews[0].Present {
			t.Errorf("present for %d, with breaks for %d", none.Crews[0].Present, rested.Crews[0].Present)
		}
		none.Events, rested.Events, none.Crews, rested.Crews, rested.Shifts = 0, 0, nil, nil, nil
		if d := cmp.Diff(none, rested); d != "" {
			t.Error(d)
		}
	})
}

func needNobody(st *sim.Station) {
	st.RejectStop.Crew = sim.Work{}
	for j := range st.Stops {
		st.Stops[j].Crew = sim.Work{}
	}
	for j := range st.Checks {
		st.Checks[j].Crew = sim.Work{}
	}
	for j := range st.Materials {
		m := &st.Materials[j]
		m.Crew, m.Prepare.Crew, m.MisPicks.Crew = sim.Work{}, sim.Work{}, sim.Work{}
	}
}

// Breaks of a crew never raise what a single station makes that asks for it after a number of cycles: all that follows comes later.
func TestBreaksOfTheCrewOfOneStation(t *testing.T) {
	longer := 0
	rapid.Check(t, func(t *rapid.T) {
		l := &liner{t: t, unit: fineGrid}
		l.line.Crews = []sim.Crew{{Name: "fitters", People: 1}}
		st := one("A", "", 0.5)
		st.Stops = []sim.Stop{{Name: "jam", Every: l.cycles(), Lasts: l.law("lasts", 50_000, 5*s), Crew: sim.Work{Crew: "fitters"}}}
		l.line.Stations = []sim.Station{st}
		o := sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: 100 * s}
		none := runs(t, l.line, o)
		l.line.Calendar.Spans = hours(0, "wrw", 11, float64(l.count("break", 1, 9)), 13)
		rested := runs(t, l.line, o)
		if rested.Stations[0].Passed > none.Stations[0].Passed {
			t.Errorf("%d pieces with breaks, %d without", rested.Stations[0].Passed, none.Stations[0].Passed)
		}
		if rested.Stations[0].Passed < none.Stations[0].Passed {
			longer++
		}
	})
	if longer == 0 {
		t.Error("breaks never mattered")
	}
}

// A line without stops, belts, buffers that pass pieces on and whatever else goes on while stations stand does in its working time
// what it does without a calendar: breaks and nights are cut out. Spans change at times at which no cycle ends.
func TestTimeOffIsCutOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := timeless(randomLine(t, coarseGrid))
		if passesOn(&line) {
			return
		}
		o := sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: sim.Micros(rapid.Int64Range(1, 60).Draw(t, "measure")) * s}
		none := runs(t, line, o)
		line.Calendar = calendar(hours(0, "wbwo", 9.000017, 4, 11.000018, 30))
		o.Measure = withTimeOff(line.Calendar.Spans, o.Measure)
		cut := runs(t, line, o)
		for i := range none.Stations {
			a, b := &none.Stations[i], &cut.Stations[i]
			b.States[sim.PlannedStop], b.States[sim.OffShift] = 0, 0
			a.Holding, b.Holding, a.BlockedSpells, a.StarvedSpells, b.BlockedSpells, b.StarvedSpells = 0, 0, 0, 0, 0, 0
			a.Restarts, b.Restarts = 0, 0
			if d := cmp.Diff(*a, *b); d != "" {
				t.Errorf("%s: %s", line.Stations[i].Name, d)
			}
		}
		if none.AllRunning != cut.AllRunning {
			t.Errorf("all run for %d and for %d", none.AllRunning, cut.AllRunning)
		}
	})
}

// withTimeOff is the time at which so much has been worked.
func withTimeOff(spans []sim.Span, works sim.Micros) sim.Micros {
	for at, i := sim.Micros(0), 0; ; i++ {
		span := &spans[i%len(spans)]
		if span.Line == sim.LineWorks {
			if works <= span.Lasts {
				return at + works
			}
			works -= span.Lasts
		}
		at += span.Lasts
	}
}

// timeless takes from a line what goes by the clock while stations stand.
func timeless(line sim.Line) sim.Line {
	line.Crews, line.Calendar = nil, sim.Calendar{}
	for i := range line.Stations {
		st := &line.Stations[i]
		st.Stops, st.Materials, st.Checks, st.AfterStop, st.AfterStandstill = nil, nil, nil, nil, nil
		st.RejectStop, st.HeatUp, st.HeatRecovery, st.Ramp, st.LostPerStop = sim.RejectStop{}, 0, 0, 0, 0
		st.LoadsWhileStopped = false // in an outage too
		for j := range st.Steps {
			st.Steps[j].Delay = 0
		}
	}
	for i := range line.Buffers {
		b := &line.Buffers[i]
		b.Transit, b.Conveyor = 0, false
		b.Restart = sim.Level{} // looked at when a station is woken, as at the end of an outage
		oneWayOfBlocking(line.Stations, b.From)
	}
	return line
}

// passesOn says that a buffer feeds another.
func passesOn(line *sim.Line) bool {
	return slices.ContainsFunc(line.Buffers, func(b sim.Buffer) bool {
		return slices.ContainsFunc(line.Buffers, func(o sim.Buffer) bool { return slices.Contains(o.From, b.Name) })
	})
}

// oneWayOfBlocking lets those who put into one place all block before their cycle, or all after it: in an outage finished pieces may
// leave past somebody who waits for room for his next cycle.
func oneWayOfBlocking(stations []sim.Station, feeders []string) {
	before, may := false, true
	for i := range stations {
		if st := &stations[i]; slices.Contains(feeders, st.Name) {
			before = before || st.BlocksBefore
			may = may && st.Coupled == "" && len(st.Sends.To) == 0
		}
	}
	for i := range stations {
		if st := &stations[i]; slices.Contains(feeders, st.Name) {
			st.BlocksBefore = before && may
		}
	}
}
