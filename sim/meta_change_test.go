package sim_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// serialLine is a line in which a larger buffer can do no harm: without levels, scrap by the length of a
// pause, crews and ramps. Nor does a stop of the calendar scrap anything: what it finds depends on the time.
func serialLine(t *rapid.T, unit sim.Micros) sim.Line {
	l := &liner{t: t, unit: unit}
	for i := range l.count("stations", 2, 4) {
		st := l.station(i, 1)
		st.Supply, st.AfterStandstill, st.Ramp, st.Steps = 0, nil, 0, nil
		st.HeatRecovery, st.LostPerStop, st.Checks = 0, 0, nil // depend on what the station did before, and when

		for j := range st.Materials { // tasks go on while a station is blocked: with more places they may be late
			m := &st.Materials[j]
			m.Alarm, m.Store, m.Prepare = sim.Level{}, sim.WebStore{}, sim.Prepare{}
		}
		for j := range st.AfterStop {
			st.AfterStop[j].LongerThan = 0
		}
		for j := range st.Stops {
			if st.Stops[j].Clock == sim.CalendarClock {
				st.AfterStop = nil
			} else {
				st.Stops[j].Scraps = l.chance("scraps", 4)
			}
		}
		l.line.Stations = append(l.line.Stations, st)
		if i > 0 {
			l.buffer(fmt.Sprintf("buffer %d", i), l.names([]int{i - 1}), []int{i}, l.chance("belt", 3))
			b := &l.line.Buffers[i-1]
			b.StopUpstream, b.Restart, b.Start, b.Turns = 0, sim.Level{}, sim.Level{}, sim.Turns{}
		}
	}
	return l.line
}

// A larger buffer never lowers the output, up to any time.
func TestLargerBufferNeverLowersTheOutput(t *testing.T) {
	raised := 0
	for name, unit := range map[string]sim.Micros{"fine": fineGrid, "coarse": coarseGrid} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				line := serialLine(t, unit)
				m, err := sim.Compile(line)
				if err != nil {
					t.Fatal(err)
				}
				line.Buffers = slices.Clone(line.Buffers)
				for i := range line.Buffers {
					if b := &line.Buffers[i]; b.Holds >= 0 {
						b.Holds += rapid.Int64Range(0, 10).Draw(t, "places more")
					}
				}
				m2, err := sim.Compile(line)
				if err != nil {
					t.Fatal(err)
				}
				e, e2 := m.NewEngine(), m2.NewEngine()
				for k := range 5 {
					o := sim.Options{Seed: 11, Measure: sim.Micros(k+1) * 30 * s}
					a, b := e.Run(o), e2.Run(o)
					last := len(line.Stations) - 1
					if a.Stations[last].Passed > b.Stations[last].Passed {
						t.Fatalf("after %d s %d pieces, with more places %d", (k+1)*30, a.Stations[last].Passed, b.Stations[last].Passed)
					}
					if a.Stations[last].Passed < b.Stations[last].Passed {
						raised++
					}
				}
			})
		})
	}
	if raised == 0 {
		t.Error("no buffer ever mattered")
	}
}

// One person more changes nothing where nobody has ever waited. Where people of one crew may do the work of another he does some of
// it in their place: what stations and places do, and what each crew is asked for, is the same, all crews together are at work and
// on the way as long, and only who of them is moves. There all have the same way to the work, or its length would move too.
func TestPersonNobodyNeedsChangesNothing(t *testing.T) {
	tried, helped := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		line := randomLine(t, coarseGrid)
		for i := range line.Crews {
			line.Crews[i].ElsewhereShare = 0
			line.Crews[i].People += 2
		}
		helps := slices.ContainsFunc(line.Crews, func(c sim.Crew) bool { return len(c.CanAlso) > 0 })
		for i := range line.Crews {
			if helps {
				line.Crews[i].Walk, line.Crews[i].Response = line.Crews[0].Walk, line.Crews[0].Response
			}
		}
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		o := sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: 60 * s}
		rec := m.NewEngine().Run(o)
		asked := int64(0)
		for i := range rec.Crews {
			asked += rec.Crews[i].Requests
		}
		// Waiting that is open at the horizon is counted when the work begins: well within the ten minutes after.
		longer := o
		longer.Measure += 10 * sim.Minute
		later := m.NewEngine().Run(longer)
		if asked == 0 || anyWaiting(&rec) || anyWaiting(&later) {
			return
		}
		tried++
		line.Crews = slices.Clone(line.Crews)
		line.Crews[0].People++
		m2, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		rec2 := m2.NewEngine().Run(o)
		for _, r := range []*sim.Record{&rec, &rec2} { // he is there, and who has his break later is another question
			r.Crews[0].Present, r.Crews[0].Overtime, r.Events = 0, 0, 0
			if helps {
				workOfAll(r)
			}
		}
		if helps && rec.Crews[0].Requests > 0 {
			helped++
		}
		if d := cmp.Diff(rec, rec2); d != "" {
			t.Error(d)
		}
	})
	if tried == 0 {
		t.Error("in no line there was a crew for which nobody waited")
	}
	if helped == 0 {
		t.Error("in no line people might do the work of another crew")
	}
}

// workOfAll puts the work of all crews to the first; who is there, and who is there longer, depends on who has done it.
func workOfAll(r *sim.Record) {
	all := &r.Crews[0]
	for i := range r.Crews[1:] {
		c := &r.Crews[1+i]
		all.Busy, all.Walking = all.Busy+c.Busy, all.Walking+c.Walking
		c.Busy, c.Walking, c.Present, c.Overtime = 0, 0, 0, 0
	}
}

func anyWaiting(rec *sim.Record) bool {
	for i := range rec.Crews {
		if rec.Crews[i].Waited > 0 { // a task too
			return true
		}
	}
	for i := range rec.Stations {
		for _, stop := range rec.Stations[i].Stops {
			if stop.Waiting > 0 {
				return true
			}
		}
	}
	return false
}

// A capacity that is never reached changes nothing: as many places as the buffer without limit ever held,
// and those that all feeders together put at once.
func TestCapacityThatNeverBindsChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := randomLine(t, coarseGrid)
		var free []int
		for i := range line.Buffers {
			if b := &line.Buffers[i]; b.StopUpstream == 0 && !b.Restart.On && !b.Start.On {
				b.Holds = sim.Unlimited
				free = append(free, i)
			}
		}
		m, err := sim.Compile(line)
		if err != nil {
			t.Skip("a level of another buffer needs a limit here")
		}
		o := sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: 60 * s}
		rec := m.NewEngine().Run(o)
		line.Buffers = slices.Clone(line.Buffers)
		for _, i := range free {
			line.Buffers[i].Holds = max(rec.Buffers[i].Max, line.Buffers[i].AtStart) + 20
		}
		m2, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		rec2 := m2.NewEngine().Run(o)
		for _, i := range free {
			rec.Buffers[i].Full, rec2.Buffers[i].Full = 0, 0 // a full buffer is one with a limit
		}
		if d := cmp.Diff(rec, rec2); d != "" {
			t.Error(d)
		}
	})
}

// Eight windows of an hour hold what one of eight hours holds.
func TestEdgesOfTheWindowChangeNothing(t *testing.T) {
	m := compile(t, refLine(t, 600_000, 400_000, 3*s))
	e := m.NewEngine()
	whole := e.Run(sim.Options{Seed: 5, WarmUp: sim.Hour, Measure: 8 * sim.Hour})
	var states [3][sim.NumStates]sim.Micros
	var passed [3]int64
	level, together := [2]int64{}, sim.Micros(0)
	for k := range sim.Micros(8) {
		part := e.Run(sim.Options{Seed: 5, WarmUp: (1 + k) * sim.Hour, Measure: sim.Hour})
		for i := range part.Stations {
			passed[i] += part.Stations[i].Passed
			for j, d := range part.Stations[i].States {
				states[i][j] += d
			}
		}
		for i := range part.Buffers {
			level[i] += part.Buffers[i].LevelTime
		}
		together += part.AllRunning
	}
	for i := range whole.Stations {
		if whole.Stations[i].States != states[i] || whole.Stations[i].Passed != passed[i] {
			t.Errorf("station %d: %v and %v, passed %d and %d", i, whole.Stations[i].States, states[i], whole.Stations[i].Passed, passed[i])
		}
	}
	if whole.Buffers[0].LevelTime != level[0] || whole.Buffers[1].LevelTime != level[1] || whole.AllRunning != together {
		t.Errorf("levels %d %d and %v, all running %d and %d", whole.Buffers[0].LevelTime, whole.Buffers[1].LevelTime, level, whole.AllRunning, together)
	}
}
