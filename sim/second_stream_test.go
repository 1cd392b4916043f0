package sim_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/sim"
)

// chancy is a station of which all is random.
func chancy(t *testing.T, name string) sim.Station {
	st := one(name, "", 1)
	st.Cycle, st.RejectShare = must(t)(sim.Lognormal(1e6, 0.3)), 0.1
	st.Stops = []sim.Stop{
		{Name: "jam", Every: must(t)(sim.Exponential(20)), Lasts: must(t)(sim.Lognormal(5e6, 1))},
		{Name: "check", Clock: sim.CalendarClock, Every: must(t)(sim.Exponential(60e6)), Lasts: must(t)(sim.Exponential(5e6))},
	}
	st.Materials = []sim.Material{{
		Name: "reel", Amount: 1000, PerCycle: 13, Refill: 1000, PartUsed: true, Lasts: must(t)(sim.Exponential(4e6)),
	}}
	return st
}

func recordOf(t *testing.T, stations ...sim.Station) []sim.StationRecord {
	return compile(t, sim.Line{Stations: stations}).NewEngine().Run(sim.Options{Seed: 3, Replication: 2, Measure: sim.Hour}).Stations
}

// A station that shares the streams of another name draws the same of everything: cycles, stops,
// repairs, rejects, changes and first reels; in the same line too. Without it nothing is the same.
func TestRandomAsSharesAllStreams(t *testing.T) {
	a, b := chancy(t, "A"), chancy(t, "B")
	want := recordOf(t, a)[0]
	own := recordOf(t, b)[0]
	if cmp.Equal(want, own) || want.Rejected == 0 || want.Stops[0].Count == 0 {
		t.Fatalf("two names draw the same, or nothing happens: %+v", want)
	}
	b.RandomAs = "A"
	if d := cmp.Diff(want, recordOf(t, b)[0]); d != "" {
		t.Errorf("alone: %s", d)
	}
	both := recordOf(t, b, a)
	if d := cmp.Diff(both[0], both[1]); d != "" {
		t.Errorf("side by side: %s", d)
	}
}

// On one drive each member has the streams that it names.
func TestRandomAsOfAMember(t *testing.T) {
	a, b, c := chancy(t, "A"), one("B", "", 1), one("C", "", 1)
	c.RandomAs, c.RejectShare, b.RejectShare = "B", 0.3, 0.3
	want := recordOf(t, coupled(a, b)...)
	got := recordOf(t, coupled(a, c)...)
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// The time in which all stations run at once is cut at both edges. The example of the comment on the
// plain engine: A runs 0 to 4, 5 to 7 and 12 to 16, B 2 to 11 and 14 to 16.
func TestAllRunning(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(3), Lasts: sec(4)}}
	m := compile(t, sim.Line{Stations: []sim.Station{a, one("B", "A", 3)}})
	for _, c := range []struct{ from, to, want sim.Micros }{
		{0, 16, 6}, // 2 to 4, 5 to 7, 14 to 16
		{3, 16, 5},
		{3, 6, 2},
		{8, 14, 0},
		{15, 16, 1},
	} {
		rec := m.NewEngine().Run(sim.Options{WarmUp: c.from * s, Measure: (c.to - c.from) * s})
		if rec.AllRunning != c.want*s {
			t.Errorf("from %d to %d all run for %d µs, not %d s", c.from, c.to, rec.AllRunning, c.want)
		}
	}
}
