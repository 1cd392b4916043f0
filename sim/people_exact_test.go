package sim_test

import (
	"math"
	"testing"

	"tuckline/sim"
)

// walkers: the machines and repairers of the row, whose whole work is the way: who walks is bound as long as who repairs. The
// repair itself lasts a microsecond.
func (l laws) walkers() []exactCase {
	shop := l.repairmen()
	var all []exactCase
	for _, c := range shop {
		c.row, c.name = c.name, c.name+", by the way"
		c.line.Crews = []sim.Crew{{Name: "repairers", People: c.line.Crews[0].People, Walk: c.line.Stations[0].Stops[0].Lasts}}
		for i := range c.line.Stations {
			c.line.Stations[i].Stops[0].Lasts = sim.Fixed(1)
		}
		all = append(all, c)
	}
	return all
}

// As many repairers as machines: nobody waits for one, and a machine is down for response, way and repair, whatever their
// laws. By hand: it runs for 40 s, then waits for 3 + 2 s and is repaired for 5 s, so that it runs 40/50 of the time, waits 5/50
// and is down 5/50. By renewal theory.
func TestResponseWayAndRepair(t *testing.T) {
	l := laws{t}
	line := sim.Line{Crews: []sim.Crew{{
		Name: "repairers", People: 3, Walk: must(t)(sim.Lognormal(2e6, 0.7)), Response: l.exp(3),
	}}}
	for _, name := range []string{"A", "B", "C"} {
		line.Stations = append(line.Stations, one(name, "", 0.5))
		line = failing(line, len(line.Stations)-1, sim.RunningClock, l.exp(40), must(t)(sim.Gamma(5e6, 0.5)), sim.Work{Crew: "repairers"})
	}
	e := compile(t, line).NewEngine()
	want := map[sim.State]float64{sim.Running: 0.8, sim.Waiting: 0.1, sim.Down: 0.1}
	shares := map[sim.State][]float64{}
	var waits []float64
	for r := range 40 {
		rec := e.Run(sim.Options{Seed: seedOf("response, way and repair"), Replication: r, WarmUp: 1000 * s, Measure: 50_000 * s})
		for state := range want {
			sum := 0.0
			for i := range rec.Stations {
				sum += float64(rec.Stations[i].States[state]) / float64(3*rec.Window)
			}
			shares[state] = append(shares[state], sum)
		}
		c := &rec.Crews[0]
		waits = append(waits, float64(c.WaitTime)/float64(c.Requests)/1e6)
		if c.Waited != 0 || c.Busy-c.Walking <= 0 {
			t.Errorf("%d waited for somebody; %+v", c.Waited, c)
		}
	}
	check := func(what string, x []float64, want float64) {
		mean, half := interval(x)
		t.Logf("%s: %.5f ± %.5f, by hand %.5f", what, mean, half, want)
		if math.Abs(mean-want) > half {
			t.Errorf("%s: %.5f ± %.5f leaves out %.5f", what, mean, half, want)
		}
	}
	for state, share := range want {
		check(state.String(), shares[state], share)
	}
	check("seconds from request to work", waits, 5)
}
