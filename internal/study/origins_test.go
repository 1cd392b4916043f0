package study

import (
	"testing"

	"tuckline/sim"
)

// Two shifts of an hour, written by hand: the cartoner starves for 3 min and 1 min because of the
// jam of the web, for 6 min because of its pace, and is blocked once by a stop of the magazine.
func TestOriginsByHand(t *testing.T) {
	s := wholeLine()
	s.Line.Stations[0].Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(900), Lasts: sim.Fixed(6e7)}}
	m, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	records := wholeRecords(m)
	store := len(s.Line.Stations)
	records[0].Stations[1].Because = []sim.Because{
		{Station: 0, Cause: 0, StarvedSpells: 2, Starved: 3 * sim.Minute, Overlap: 30 * sim.Second},
		{Station: store, Cause: sim.CauseStore, BlockedSpells: 1, Blocked: 2 * sim.Minute},
	}
	records[1].Stations[1].Because = []sim.Because{
		{Station: 0, Cause: sim.CausePace, StarvedSpells: 400, Starved: 12 * sim.Minute},
		{Station: 0, Cause: 0, StarvedSpells: 1, Starved: sim.Minute},
	}
	all := viewOf(s, m, records).origins(1)
	if len(all) != 3 {
		t.Fatalf("got %+v", all)
	}
	for i, want := range []struct {
		station, cause                            string
		starved, blocked, spells, blocks, overlap float64
	}{
		{"web", "(pace)", 0.1, 0, 200, 0, 0},
		{"web", "jam", 2.0 / 60, 0, 1.5, 0, 0.25 / 60},
		{"magazine", "(store)", 0, 1.0 / 60, 0, 0.5, 0},
	} {
		got := all[i]
		if got.Station != want.station || got.Cause != want.cause {
			t.Errorf("%d: got %s of %s, want %s of %s", i, got.Cause, got.Station, want.cause, want.station)
		}
		near(t, want.cause+" starved", got.Starved, want.starved)
		near(t, want.cause+" blocked", got.Blocked, want.blocked)
		near(t, want.cause+" overlap", got.Overlap, want.overlap)
		near(t, want.cause+" starved spells", got.StarvedSpellsPerHour, want.spells)
		near(t, want.cause+" blocked spells", got.BlockedSpellsPerHour, want.blocks)
	}
	if none := viewOf(s, m, records).origins(0); none != nil {
		t.Errorf("the records say nothing of the web, and it has %+v", none)
	}
}
