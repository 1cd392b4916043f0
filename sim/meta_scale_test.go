package sim_test

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// fixedLine makes all times of a line fixed whole seconds, so that a strike within a cycle falls on a whole
// microsecond before and after scaling. Ramps, whose times are roots, and heat
// recovery, which makes a cycle longer by no whole share of it, are left out.
func fixedLine(line sim.Line) sim.Line {
	fix := func(law sim.Law) sim.Law { return sim.Fixed(max(1, math.Round(law.Mean()/1e6)) * 1e6) }
	for i := range line.Stations {
		st := &line.Stations[i]
		st.Cycle, st.Ramp, st.HeatRecovery = fix(st.Cycle), 0, 0
		st.RejectStop.Lasts = fix(st.RejectStop.Lasts)
		for j := range st.Stops {
			stop := &st.Stops[j]
			stop.Lasts = fix(stop.Lasts)
			if stop.Clock == sim.RunningClock || stop.Clock == sim.CalendarClock {
				stop.Every = fix(stop.Every)
			}
		}
		for j := range st.Materials {
			st.Materials[j].Lasts = fix(st.Materials[j].Lasts)
			st.Materials[j].MisPicks.Lasts = fix(st.Materials[j].MisPicks.Lasts)
			st.Materials[j].Prepare.Lasts = fix(st.Materials[j].Prepare.Lasts)
		}
		for j := range st.Checks {
			check := &st.Checks[j]
			check.Lasts = fix(check.Lasts)
			if check.Clock == sim.RunningClock || check.Clock == sim.CalendarClock {
				check.Every = fix(check.Every)
			}
		}
	}
	for i := range line.Crews {
		crew := &line.Crews[i]
		crew.ElsewhereShare, crew.ElsewhereSpell = 0, 0
		for _, way := range []*sim.Law{&crew.Walk, &crew.Response} {
			if !way.IsZero() {
				*way = fix(*way)
			}
		}
	}
	return line
}

// slower is the line with all its times multiplied by n.
func slower(line sim.Line, n int64) sim.Line {
	c := sim.Micros(n)
	other := sim.Line{Crews: slices.Clone(line.Crews), Calendar: sim.Calendar{Spans: slices.Clone(line.Calendar.Spans)}}
	for i := range other.Calendar.Spans {
		other.Calendar.Spans[i].Lasts *= c
	}
	for i := range other.Crews {
		crew := &other.Crews[i]
		crew.Walk, crew.Response = crew.Walk.Scale(float64(n)), crew.Response.Scale(float64(n))
	}
	other.Stations, other.Buffers = append(other.Stations, line.Stations...), append(other.Buffers, line.Buffers...)
	for i := range other.Stations {
		st := &other.Stations[i]
		st.Cycle = st.Cycle.Scale(float64(n))
		st.Steps, st.Stops = append([]sim.SpeedStep(nil), st.Steps...), append([]sim.Stop(nil), st.Stops...)
		st.Materials, st.Checks = append([]sim.Material(nil), st.Materials...), append([]sim.Check(nil), st.Checks...)
		st.AfterStop, st.AfterStandstill = longerLimits(st.AfterStop, c), longerLimits(st.AfterStandstill, c)
		st.Group.Adds, st.HeatUp = st.Group.Adds*c, st.HeatUp*c
		st.RejectStop.Lasts = st.RejectStop.Lasts.Scale(float64(n))
		for j := range st.Steps {
			st.Steps[j].Cycle, st.Steps[j].Delay = st.Steps[j].Cycle*c, st.Steps[j].Delay*c
		}
		for j := range st.Stops {
			stop := &st.Stops[j]
			stop.Lasts = stop.Lasts.Scale(float64(n))
			if stop.Clock == sim.RunningClock || stop.Clock == sim.CalendarClock {
				stop.Every = stop.Every.Scale(float64(n))
			}
		}
		for j := range st.Materials {
			m := &st.Materials[j]
			m.Lasts, m.MisPicks.Lasts = m.Lasts.Scale(float64(n)), m.MisPicks.Lasts.Scale(float64(n))
			m.Prepare.Lasts = m.Prepare.Lasts.Scale(float64(n))
		}
		for j := range st.Checks {
			check := &st.Checks[j]
			check.Lasts = check.Lasts.Scale(float64(n))
			if check.Clock == sim.RunningClock || check.Clock == sim.CalendarClock {
				check.Every = check.Every.Scale(float64(n))
			}
		}
	}
	for i := range other.Buffers {
		other.Buffers[i].Transit *= c
	}
	return other
}

func longerLimits(rules []sim.ScrapRule, c sim.Micros) []sim.ScrapRule {
	var all []sim.ScrapRule
	for _, r := range rules {
		all = append(all, sim.ScrapRule{LongerThan: r.LongerThan * c, Cycles: r.Cycles, Lasts: r.Lasts * c})
	}
	return all
}

// stretch multiplies all times of a record; counts stay.
func stretch(rec *sim.Record, n int64) {
	c := sim.Micros(n)
	rec.Window, rec.EndedAt, rec.AllRunning = rec.Window*c, rec.EndedAt*c, rec.AllRunning*c
	rec.Scheduled *= c
	for i := range rec.Shifts {
		rec.Shifts[i].Begin, rec.Shifts[i].Scheduled = rec.Shifts[i].Begin*c, rec.Shifts[i].Scheduled*c
	}
	for i := range rec.Stations {
		st := &rec.Stations[i]
		st.Holding *= c
		for k := range st.States {
			st.States[k] *= c
		}
		for j := range st.Materials {
			st.Materials[j].Lateness *= c
		}
		for j := range st.Stops {
			st.Stops[j].Waiting, st.Stops[j].Down = st.Stops[j].Waiting*c, st.Stops[j].Down*c
		}
	}
	for i := range rec.Buffers {
		b := &rec.Buffers[i]
		b.LevelTime, b.TransitTime = b.LevelTime*n, b.TransitTime*n
		b.Full, b.Empty = b.Full*c, b.Empty*c
	}
	for i := range rec.Crews {
		r := &rec.Crews[i]
		r.Busy, r.Elsewhere, r.WaitTime = r.Busy*c, r.Elsewhere*c, r.WaitTime*c
		r.Present, r.Walking, r.Overtime = r.Present*c, r.Walking*c, r.Overtime*c
	}
}

// All times c times as long: the same counts, all times c times as long, exactly.
func TestAllTimesLonger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := fixedLine(randomLine(t, s))
		n := rapid.Int64Range(2, 9).Draw(t, "times")
		o := sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), WarmUp: 20 * s, Measure: 200 * s}
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		m2, err := sim.Compile(slower(line, n))
		if err != nil {
			t.Fatal(err)
		}
		rec := m.NewEngine().Run(o)
		stretch(&rec, n)
		o.WarmUp, o.Measure = o.WarmUp*sim.Micros(n), o.Measure*sim.Micros(n)
		if d := cmp.Diff(rec, m2.NewEngine().Run(o)); d != "" {
			t.Error(d)
		}
	})
}

// With random times, rounded to microseconds each, the difference is within its interval.
func TestAllTimesLongerOfTheReferenceLine(t *testing.T) {
	line := refLine(t, 600_000, 400_000, 3*s)
	fast, slow := compile(t, line).NewEngine(), compile(t, slower(line, 3)).NewEngine()
	var differences []float64
	for r := range 20 {
		o := sim.Options{Seed: seedOf("all times longer"), Replication: r, WarmUp: sim.Hour, Measure: 8 * sim.Hour}
		a := fast.Run(o)
		o.WarmUp, o.Measure = 3*o.WarmUp, 3*o.Measure
		b := slow.Run(o)
		differences = append(differences, float64(a.Stations[2].Passed-b.Stations[2].Passed))
	}
	mean, half := interval(differences)
	t.Logf("cartons in 8 h and in 24 h of a third of the speed differ by %.2f ± %.2f", mean, half)
	if math.Abs(mean) > half+1 { // a piece at an edge
		t.Error("outside")
	}
}
