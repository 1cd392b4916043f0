package sim_test

import (
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// The pauses are the time in which a station was stopped or waited for its crew, and of that in which it was blocked no more
// than all: waits up to a cycle are none. A station that never was blocked has just the former.
func TestRandomLinesPausesSum(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		o.WarmUp, o.Pauses = 0, true // else pauses that began before are no part of them
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
			least := r.States[sim.Waiting] + r.States[sim.Down] + r.States[sim.PlannedStop]
			if most := least + r.States[sim.Blocked]; sum < least || sum > most {
				t.Errorf("%s: pauses sum to %d, the station was stopped for %d and stopped or blocked for %d", line.Stations[i].Name, sum, least, most)
			}
		}
	})
}

// Without stops, materials, rejects and tests all waits are those for a slower neighbour.
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
