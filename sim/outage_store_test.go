package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The packer has its new reel when the line stands, and two pieces lie beside it, behind them a hand-over without a place of its own: they go
// on when the line works again, so that nothing is locked.
func TestStoreBesideTheLineGivesBackAfterAnOutage(t *testing.T) {
	packer := one("packer", "hand-over", 1)
	packer.Materials = []sim.Material{{Name: "reel", Amount: 1, PerCycle: 1, Refill: 1, Lasts: sec(1)}}
	line := sim.Line{
		Stations: []sim.Station{one("feeder", "", 100), packer},
		Buffers: []sim.Buffer{
			{Name: "store", From: []string{"feeder"}, Kind: sim.BesideLine, Holds: 4, AtStart: 3},
			{Name: "hand-over", From: []string{"store"}, Holds: sim.Smallest},
		},
		Calendar: sim.Calendar{Spans: []sim.Span{{Lasts: 2 * s}, {Lasts: 8 * s, Line: sim.LineStands}}},
	}
	m := compile(t, line)
	// By hand: packs from 0 to 1, gets its reel until 2, and the line stands from 2 to 10.
	rec := m.NewEngine().Run(sim.Options{Measure: 5 * s})
	if r := &rec.Stations[1]; rec.End != sim.HorizonReached || r.Passed != 1 || rec.Buffers[0].Level[1] != 2 {
		t.Errorf("ended with %v of %q, %d passed, %d in the store", rec.End, rec.Locked, r.Passed, rec.Buffers[0].Level[1])
	}
	// Packs again from 10 to 11.
	rec = m.NewEngine().Run(sim.Options{Measure: 11_500_000})
	if r := &rec.Stations[1]; rec.End != sim.HorizonReached || r.Passed != 2 || r.States[sim.Running] != 2*s {
		t.Errorf("ended with %v of %q, %d passed, %d running", rec.End, rec.Locked, r.Passed, r.States[sim.Running])
	}
}
