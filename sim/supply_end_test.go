package sim_test

import (
	"testing"

	"tuckline/sim"
)

// Six leaflets make six cartons, at 3, 5, 7, 9, 11 and 13. The packer, new, waits for 4 on the
// table and takes two at 9 and two at 10; from 11 on it is starved and would wait for 4 again,
// but with the sixth no more can come: it takes the last two at 13. The web goes on until its 17th
// piece finds no place (6 taken, 10 in the store): from then on nothing moves.
func TestStartLevelLapsesWhenAPartnerEnds(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{
			{Name: "web", Takes: 1, Gives: 1, Cycle: sec(1)},
			{Name: "leaflets", Takes: 1, Gives: 1, Cycle: sec(1), Supply: 6},
			{Name: "cartoner", From: "store", Takes: 1, Also: []sim.Input{{From: "rack", Takes: 1}}, Gives: 1, Cycle: sec(2)},
			{Name: "packer", From: "table", Takes: 2, Gives: 2, Cycle: sec(1)},
		},
		Buffers: []sim.Buffer{
			{Name: "store", From: []string{"web"}, Holds: 10},
			{Name: "rack", From: []string{"leaflets"}, Holds: 10},
			{Name: "table", From: []string{"cartoner"}, Holds: 10, Start: sim.Level{On: true, Level: 4}},
		},
	}
	var trace sim.Trace
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 60 * s, Trace: &trace})
	if rec.End != sim.InputUsedUp || rec.EndedAt != 17*s {
		t.Errorf("ended with %v at %d, by hand the input is used up at 17 s", rec.End, rec.EndedAt)
	}
	if web, packer := &rec.Stations[0], &rec.Stations[3]; web.OutputInside[1] != 1 || packer.Passed != 6 {
		t.Errorf("the web holds %d, the packer passed %d; by hand 1 and 6", web.OutputInside[1], packer.Passed)
	}
	var begins []sim.Micros
	for _, c := range trace.States {
		if c.Station == 3 && c.State == sim.Running {
			begins = append(begins, c.At)
		}
	}
	if len(begins) != 2 || begins[0] != 9*s || begins[1] != 13*s {
		t.Errorf("the packer begins at %v, by hand at 9 s and 13 s", begins)
	}
}
