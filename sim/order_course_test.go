package sim_test

import (
	"fmt"
	"slices"
	"testing"

	"tuckline/sim"
)

// batches are orders by batch, with a changeover of so many seconds before each but the first.
func batches(after string, changeover float64, crew string, units ...int64) sim.Orders {
	o := sim.Orders{CountedAfter: []string{after}}
	for _, n := range units {
		order := sim.Order{Batch: n}
		if changeover > 0 {
			order.Before = sim.SetUp{Name: "format", Lasts: sec(changeover), Crew: sim.Work{Crew: crew}}
		}
		o.List = append(o.List, order)
	}
	return o
}

// sameOrders compares the orders of a record: order, when it was changed to, begun and finished, its input and good pieces.
func sameOrders(t *testing.T, rec *sim.Record, want ...string) {
	t.Helper()
	var got []string
	for _, o := range rec.Orders {
		times := ""
		for _, at := range []sim.Micros{o.Changed, o.Began, o.Finished} {
			if at == 1<<63-1 {
				times += " never"
			} else {
				times += " " + seconds(at)
			}
		}
		got = append(got, fmt.Sprintf("%d:%s, %d in, %d good", o.Order+1, times, o.Input, o.Good))
	}
	if !slices.Equal(got, want) {
		t.Errorf("the orders are\n%q, by hand\n%q", got, want)
	}
}

// Two batches with a changeover by the only fitter, who is at a check of A when the line has become empty.
func TestOrdersWithAChangeoverByACrew(t *testing.T) {
	a, b := one("A", "", 1), one("B", "A", 2)
	a.Stops = []sim.Stop{{
		Name: "check", Clock: sim.CalendarClock, Every: sec(6), Lasts: sec(3), Crew: sim.Work{Crew: "fitters"},
	}}
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{a, b}, Crews: []sim.Crew{{Name: "fitters", People: 1}},
			Orders: batches("B", 4, "fitters", 3, 2),
		},
		measure: 20 * s,
		want: `
			0  A running, B starved
			1  B running                    # until 3, 5, 7
			2  A blocked                    # B is at work until 3
			3  A running                    # takes the third and last unit
			4  A blocked
			5  A starved
			6  A down (check)               # the fitter until 9
			7  A changeover, B changeover   # empty: the changeover waits for him, then lasts from 9 to 13
			13 A running, B starved
			14 B running                    # until 16, 18
			15 A down (check)               # 9 + 6; its second piece leaves at 16
			18 A starved, B starved         # nothing is to be made any more
		`,
		counts: `
			A: cycles 5, taken 5, check count 2, check down 6 s, changeover 6 s; B: passed 5, changeover 6 s
			fitters: busy 10 s, requests 3, waited 1, wait time 2 s
		`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 7, 3 in, 3 good", "2: 7 13 18, 2 in, 2 good")
}

// B waits for 3 in the buffer. Its last piece comes when no more can: the level lapses, and holds again for the next order.
func TestOrdersRunOutBelowAStartLevel(t *testing.T) {
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "buffer", 0.4)},
			Buffers:  []sim.Buffer{{Name: "buffer", From: []string{"A"}, Holds: 10, Start: sim.Level{On: true, Level: 3}}},
			Orders:   batches("B", 0, "", 5, 3),
		},
		measure: 10 * s,
		want: `
			0   A running, B starved
			1   buffer 1
			2   buffer 2
			3   B running             # at 3 it is 3; B takes one
			3.4 buffer 1
			3.8 buffer 0
			4   buffer 1
			4.2 buffer 0
			4.6 B starved
			5   A starved, B running  # the fifth, the last: no 3 can come
			5.4 A running, B starved  # the next order
			6.4 buffer 1
			7.4 buffer 2
			8.4 A starved, B running
			8.8 buffer 1
			9.2 buffer 0
			9.6 B starved
		`,
		counts: `B: passed 8; A: starved 2 s  # 5 to 5.4 and 8.4 to 10`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 5.4, 5 in, 5 good", "2: 5.4 5.4 9.6, 3 in, 3 good")
}

// The same where what waits is taken out by hand: after the fourth piece B waits for ever.
func TestOrdersTakeOutWhatWaitsForAStartLevel(t *testing.T) {
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "buffer", 0.4)},
			Buffers: []sim.Buffer{{
				Name: "buffer", From: []string{"A"}, Holds: 10, Start: sim.Level{On: true, Level: 3}, TakenOut: true,
			}},
			Orders: batches("B", 0, "", 5, 3),
		},
		measure: 6_500_000,
		want: `
			0   A running, B starved
			1   buffer 1
			2   buffer 2
			3   B running
			3.4 buffer 1
			3.8 buffer 0
			4   buffer 1
			4.2 buffer 0
			4.6 B starved
			6   buffer 1              # at 5 the fifth was taken out, and the next order began
		`,
		counts: `B: passed 4; A: starved 0; buffer: cleared 1`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 5, 5 in, 4 good", "2: 5 5 never, 2 in, 0 good")
}

// Seven pieces make two bundles of three and one of one, which is closed when nothing else moves; with it the packer
// closes a case of one bundle.
func TestOrdersCloseAPartBundleAndAPartCase(t *testing.T) {
	bundler, packer := one("bundler", "A", 1), one("packer", "bundler", 1)
	bundler.Takes, bundler.LastPart = 3, sim.PartClosed
	packer.Takes, packer.LastPart = 2, sim.PartClosed
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), bundler, packer}, Orders: batches("packer", 0, "", 7),
		},
		measure: 12 * s,
		want: `
			0  A running, bundler starved, packer starved
			1  A to bundler 1
			2  A to bundler 2
			3  bundler running, A to bundler 0
			4  bundler starved, A to bundler 1, bundler to packer 1
			5  A to bundler 2
			6  bundler running, A to bundler 0
			7  A starved, bundler starved, packer running, A to bundler 1, bundler to packer 0
			8  bundler running, packer starved, A to bundler 0   # with one of three
			9  bundler starved, packer running                   # with one of two
			10 packer starved
		`,
		counts: `
			bundler: cycles 3, taken 7, given 3, part cycles 1, part short 2
			packer: cycles 2, taken 3, passed 2, part cycles 1, part short 1
		`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 10, 7 in, 2 good")
}

// Four cycles of two blisters make one carton of five; the three that are left are rejected when the cartoner is done.
func TestOrdersRejectAPartStack(t *testing.T) {
	a, cartoner := one("A", "", 1), one("cartoner", "A", 2)
	a.Gives, a.BatchPerCycle = 2, 10
	cartoner.Takes = 5
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{a, cartoner}, Orders: batches("cartoner", 0, "", 45, 30), // 45: half a cycle is left over
		},
		measure: 11 * s,
		want: `
			0  A running, cartoner starved
			1  A to cartoner 2
			2  A to cartoner 4
			3  cartoner running, A to cartoner 1
			4  A starved, A to cartoner 3
			5  A running, cartoner starved, A to cartoner 0   # three rejected: the line is empty
			6  A to cartoner 2
			7  A to cartoner 4
			8  A starved, cartoner running, A to cartoner 1
			10 cartoner starved, A to cartoner 0
		`,
		counts: `cartoner: taken 10, passed 2, part rejected 4, rejected 0; A to cartoner: in 14, out 14, cleared 0`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 5, 40 in, 1 good", "2: 5 5 10, 30 in, 1 good")
}

// Two machines share a batch of 5: A takes at 0, 1 and 2, B at 0 and 1.5.
func TestOrdersShareABatchBetweenTwoSources(t *testing.T) {
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "", 1.5), one("C", "buffer", 0.5)},
			Buffers:  []sim.Buffer{{Name: "buffer", From: []string{"A", "B"}, Holds: 10}},
			Orders:   batches("C", 0, "", 5),
		},
		measure: 5 * s,
		want: `
			0   A running, B running, C starved
			1   C running
			2.5 C starved
			3   A starved, B starved, C running, buffer 1
			3.5 buffer 0
			4   C starved
		`,
		counts: `A: taken 3; B: taken 2; C: passed 5`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 4, 5 in, 5 good")
}

// sharedList is two lines with one list and one crew.
func sharedList() sim.Line {
	line := sim.Line{
		Stations: []sim.Station{one("P", "", 1), one("Q", "", 1)}, Crews: []sim.Crew{{Name: "fitters", People: 1}},
		Orders: batches("P", 2, "fitters", 3, 4, 2, 2),
	}
	line.Orders.CountedAfter = append(line.Orders.CountedAfter, "Q")
	return line
}

const sharedListByHand = `
	0 P running, Q running        # P takes the first order, Q the second
	3 P changeover                # until 5, for the third
	4 Q changeover                # waits until 5, for the fourth; until 7
	5 P running
	7 P starved, Q running        # no order is left for P
`

func TestOrdersOfTwoLinesWithOneListAndOneCrew(t *testing.T) {
	rec := course{
		line: sharedList(), measure: 12 * s, want: sharedListByHand + "9 Q starved",
		counts: `P: cycles 5, changeover 2 s; Q: cycles 6, changeover 3 s; fitters: requests 2, waited 1, wait time 1 s`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 3, 3 in, 3 good", "2: 0 0 4, 4 in, 4 good", "3: 3 5 7, 2 in, 2 good", "4: 4 7 9, 2 in, 2 good")
}

// The run ends with the last order: the piece that leaves then is counted.
func TestOrdersCutTheWindow(t *testing.T) {
	line := sharedList()
	m := compile(t, line)
	for _, warmUp := range []sim.Micros{0, 6 * s} {
		var trace sim.Trace
		o := sim.Options{Seed: 1, WarmUp: warmUp, Measure: 100 * s, Trace: &trace, UntilOrders: true}
		rec := m.NewEngine().Run(o)
		if rec.End != sim.OrdersFinished || rec.EndedAt != 9*s || rec.Window != 9*s-warmUp {
			t.Errorf("ended with %v at %d, window %d; by hand the orders are finished at 9 s", rec.End, rec.EndedAt, rec.Window)
		}
		if warmUp == 0 {
			compareCounts(t, figures(m, line, &rec), `P: passed 5, starved 2 s; Q: passed 6, running 6 s`)
		} else {
			compareCounts(t, figures(m, line, &rec), `P: passed 2, starved 2 s; Q: passed 2, changeover 1 s` /* P: at 6 and 7 */)
		}
		for _, fault := range faults(line, m, o, &rec, &trace) {
			t.Error(fault)
		}
	}
}

// Two cartons of two: the feed stops after four pieces, and opens again when a jam has cost two of them.
func TestOrdersByGoodPiecesMakeUpForLosses(t *testing.T) {
	b := one("B", "buffer", 3)
	b.Takes = 2
	b.Stops = []sim.Stop{{Name: "jam", Clock: sim.RunningClock, Every: sec(4), Lasts: sec(1), Scraps: true}}
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), b},
			Buffers:  []sim.Buffer{{Name: "buffer", From: []string{"A"}, Holds: 10}},
			Orders:   sim.Orders{List: []sim.Order{{Good: 2}}, CountedAfter: []string{"B"}},
		},
		measure: 13 * s,
		want: `
			0  A running, B starved
			1  buffer 1
			2  B running, buffer 0                      # until 5
			3  buffer 1
			4  A starved, buffer 2                      # four pieces are two cartons
			5  buffer 0
			6  A running, B down (jam)                  # 3 + 1 s of running: the cycle is lost
			7  B starved, buffer 1
			8  A starved, B running, buffer 0           # until 11; the next jam would be at 12
			11 B starved
		`,
		counts: `A: taken 6; B: passed 2, lost 2`,
	}.follow(t)
	sameOrders(t, &rec, "1: 0 0 11, 6 in, 2 good")
}
