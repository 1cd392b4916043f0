package sim_test

import (
	"testing"

	"tuckline/sim"
)

// Only good pieces need room: if A is blocked, those that it holds do not fit.
func TestOnlyGoodPiecesNeedRoom(t *testing.T) {
	a := one("A", "", 1)
	a.Gives, a.RejectShare = 4, 0.4
	e := compile(t, withBuffer(a, one("B", "", 0.9), sim.Buffer{Name: "buffer", Holds: 5})).NewEngine()
	blocked := 0
	for r := range 300 {
		rec := e.Run(sim.Options{Seed: 2, Replication: r, Measure: 100*s + 50})
		held, level := rec.Stations[0].OutputInside[1], rec.Buffers[0].Level[1]
		if held == 0 {
			continue
		}
		if blocked++; held+level <= 5 {
			t.Errorf("replication %d: A holds %d good pieces beside %d of 5 places taken", r, held, level)
		}
	}
	if blocked < 50 {
		t.Errorf("A was blocked in %d replications only", blocked)
	}
}

// The restart level counts the belt before the store: at 12 the belt has room, but 4 are there.
func TestRestartLevelCountsTheBeltBeforeTheStore(t *testing.T) {
	course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("K", "store", 5)},
			Buffers: []sim.Buffer{
				{Name: "belt", From: []string{"A"}, Holds: 3, Transit: s, Conveyor: true},
				{Name: "store", From: []string{"belt"}, Holds: 2, Restart: sim.Level{On: true, Level: 3}},
			},
		},
		measure: 20 * s,
		want: `
			0  A running, K starved
			1  belt 1
			2  K running              # takes the first, until 7; A's second is on the belt
			3  store 1
			4  store 2
			5  belt 2                 # the store is full
			6  belt 3
			8  A blocked              # at 7 K took one, and A's seventh found the last place
			12 belt 2                 # K takes: 2 + 2 are more than 3
			17 A running              # 1 + 2; A puts its eighth
			18 belt 3
			19 A blocked
		`,
	}.trail(t)
}

// Two stops one right behind the other are one standstill: 5 s and 3 s are longer than 6 s.
func TestStopsInARowAreOneStandstill(t *testing.T) {
	line := alone(1,
		sim.Stop{Name: "jam", Every: sim.Fixed(2.5), Lasts: sec(5)},
		sim.Stop{Name: "check", Every: sec(7.5), Clock: sim.CalendarClock, Lasts: sec(3)})
	line.Stations[0].AfterStandstill = []sim.ScrapRule{{LongerThan: 6 * s, Cycles: 2}}
	course{
		line:    line,
		measure: 13500 * sim.Micros(1000),
		want: `
			0    A running
			2.5  A down (jam)
			7.5  A down (check)
			10.5 A running       # until 11 and 12 scrapped
			13   A down (jam)
		`,
		counts: `A: cycles 5, scrapped cycles 2, restarts 1`,
	}.trail(t)
}

// Of belts that run into one store the one that has waited longest goes first.
func TestBeltsGoByWaiting(t *testing.T) {
	a, b := one("A", "", 1), one("B", "", 1.5)
	a.Supply, b.Supply = 4, 3
	course{
		line: sim.Line{
			Stations: []sim.Station{a, b, one("K", "store", 4)},
			Buffers: []sim.Buffer{
				{Name: "a", From: []string{"A"}, Holds: 5, Transit: s, Conveyor: true},
				{Name: "b", From: []string{"B"}, Holds: 5, Transit: s, Conveyor: true},
				{Name: "store", From: []string{"a", "b"}, Holds: 1},
			},
		},
		measure: 20 * s,
		want: `
			0   A running, B running, K starved
			1   a 1
			1.5 b 1
			2   K running               # a's first, until 6
			2.5 b 0, store 1
			3   a 2, b 1                # a's second waits from now on
			4   A starved, a 3          # b's second waits from now on
			4.5 B starved, b 2
			6   a 2                     # a since 3, b since 4
			10  b 1                     # b since 4, a's third since 6
			14  a 1                     # a since 6, b's third since 10
			18  b 0
		`,
	}.trail(t)
}
