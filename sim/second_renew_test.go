package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A jam after 3.5 cycles renews the cleaning that is due after 5: it never comes.
func TestStopRenewsAClock(t *testing.T) {
	clean := sim.Stop{Name: "clean", Every: sim.Fixed(5), Lasts: sec(2)}
	jam := sim.Stop{Name: "jam", Every: sim.Fixed(3.5), Lasts: sec(1), Renews: []string{"clean"}}
	course{
		line:    alone(1, clean, jam),
		measure: 13 * s,
		want: `
			0    A running
			3.5  A down (jam)
			4.5  A running
			8    A down (jam)    # seven cycles
			9    A running
			12.5 A down (jam)
		`,
		counts: `A: clean count 0, jam count 3`,
	}.trail(t)
}

// The cleaning after 2 cycles and the jam after 3, which renews it; the cleaning renews nothing.
func TestStopRenewsOnlyWhatItNames(t *testing.T) {
	clean := sim.Stop{Name: "clean", Every: sim.Fixed(2), Lasts: sec(1)}
	jam := sim.Stop{Name: "jam", Every: sim.Fixed(3), Lasts: sec(1), Renews: []string{"clean"}}
	course{
		line:    alone(1, clean, jam),
		measure: 12500 * sim.Micros(1000),
		want: `
			0  A running
			2  A down (clean)    # two cycles
			3  A running
			4  A down (jam)      # three cycles; the cleaning is due after five now
			5  A running
			7  A down (clean)    # five cycles
			8  A running
			9  A down (jam)      # six
			10 A running
			12 A down (clean)    # eight
		`,
	}.trail(t)
}

// A running clock that is renewed in the midst of a cycle counts from there. The cleaning comes after
// 8.25 s of running, then the jam 0.25 s of running later renews it.
func TestStopRenewsARunningClockWithinACycle(t *testing.T) {
	clean := sim.Stop{Name: "clean", Every: sec(8.25), Clock: sim.RunningClock, Lasts: sec(2)}
	jam := sim.Stop{Name: "jam", Every: sim.Fixed(4.25), Lasts: sec(1), Renews: []string{"clean"}}
	course{
		line:    alone(2, clean, jam),
		measure: 23 * s,
		want: `
			0     A running
			8.25  A down (clean)   # 8.25 s of running
			10.25 A running
			10.5  A down (jam)     # 4.25 cycles of 2 s are 8.5 s; the cleaning is due after 16.75 s now
			11.5  A running        # ... and so is not yet after 16.5 s
			19.75 A down (clean)   # 11.5 + 8.25
			21.75 A running
			22    A down (jam)     # 8.5 cycles are 17 s
		`,
	}.trail(t)
}

// A stop renews a clock of the calendar when it is over: K works the seven pieces that are there, the
// jam lasts from 6.5 to 9.5, and the check comes 12 s after that.
func TestStopRenewsACalendarClockWhenItIsOver(t *testing.T) {
	k := one("K", "store", 1)
	k.Stops = []sim.Stop{
		{Name: "check", Every: sec(12), Clock: sim.CalendarClock, Lasts: sec(1)},
		{Name: "jam", Every: sim.Fixed(6.5), Lasts: sec(3), Renews: []string{"check"}},
	}
	course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 100), k},
			Buffers:  []sim.Buffer{{Name: "store", From: []string{"A"}, Holds: 9, AtStart: 7}},
		},
		measure: 25 * s,
		want: `
			0    A running, K running, store 6
			1    store 5
			2    store 4
			3    store 3
			4    store 2
			5    store 1
			6    store 0
			6.5  K down (jam)
			9.5  K running
			10   K starved
			21.5 K down (check)     # 9.5 + 12
			22.5 K starved
		`,
	}.trail(t)
}

// A stop of the calendar renews a clock of cycles: the cleaning of 5 cycles counts from the check.
func TestCalendarStopRenews(t *testing.T) {
	check := sim.Stop{Name: "check", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(1), Renews: []string{"clean"}}
	clean := sim.Stop{Name: "clean", Every: sim.Fixed(5), Lasts: sec(2)}
	course{
		line:    alone(1, check, clean),
		measure: 12 * s,
		want: `
			0  A running
			3  A down (check)
			4  A running
			7  A down (check)
			8  A running
			11 A down (check)
		`,
		counts: `A: clean count 0, cycles 9`,
	}.trail(t)
}

// A check that is due at the very instant at which the cleaning that renews it ends does not begin:
// ends come before beginnings.
func TestRenewedCalendarStopDoesNotBegin(t *testing.T) {
	check := sim.Stop{Name: "check", Every: sec(5), Clock: sim.CalendarClock, Lasts: sec(1)}
	clean := sim.Stop{Name: "clean", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(2), Renews: []string{"check"}}
	course{
		line:    alone(1, check, clean),
		measure: 14 * s,
		want: `
			0  A running
			3  A down (clean)    # until 5: the check is due after 10 now
			5  A running
			8  A down (clean)
			10 A running
			13 A down (clean)
		`,
		counts: `A: check count 0, clean count 3, clean down 5 s, cycles 9`,
	}.trail(t)
}
