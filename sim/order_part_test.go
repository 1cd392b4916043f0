package sim_test

import (
	"testing"

	"tuckline/sim"
)

// Five pieces go in turn to the packer, which makes a case of two, and to the liner, which takes three for a lid. The packer is
// to close a case of one, but has no room for it, since the first case waits for a lid that will not come: the order is over.
func TestOrdersEndWhereAPartHasNoRoom(t *testing.T) {
	a, packer, liner, wrapper := one("A", "", 1), one("packer", "blisters", 1), one("liner", "blanks", 1), one("wrapper", "cases", 1)
	a.Sends = sim.Sends{To: []string{"blisters", "blanks"}}
	packer.Takes, packer.LastPart, packer.BlocksBefore = 2, sim.PartClosed, true
	liner.Takes = 3
	wrapper.Also = []sim.Input{{From: "lids", Takes: 1}}
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{a, packer, liner, wrapper},
			Buffers: []sim.Buffer{
				{Name: "blisters", From: []string{"A"}, Holds: 5},
				{Name: "blanks", From: []string{"A"}, Holds: 5},
				{Name: "cases", From: []string{"packer"}, Holds: 1},
				{Name: "lids", From: []string{"liner"}, Holds: 1},
			},
			Orders: batches("wrapper", 0, "", 5),
		},
		measure: 8 * s,
		want: `
			0  A running, packer starved, liner starved, wrapper starved
			1  blisters 1
			2  blanks 1
			3  packer running, blisters 0
			4  packer starved, blanks 2, cases 1
			5  A starved, blanks 0, cases 0  # the fifth is taken out with the case, the two blanks are rejected
		`,
		counts: `packer: cycles 1, taken 2, part cycles 0; liner: part rejected 2; blisters: cleared 1; cases: cleared 1`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 5, 5 in, 0 good")
}

// A hand magazine is emptied with what lies at hand of it: in the second order nothing does. From 1 to 2.5 three are carried
// out, since B lacks some from the beginning. There is one place before B, so that A's second piece goes straight through.
func TestOrdersClearWhatLiesAtHand(t *testing.T) {
	b := one("B", "main", 1)
	b.Takes, b.Also = 2, []sim.Input{{From: "magazine", Takes: 2}}
	magazine := handMagazine()
	magazine.Name, magazine.From, magazine.AtStart = "magazine", []string{"M"}, 3
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 4), one("M", "", 5), b},
			Buffers:  []sim.Buffer{magazine, {Name: "main", From: []string{"A"}, Holds: 1}}, Orders: batches("B", 0, "", 2, 2),
		},
		measure: 26 * s,
		want: `
			0  A running, M running, B starved, magazine 3
			4  main 1
			5  magazine 4
			8  A starved, B running, magazine 2, main 0  # one came straight, two are left at hand
			9  B starved
			10 A running, magazine 0                     # with what M gives now
			14 main 1
			15 magazine 1
			18 A blocked                                 # B lacks a second of M
			20 A starved, B running, magazine 0, main 0
			21 B starved
			25 M starved                                 # its piece is taken out at once
		`,
		counts: `B: cycles 2; magazine: in 5, out 4, cleared 4`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 10, 2 in, 1 good", "2: 10 10 25, 2 in, 1 good")
}

// The fourth piece is a part of three: its cycle begins at 4 and is lost at 4.5, after 1.5 s of running.
func TestOrdersRecordAPartThatIsLost(t *testing.T) {
	bundler := one("bundler", "A", 1)
	bundler.Takes, bundler.LastPart = 3, sim.PartClosed
	bundler.Stops = []sim.Stop{{Name: "jam", Every: sec(1.5), Clock: sim.RunningClock, Lasts: sec(1), Scraps: true}}
	line := sim.Line{Stations: []sim.Station{one("A", "", 1), bundler}, Orders: batches("bundler", 0, "", 4)}
	e := compile(t, line).NewEngine()
	underWay := e.Run(sim.Options{Measure: 4_250_000})
	if r := &underWay.Stations[1]; r.Taken != 4 || r.PartShort != 2 || r.InputInside[1] != 1 || r.PartInside[1] != 2 || r.PartLost != 0 {
		t.Errorf("under way: %+v", r)
	}
	rec := e.Run(sim.Options{WarmUp: 4_250_000, Measure: 5 * s})
	if r := &rec.Stations[1]; r.Taken+r.PartShort+r.PartCycles != 0 || r.PartInside != [2]int64{2, 0} || r.Lost != 1 || r.PartLost != 2 {
		t.Errorf("lost: %+v", r)
	}
	sameOrders(t, &rec, "1: 0 0 4.5, 4 in, 1 good")
}
