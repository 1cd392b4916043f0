package sim_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// Time under a break goes back to an outage of the station itself; what waits on both sides of it goes back to what it
// did before.
func TestWaitsOverABreak(t *testing.T) {
	a := one("A", "", 1)
	a.Stops = []sim.Stop{{Name: "jam", Every: sec(4), Clock: sim.RunningClock, Lasts: sec(10)}}
	rec := course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 0.5)}, Calendar: calendar(hours(0, "wbw", 8, 3, 100))},
		measure: 16 * s,
		want: `
			0   A running, B starved
			1   B running
			1.5 B starved
			2   B running
			2.5 B starved
			3   B running
			3.5 B starved
			4   A down (jam), B running
			4.5 B starved
			8   A planned stop, B planned stop
			11  A down (jam), B starved     # without a crew the repair has gone on; until 14
			14  A running
			15  B running
			15.5 B starved
		`,
	}.attributed(t, map[string]string{"B": `
		starved 3 s in 5 because of A: slower    # 1 and 4 × 0.5
		starved 7.5 s in 2 because of A: jam   # 4.5 to 8, 11 to 15
	`})
	want := []sim.StoppedBy{{Station: 0, Cause: sim.CauseOutage, Planned: 3 * s}, {Station: 0, Cause: 0, Down: 7 * s}}
	if d := cmp.Diff(want, rec.Stations[0].StoppedBy); d != "" {
		t.Error(d)
	}
}

// A ramp after the break makes the neighbour wait because of that.
func TestWaitsForARampAfterABreak(t *testing.T) {
	a := one("A", "", 1)
	a.Ramp = 4 * s
	line := sim.Line{Stations: []sim.Station{a, one("B", "A", 1)}, Calendar: calendar(hours(0, "wbw", 8.5, 3, 100))}
	rec := compile(t, line).NewEngine().Run(sim.Options{WarmUp: 8 * s, Measure: 20 * s, Attribute: true})
	for _, b := range rec.Stations[1].Because {
		if b.Station != 0 || b.Cause != sim.CauseOutage {
			t.Errorf("%+v", b)
		}
	}
	if rec.Stations[1].States[sim.Starved] == 0 {
		t.Error("nobody waits")
	}
}

// A pause goes on behind a break, which is no part of it.
func TestPauseOverABreak(t *testing.T) {
	line := fitters(1, needing("A", 4, 6, 1, 5))
	line.Calendar = calendar(hours(0, "wbw", 8, 3, 100))
	run := func() []sim.Pause {
		return compile(t, line).NewEngine().Run(sim.Options{Measure: 40 * s, Pauses: true}).Stations[0].Pauses
	}
	// Repaired from 4 to 10, the fitter has his break until 13; the line works from 11 to 15, and then in turns of 4 and 6 s.
	want := []sim.Pause{{Begin: 4 * s, Lasted: 4 * s}, {Begin: 15 * s, Lasted: 6 * s}, {Begin: 25 * s, Lasted: 6 * s}, {Begin: 35 * s, Lasted: 5 * s}}
	if d := cmp.Diff(want, run()); d != "" {
		t.Error(d)
	}
	line.Calendar = calendar(hours(0, "wow", 8, 1, 100))
	// Repaired until 10: 4 s before the hour off and 1 s after it.
	want = []sim.Pause{{Begin: 4 * s, Lasted: 5 * s}, {Begin: 14 * s, Lasted: 6 * s}, {Begin: 24 * s, Lasted: 6 * s}, {Begin: 34 * s, Lasted: 6 * s}}
	if d := cmp.Diff(want, run()); d != "" {
		t.Error(d)
	}
}

// The waits of a crew sum to its record, and those of the stations to those of the crews.
func TestRandomLinesWaitsForCrews(t *testing.T) {
	onRandomLines(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		plain := m.NewEngine().Run(o)
		o.Waits = true
		rec := m.NewEngine().Run(o)
		var crews, stations sim.Ages
		for i := range rec.Crews {
			r := &rec.Crews[i]
			if r.Waits.Count != r.Requests || r.Waits.Sum != int64(r.WaitTime) {
				t.Errorf("%s: waits %d, %d; record %d, %d", line.Crews[i].Name, r.Waits.Count, r.Waits.Sum, r.Requests, r.WaitTime)
			}
			crews.Count, crews.Sum = crews.Count+r.Waits.Count, crews.Sum+r.Waits.Sum
			r.Waits = nil
		}
		for i := range rec.Stations {
			r := &rec.Stations[i]
			stations.Count, stations.Sum = stations.Count+r.Waits.Count, stations.Sum+r.Waits.Sum
			r.Waits = nil
		}
		if crews.Count != stations.Count || crews.Sum != stations.Sum {
			t.Errorf("of crews %+v, of stations %+v", crews, stations)
		}
		if d := cmp.Diff(plain, rec); d != "" {
			t.Errorf("asking for waits changes the record: %s", d)
		}
	})
}
