package sim_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// wider adds to a random line what is rare there: shared streams, scrap by time after any standstill,
// drives of stations with stops, rejects and materials of their own.
type wider struct{ *liner }

func widerLine(t *rapid.T, unit sim.Micros) sim.Line {
	w := wider{&liner{t: t, unit: unit, line: randomLine(t, unit)}}
	for i := range w.line.Stations {
		st := &w.line.Stations[i]
		if w.chance("random as", 6) {
			st.RandomAs = rapid.SampledFrom(w.line.Stations).Draw(w.t, "as").Name
		}
		for j := range st.AfterStandstill {
			if w.chance("scrap by time", 2) {
				st.AfterStandstill[j].Lasts = w.time("scrap lasts", 0, 4*s)
			}
		}
		for j := range st.Stops {
			st.Stops[j].Scraps = st.Stops[j].Scraps || w.chance("scraps", 3)
		}
	}
	w.couple()
	return w.line
}

// follow puts a station on the drive of another: what took from that takes from it now.
func (w wider) follow(k int, drive string) {
	before := &w.line.Stations[k]
	st := sim.Station{
		Name: fmt.Sprintf("E follower of %s", before.Name), From: before.Name, Coupled: drive,
		Takes: before.Gives, Gives: before.Gives, Cycle: w.law("cycle", 50_000, 2*s),
	}
	before.Coupled = drive
	if w.chance("rejects", 2) {
		st.RejectShare = 0.2
	}
	for i := range max(0, w.count("stops", -1, 2)) {
		st.Stops = append(st.Stops, w.stop(fmt.Sprintf("stop %d", i)))
		st.Stops[i].Scraps = w.chance("scraps", 3)
	}
	if w.chance("material", 3) {
		st.Materials = []sim.Material{w.material("reel")}
	}
	for i := range w.line.Stations {
		if w.line.Stations[i].From == before.Name {
			w.line.Stations[i].From = st.Name
		}
	}
	for i := range w.line.Buffers {
		for j, from := range w.line.Buffers[i].From {
			if from == before.Name {
				w.line.Buffers[i].From[j] = st.Name
			}
		}
		if w.line.Buffers[i].Turns.First == before.Name {
			w.line.Buffers[i].Turns.First = st.Name
		}
	}
	w.line.Stations = append(w.line.Stations, st)
}

func (w wider) couple() {
	for drive := range max(0, w.count("drives", -1, 2)) {
		k := w.count("coupled", 0, len(w.line.Stations)-1)
		if st := &w.line.Stations[k]; st.Coupled != "" || len(st.Sends.To) > 0 {
			continue // the last of a drive sends
		}
		name := fmt.Sprintf("drive %d", drive)
		w.follow(k, name)
		if w.chance("three", 3) {
			w.follow(len(w.line.Stations)-1, name)
		}
	}
}

// onWiderLines checks a property of random lines with the newer parts.
func onWiderLines(t *testing.T, property func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options)) {
	for name, unit := range map[string]sim.Micros{"fine": fineGrid, "coarse": coarseGrid} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				line := widerLine(t, unit)
				m, err := sim.Compile(line)
				if err != nil {
					t.Fatalf("the line is refused: %v", err)
				}
				l := liner{t: t, unit: unit}
				property(t, line, m, sim.Options{
					Seed: rapid.Uint64().Draw(t, "seed"), Replication: l.count("replication", 0, 3),
					WarmUp: l.time("warm-up", 0, 20*s), Measure: l.time("measure", 1*s, 80*s),
				})
			})
		})
	}
}

func TestWiderLinesBalance(t *testing.T) {
	onWiderLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		var trace sim.Trace
		o.Trace, o.Classes = &trace, true
		rec := m.NewEngine().Run(o)
		for _, fault := range balances(line, m, o, &rec, &trace) {
			t.Error(fault)
		}
		if rec.End == sim.Deadlock {
			t.Errorf("deadlock of %q since %d", rec.Locked, rec.EndedAt)
		}
	})
}
