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
