package sim_test

import (
	"testing"

	"tuckline/sim"
)

// What is taken out by hand between two orders is forgotten, what somebody has carried out of a hand magazine too: of the three there
// at the start one lies at hand when the first order ends, since two stay and B needs three.
//
//	1    B has lacked pieces for one cycle: one is carried out until 1.1
//	3    the piece of the first order comes; two are not enough: four are taken out
//	12   B has the pieces that A began at 3, 6 and 9, until 13
//	14   B stops; those of 12, 15 and 18 wait on the way past, those of 21, 24, 27 and 30 are carried in
//	34   B goes on, with the three on the way past, until 35
//	36   that of 33 comes, and B has lacked pieces for one cycle: two are carried out, first those of 21 and 24, until 36.2; B has three
//
// By hand: B gives at 13, 35 and 37.2 what began at 3, 12 and 21: 10, 23 and 16.2 s old.
func TestAgesForgetWhatIsTakenOut(t *testing.T) {
	b := one("B", "store", 1)
	b.Takes = 3
	b.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(14), Lasts: sec(20)}}
	line := storeLine(one("A", "", 3), b, sim.Buffer{
		Kind: sim.HandMagazine, Holds: 10, AtStart: 3, Keeps: 2, TakenOut: true, Hand: sim.Hand{PerPiece: s / 10, Load: 1},
	})
	line.Orders = batches("B", 0, "", 1, 100)
	rec, ages := agesOf(t, line, sim.Options{Measure: 38 * s})
	sameOrders(t, &rec, "1: 0 0 3, 1 in, 0 good", "2: 3 3 never, 12 in, 3 good")
	if r := &rec.Buffers[0]; r.Cleared != 4 || r.Kept != 4 || r.GivenBack != 3 {
		t.Errorf("taken out %d, kept %d, given back %d; by hand 4, 4 and 3", r.Cleared, r.Kept, r.GivenBack)
	}
	if ages.Count != 3 || ages.Sum != 49_200_000 {
		t.Errorf("%d ages that sum to %d µs; by hand 3 and 49.2 s", ages.Count, ages.Sum)
	}
}
