package sim_test

import (
	"testing"

	"tuckline/sim"
)

// coupled puts stations one behind the other on one drive.
func coupled(stations ...sim.Station) []sim.Station {
	for i := range stations {
		stations[i].Coupled = "drive"
		if i > 0 {
			stations[i].From = stations[i-1].Name
		}
	}
	return stations
}

// A (2 s) and B (3 s) on one drive: one cycle, the longest, and nothing between them. Each has its own
// stop with its own clock; both are down with either.
func TestCoupledAreOneUnit(t *testing.T) {
	a, b := one("A", "", 2), one("B", "", 3)
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(2), Lasts: sec(4)}}
	b.Stops = []sim.Stop{{Name: "fault", Every: sec(7), Clock: sim.RunningClock, Lasts: sec(1)}}
	line := sim.Line{Stations: coupled(a, b)}
	rec := course{
		line:    line,
		measure: 20 * s,
		want: `
			0  A running, B running                  # cycles of 3 s end at 3 and 6
			6  A down (jam), B down (A jam)          # two cycles; strikes as the third starts
			10 A running, B running
			11 A down (B fault), B down (fault)      # 6 s + 1 s of running
			12 A running, B running                  # the third ends at 14, the fourth at 17
			17 A down (jam), B down (A jam)          # two cycles since the last jam
		`,
		counts: `
			A: cycles 4, taken 5, given 4, passed 4, running 12 s, down 8 s, jam count 2, jam down 7 s, input at last 1
			B: cycles 4, taken 4, given 4, passed 4, running 12 s, down 8 s, fault count 1, fault down 1 s, input at last 0
			line: all running 12 s`,
	}.trail(t)
	if len(rec.Buffers) != 0 {
		t.Errorf("there are places between coupled stations: %+v", rec.Buffers)
	}
}

// The input is that of the first, the output that of the last: 2 in, 3 out, in the longest cycle.
func TestCoupledInputOfTheFirstOutputOfTheLast(t *testing.T) {
	a, b, c := one("A", "", 1), one("B", "", 2), one("C", "", 1)
	a.Takes, a.Gives, b.Takes, b.Gives, c.Takes, c.Gives = 2, 4, 4, 1, 1, 3
	k := one("K", "store", 10)
	k.Takes = 3
	course{
		line: sim.Line{
			Stations: append(coupled(a, b, c), k),
			Buffers:  []sim.Buffer{{Name: "store", From: []string{"C"}, Holds: 6}},
		},
		measure: 9 * s,
		want: `
			0 A running, B running, C running, K starved
			2 K running                                   # three at once, until 12
			4 store 3
			6 store 6
			8 A blocked, B blocked, C blocked             # the next three find no room
		`,
		counts: `
			A: cycles 4, taken 8, given 16, passed 16, holding 0 s, blocked 1 s
			B: taken 16, given 4, passed 4
			C: taken 4, given 12, passed 9, output at last 3, holding 1 s`,
	}.trail(t)
}

// Each member rejects what it rejects: B all, so that C has nothing.
func TestCoupledRejectsOfEachMember(t *testing.T) {
	a, b, c := one("A", "", 1), one("B", "", 1), one("C", "", 1)
	b.RejectShare, c.RejectShare = 1, 1
	course{
		line:    sim.Line{Stations: coupled(a, b, c)},
		measure: 5500 * sim.Micros(1000),
		want:    `0 A running, B running, C running`,
		counts: `
			A: cycles 5, passed 5, rejected 0
			B: taken 5, rejected 5, passed 0
			C: taken 0, given 0, rejected 0, passed 0`,
	}.trail(t)
}

// The rejects of a member come from its own stream: alone or in a unit it rejects the same.
func TestCoupledRejectsFromTheirOwnStreams(t *testing.T) {
	run := func(stations []sim.Station) sim.Record {
		return compile(t, sim.Line{Stations: stations}).NewEngine().Run(sim.Options{Seed: 7, Measure: sim.Hour})
	}
	a, b := one("A", "", 1), one("B", "", 1)
	a.RejectShare, b.RejectShare = 0.2, 0.3
	unit := run(coupled(a, b))
	alone := run([]sim.Station{a})
	if x, y := unit.Stations[0].Rejected, alone.Stations[0].Rejected; x != y || x == 0 {
		t.Errorf("A rejects %d in a unit and %d alone", x, y)
	}
	// B sees only what A has passed: as many pieces of its own stream.
	b.Supply = unit.Stations[0].Passed
	alone = run([]sim.Station{b})
	if x, y := unit.Stations[1].Rejected, alone.Stations[0].Rejected; x != y || x == 0 {
		t.Errorf("B rejects %d in a unit and %d alone", x, y)
	}
}

// Requests of the same time go by the name of the member, not of the unit: A of the unit that
// begins with Z goes before M.
func TestCoupledCrewOrderByMember(t *testing.T) {
	a := needing("A", 2, 1, 1, 5)
	line := fitters(1, append(coupled(one("Z", "", 1), a), needing("M", 2, 1, 1, 5))...)
	course{
		line:    line,
		measure: 5500 * sim.Micros(1000),
		want: `
			0 Z running, A running, M running
			2 Z down (A jam), A down (jam), M waiting for crew (jam)
			3 Z running, A running, M down (jam)
			4 M running
			5 Z down (A jam), A down (jam)          # two more seconds of running
		`,
		counts: `fitters: requests 3, waited 1, wait time 1 s; A: jam count 2; M: jam count 1, jam waiting 1 s`,
	}.trail(t)
}

// A drive stops when any member lacks material; each has its own reel.
func TestCoupledMaterials(t *testing.T) {
	a, b := one("A", "", 1), one("B", "", 1)
	a.Materials = []sim.Material{reel("reel", 300, 2)}
	b.Materials = []sim.Material{reel("reel", 200, 3)}
	course{
		line:    sim.Line{Stations: coupled(a, b)},
		measure: 10 * s,
		want: `
			0 A running, B running
			2 A down (B reel), B down (reel)
			5 A running, B running
			6 A down (reel), B down (A reel)     # three cycles
			8 A running, B running
			9 A down (B reel), B down (reel)     # four cycles
		`,
		counts: `A: reel count 1, reel down 2 s, cycles 4; B: reel count 2, reel down 4 s`,
	}.trail(t)
}

// A place behind a drive is fed by the last of it, and one before it is taken from by the first.
func TestCoupledPlaceNamesTheLast(t *testing.T) {
	stations := coupled(one("A", "", 1), one("B", "", 1))
	stations[0].From = "F"
	m := compile(t, sim.Line{Stations: append(stations, one("F", "", 1), one("K", "B", 1))})
	for _, p := range m.Places() {
		if p.Name == "B to K" && p.From[0] != "B" || p.Name == "F to A" && p.To[0] != "A" {
			t.Errorf("%s is from %v to %v", p.Name, p.From, p.To)
		}
	}
}
