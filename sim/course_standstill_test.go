package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The example again, with scrap after a standstill of more than 4.5 s. A works until 7,
// is blocked until 8 and down until 12, with no work done between: one pause of 5 s.
func TestStandstillOfBlockedAndThenDownIsOne(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(3), Lasts: sec(4)}}
	a.AfterStandstill = []sim.ScrapRule{{LongerThan: 4_500_000, Cycles: 1}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 3)}},
		measure: 16 * s,
		want: `
			0  A running, B starved
			2  B running
			4  A blocked
			5  A running
			7  A blocked
			8  A down (jam)
			11 B starved
			12 A running        # after 5 s of standstill; this cycle, until 14, is scrapped
		`,
		counts: `A: cycles 4, scrapped cycles 1, passed 3; B: cycles 3`,
	}.follow(t)
}

// A stop ends at the instant at which a stop of the calendar begins: no work is done
// between them, so that it is one standstill of 8 s.
func TestStandstillOfTwoStopsInARowIsOne(t *testing.T) {
	a := one("A", "", 10)
	a.Stops = []sim.Stop{
		{Name: "jam", Every: sec(2), Clock: sim.RunningClock, Lasts: sec(5)},
		{Name: "check", Every: sec(7), Clock: sim.CalendarClock, Lasts: sec(3)},
	}
	a.AfterStandstill = []sim.ScrapRule{{LongerThan: 6 * s, Cycles: 1}}
	course{
		line:    sim.Line{Stations: []sim.Station{a}},
		measure: 11 * s,
		want: `
			0  A running
			2  A down (jam)     # 2 s of running
			7  A down (check)   # the jam took 5 s, the check comes at 7
			10 A running        # the check took 3 s; 8 s are less than its cycle, so that it is no restart
		`,
		counts: `A: running 3 s, down 8 s, restarts 0, jam down 5 s, check down 3 s`,
	}.follow(t)
}

// A stop strikes the first cycle of a new station before any work: 5 millionths of 0.1 s are
// less than 1 µs. There is no work before it, so that nothing is a pause between work and work. The
// next comes after 10 millionths, 1 µs of work.
func TestNewStationHasNoStandstill(t *testing.T) {
	line := alone(0.1, sim.Stop{Name: "jam", Every: sim.Fixed(5e-6), Lasts: sec(10)})
	line.Stations[0].AfterStandstill = []sim.ScrapRule{{LongerThan: 10 * s, Cycles: 1}}
	course{
		line:    line,
		measure: 15 * s,
		want: `
			0         A down (jam)
			10        A running
			10.000001 A down (jam)
		`,
		counts: `A: restarts 0, jam count 2, running 0.000001 s`,
	}.follow(t)
}
