package sim_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// The pauses are the time in which a station was stopped or waited for its crew, and of that in which it was blocked what is
// no wait of up to a cycle alone: summed up from the trace where there is no calendar, which cuts pauses in two; with one
// they lie between the time stopped and that with all blocked time.
func TestRandomLinesPausesSum(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		var trace sim.Trace
		o.WarmUp, o.Pauses, o.Trace = 0, true, &trace // else pauses that began before are no part of them
		rec := m.NewEngine().Run(o)
		for i := range rec.Stations {
			r := &rec.Stations[i]
			sum, before := sim.Micros(0), sim.Micros(0)
			for _, p := range r.Pauses {
				sum += p.Lasted
				if p.Begin < before || p.Lasted <= 0 {
					t.Errorf("%s: %+v begins before the one before it is over, at %d, or lasts no time", line.Stations[i].Name, p, before)
				}
				before = p.Begin + p.Lasted
			}
			if len(line.Calendar.Spans) == 0 && len(line.Orders.List) == 0 {
				if want := tracedPauses(&trace, i, o.Measure, setCycle(&line, i)); sum != want {
					t.Errorf("%s: pauses sum to %d, by the trace to %d", line.Stations[i].Name, sum, want)
				}
				continue
			}
			least := r.States[sim.Waiting] + r.States[sim.Down] + r.States[sim.PlannedStop]
			for _, by := range r.StoppedBy {
				if by.Cause == sim.CauseOutage {
					least -= by.Planned
				}
			}
			if most := least + r.States[sim.Blocked]; sum < least || sum > most {
				t.Errorf("%s: pauses sum to %d, the station was stopped for %d and stopped or blocked for %d", line.Stations[i].Name, sum, least, most)
			}
		}
	})
}

// tracedPauses sums up the times in which a station was stopped or blocked, those left out in which it was only blocked, for a
// cycle at most.
func tracedPauses(trace *sim.Trace, station int, end, cycle sim.Micros) sim.Micros {
	var sum, from sim.Micros
	in, only := false, false
	over := func(at sim.Micros) {
		if in && !(only && at-from <= cycle) {
			sum += at - from
		}
		in = false
	}
	for _, c := range trace.States {
		if c.Station != station {
			continue
		}
		switch c.State {
		case sim.Blocked, sim.Waiting, sim.Down, sim.PlannedStop:
			if !in {
				in, only, from = true, true, c.At
			}
			only = only && c.State == sim.Blocked
		default:
			over(c.At)
		}
	}
	over(end)
	return sum
}

// setCycle is the cycle of a station at set speed, the longest of those on one drive.
func setCycle(line *sim.Line, station int) sim.Micros {
	longest := line.Stations[station].Cycle.Mean()
	for i := range line.Stations {
		if drive := line.Stations[i].Coupled; drive != "" && drive == line.Stations[station].Coupled {
			longest = max(longest, line.Stations[i].Cycle.Mean())
		}
	}
	return max(1, sim.Micros(math.Round(longest)))
}

// recovers says that a station is slower after a break.
func recovers(line *sim.Line) bool {
	return slices.ContainsFunc(line.Stations, func(st sim.Station) bool { return st.Ramp > 0 || st.HeatRecovery > 0 })
}

// Without stops, materials, rejects and tests all waits are those for a slower neighbour, or for one that comes
// back to its speed after a break.
func TestRandomLinesWaitForPaceAlone(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, _ *sim.Model, o sim.Options) {
		for i := range line.Stations {
			st := &line.Stations[i]
			st.Stops, st.Materials, st.RejectShare, st.Checks, st.Supply = nil, nil, 0, nil, 0
			st.AfterStandstill, st.Runs, st.RejectStop, st.NoReads, st.LostPerStop = nil, sim.RejectRuns{}, sim.RejectStop{}, 0, 0
			st.HeatUp = 0
		}
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		o.Attribute = true
		rec := m.NewEngine().Run(o)
		for i := range rec.Stations {
			for _, b := range rec.Stations[i].Because {
				if b.Cause == sim.CauseOutage && recovers(&line) {
					continue
				}
				if b.Cause != sim.CausePace || b.Overlap != 0 {
					t.Errorf("%s: %+v", line.Stations[i].Name, b)
				}
			}
		}
	})
}

// A cause is a stop that has been: from time 0 on nothing waits for one that has not begun.
func TestRandomLinesWaitForStopsThatWere(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		o.WarmUp, o.Attribute = 0, true
		rec := m.NewEngine().Run(o)
		for i := range rec.Stations {
			for _, b := range rec.Stations[i].Because {
				if b.Cause >= 0 && rec.Stations[b.Station].Stops[b.Cause].Count == 0 && !spliced(&line.Stations[b.Station], &rec.Stations[b.Station]) {
					t.Errorf("%s: %+v did not begin", line.Stations[i].Name, b)
				}
				if b.Cause == sim.CauseRejects && rec.Stations[b.Station].Rejected+rec.Stations[b.Station].Scrapped+rec.Stations[b.Station].Sampled == 0 {
					t.Errorf("%s: %+v without rejects", line.Stations[i].Name, b)
				}
			}
		}
	})
}

// spliced says that a station has had scrap after a splice, which needs no stop.
func spliced(st *sim.Station, r *sim.StationRecord) bool {
	for i := range st.Materials {
		if st.Materials[i].SpliceScrap > 0 && r.Materials[i].Added > 0 {
			return true
		}
	}
	return false
}
