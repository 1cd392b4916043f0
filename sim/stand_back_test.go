package sim_test

import (
	"testing"

	"tuckline/sim"
)

// B 3 goes first of those that take from the buffer, but the heat-up of B 2 stops it, with its group, in the same
// instant: B 1, which stood back for it, takes the piece.
func TestWhoStoodBackTakesWhenTheOtherIsStopped(t *testing.T) {
	first, second, third := one("B 1", "buffer", 2), one("B 2", "buffer", 2), one("B 3", "buffer", 2)
	second.HeatUp, second.StopsWith = 5*s, "D"
	third.StopsWith, third.Priority = "D", 1
	course{
		line: sim.Line{
			Stations: []sim.Station{one("D", "", 1), first, second, third},
			Buffers:  []sim.Buffer{{Name: "buffer", From: []string{"D"}, Holds: 1, AtStart: 1}},
		},
		measure: 1 * s,
		want: `
			0 D planned stop (B 2 heat-up), B 1 running, B 2 planned stop (heat-up), B 3 planned stop (B 2 heat-up)
		`,
	}.follow(t)
}

// C lacks a piece of the magazine while a load is carried out of it, from 1 to 4: what A holds for C meanwhile is not stuck.
func TestPiecesThatAreCarriedAreOnTheirWay(t *testing.T) {
	c, store := one("C", "way", 1), handMagazine()
	c.Also = []sim.Input{{From: "store", Takes: 1}}
	store.Name, store.From, store.AtStart, store.Hand = "store", []string{"F"}, 3, sim.Hand{PerPiece: s, Load: 3}
	line := sim.Line{Stations: []sim.Station{one("A", "", 1), c, one("F", "", 1000)}, Buffers: []sim.Buffer{{Name: "way", From: []string{"A"}}, store}}
	if rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 2 * s}); rec.End != sim.HorizonReached || rec.Stations[0].OutputInside[1] != 1 {
		t.Errorf("ended with %v, %q locked, %d held", rec.End, rec.Locked, rec.Stations[0].OutputInside[1])
	}
}
