package sim_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// waits writes what began the waits of a station, one a line: "blocked 2 s in 1, starved 3 s in 2
// because of A: jam, overlap 1 s".
func waits(line sim.Line, m *sim.Model, rec *sim.Record, station int) []string {
	var all []string
	for _, b := range rec.Stations[station].Because {
		text := ""
		if b.Blocked > 0 || b.BlockedSpells > 0 {
			text += fmt.Sprintf("blocked %s s in %d ", seconds(b.Blocked), b.BlockedSpells)
		}
		if b.Starved > 0 || b.StarvedSpells > 0 {
			text += fmt.Sprintf("starved %s s in %d ", seconds(b.Starved), b.StarvedSpells)
		}
		text += "because of " + origin(line, m, b.Station, b.Cause)
		if b.Overlap > 0 {
			text += ", overlap " + seconds(b.Overlap) + " s"
		}
		all = append(all, text)
	}
	return all
}

// origin is a station or a place, and its cause, in words.
func origin(line sim.Line, m *sim.Model, station, cause int) string {
	where := ""
	if n := len(line.Stations); station < n {
		where = line.Stations[station].Name
	} else {
		where = m.Places()[station-n].Name
	}
	switch cause {
	case sim.CausePace:
		return where + ": slower"
	case sim.CauseRejects:
		return where + ": rejects"
	case sim.CauseStore:
		return where + ": its stop"
	case sim.CauseSupply:
		return where + ": end of supply"
	}
	return where + ": " + m.StopNames(station)[cause]
}

// attributed runs a course, and compares with what began the waits by hand.
func (c course) attributed(t *testing.T, want map[string]string) sim.Record {
	t.Helper()
	c.follow(t)
	m := compile(t, c.line)
	rec := m.NewEngine().Run(sim.Options{Seed: 1, WarmUp: c.warmUp, Measure: c.measure, Attribute: true})
	for i := range c.line.Stations {
		name := c.line.Stations[i].Name
		sameText(t, "waits of "+name, plainLines(want[name]), waits(c.line, m, &rec, i))
		for _, fault := range waitsDoNotSum(&rec, i) {
			t.Errorf("%s: %s", name, fault)
		}
	}
	return rec
}

// waitsDoNotSum says where the waits by cause are not those of the station.
func waitsDoNotSum(rec *sim.Record, station int) (found []string) {
	r := &rec.Stations[station]
	var sum sim.Because
	for _, b := range r.Because {
		sum.Blocked += b.Blocked
		sum.Starved += b.Starved
		sum.BlockedSpells += b.BlockedSpells
		sum.StarvedSpells += b.StarvedSpells
		if b.Blocked < 0 || b.Starved < 0 || b.BlockedSpells < 0 || b.StarvedSpells < 0 || b.Overlap < 0 || b.BlockedOverlap < 0 {
			found = append(found, fmt.Sprintf("less than nothing in %+v", b))
		}
		if b.BlockedOverlap > b.Blocked || b.Overlap-b.BlockedOverlap > b.Starved {
			found = append(found, fmt.Sprintf("more overlap than time in %+v", b))
		}
	}
	want := sim.Because{
		Blocked: r.States[sim.Blocked], Starved: r.States[sim.Starved],
		BlockedSpells: r.BlockedSpells, StarvedSpells: r.StarvedSpells,
	}
	if sum != want {
		found = append(found, fmt.Sprintf("waits by cause sum to %+v, the station has %+v", sum, want))
	}
	var stopped sim.StoppedBy
	for _, b := range r.StoppedBy {
		stopped.Waiting += b.Waiting
		stopped.Down += b.Down
		stopped.Planned += b.Planned
	}
	if states := (sim.StoppedBy{Waiting: r.States[sim.Waiting], Down: r.States[sim.Down], Planned: r.States[sim.PlannedStop]}); stopped != states {
		found = append(found, fmt.Sprintf("stops sum to %+v, the station has %+v", stopped, states))
	}
	return found
}

// The waits by cause sum to the times of the station, and asking for them changes nothing else.
func TestRandomLinesWaitsSum(t *testing.T) {
	onRandomLines(t, waitsSum)
}

func TestRandomStoresWaitsSum(t *testing.T) {
	onLines(t, randomStores, waitsSum)
}

func waitsSum(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
	plain := m.NewEngine().Run(o)
	o.Attribute = true
	rec := m.NewEngine().Run(o)
	for i := range rec.Stations {
		for _, fault := range waitsDoNotSum(&rec, i) {
			t.Errorf("%s: %s", line.Stations[i].Name, fault)
		}
		for _, b := range rec.Stations[i].Because {
			if b.Cause >= 0 && b.Station < len(line.Stations) && b.Cause >= len(m.StopNames(b.Station)) {
				t.Errorf("%s: no such cause: %+v", line.Stations[i].Name, b)
			}
		}
		rec.Stations[i].Because, rec.Stations[i].StoppedBy, rec.Stations[i].Pauses = nil, nil, nil
	}
	if a, b := fmt.Sprintf("%+v", plain), fmt.Sprintf("%+v", rec); a != b {
		t.Errorf("asking for causes changes the record:\n%s\n%s", a, b)
	}
}

// A rate of a store that binds is what keeps its neighbours waiting, not the speed of a station: A makes one a second, the
// store gives or takes one in 1.2 s, B could take two a second. One that does not bind (one in 0.8 s) is not it.
func TestWaitsForTheRateOfAStore(t *testing.T) {
	const tenth = s / 10
	for _, c := range []struct {
		in, out sim.Micros
		want    int
	}{
		{out: 12 * tenth, want: 2}, {in: 12 * tenth, want: 2}, {out: 8 * tenth, want: 0}, {in: 8 * tenth, want: 0},
	} {
		line := sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "store", 0.5)},
			Buffers:  []sim.Buffer{{Name: "store", From: []string{"A"}, Holds: 5, In: c.in, Out: c.out}},
		}
		rec := compile(t, line).NewEngine().Run(sim.Options{WarmUp: 100 * s, Measure: 600 * s, Attribute: true})
		waits := 0
		for i, st := range rec.Stations {
			for _, b := range st.Because {
				if b.Blocked+b.Starved == 0 {
					continue
				}
				waits++
				if b.Station != c.want || b.Cause != sim.CausePace {
					t.Errorf("in %d, out %d: station %d waits because of %d, cause %d", c.in, c.out, i, b.Station, b.Cause)
				}
			}
		}
		if waits == 0 {
			t.Errorf("in %d, out %d: nobody waits", c.in, c.out)
		}
	}
}

// Rejects are what B waits for also where it waits a little for every piece anyway: A makes one a second and half of them
// are rejected; B, at 0.8 s a cycle, waits 0.2 s for the speed of A, then a second for each reject.
func TestWaitsForRejectsOfASlowerStation(t *testing.T) {
	a := one("A", "", 1)
	a.RejectShare = 0.5
	rec := compile(t, sim.Line{Stations: []sim.Station{a, one("B", "A", 0.8)}}).NewEngine().Run(sim.Options{Measure: 4000 * s, Attribute: true})
	rejects := sim.Micros(0)
	for _, b := range rec.Stations[1].Because {
		if b.Station == 0 && b.Cause == sim.CauseRejects {
			rejects += b.Starved
		}
	}
	// Each reject costs a whole second, from the end of the cycle that gave it on.
	if want := sim.Micros(rec.Stations[0].Rejected) * s; rejects < want-2*s || rejects > want+2*s {
		t.Errorf("%d s because of rejects, by hand %d s", rejects/s, want/s)
	}
}
