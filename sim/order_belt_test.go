package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The last piece of an order is on a belt that stands most of the time: it is waited for, and moves on with the belt.
func TestOrdersWaitForABeltThatStandsMostOfTheTime(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{one("A", "", 1), one("B", "belt", 1)},
		Buffers: []sim.Buffer{{
			Name: "belt", From: []string{"A"}, Holds: 10, Transit: 5 * s, Conveyor: true,
			Stops: []sim.Stop{{Name: "jam", Every: sec(2.5), Clock: sim.CalendarClock, Lasts: sec(8)}},
		}},
		Orders: batches("B", 0, "", 1),
	}
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: sim.Minute, UntilOrders: true})
	// By hand: the belt moves from 0 to 2.5, 10.5 to 13 and 21 to 23.5; the piece is on it from 1 on and has had 1.5 + 2.5 + 1 s at 22.
	// B works on it until 23.
	sameOrders(t, &rec, "1: 0 0 23, 1 in, 1 good")
	if rec.End != sim.OrdersFinished {
		t.Errorf("ended with %v", rec.End)
	}
}

// The belt is empty and jammed from 3 to 7 when the last piece is finished before it: that piece is waited for, whether its
// station holds it or does not begin before there is room.
func TestOrdersWaitForTheEndOfAJam(t *testing.T) {
	belt := func(from string) sim.Buffer {
		return sim.Buffer{
			Name: "belt", From: []string{from}, Holds: 10, Transit: s, Conveyor: true,
			Stops: []sim.Stop{{Name: "jam", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(4)}},
		}
	}
	before := one("B", "A", 1)
	before.BlocksBefore = true
	for want, line := range map[string]sim.Line{
		// A has it from 3.5 on, it enters at 7, B has it from 8 to 9.
		"1: 0 0 9, 1 in, 1 good": {
			Stations: []sim.Station{one("A", "", 3.5), one("B", "belt", 1)}, Buffers: []sim.Buffer{belt("A")}, Orders: batches("B", 0, "", 1),
		},
		// B begins at 7, it enters at 8, C has it from 9 to 10.
		"1: 0 0 10, 1 in, 1 good": {
			Stations: []sim.Station{one("A", "", 3.5), before, one("C", "belt", 1)}, Buffers: []sim.Buffer{belt("B")}, Orders: batches("C", 0, "", 1),
		},
	} {
		rec := compile(t, line).NewEngine().Run(sim.Options{Measure: sim.Minute})
		sameOrders(t, &rec, want)
	}
}
