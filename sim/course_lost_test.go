package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A stop that scraps ends the cycle that it strikes: it is not counted, its input is lost, the
// next cycle takes new input after the stop.
func TestStopThatScraps(t *testing.T) {
	jam := sim.Stop{Name: "jam", Every: sec(6), Clock: sim.RunningClock, Lasts: sec(2), Scraps: true}
	want := `
		0  A running, B starved
		4  B running
		5  B starved
		6  A down (jam)        # half of the second cycle
		8  A running           # the third, until 12
		12 B running
		13 B starved
		14 A down (jam)        # 6 s of running, or 6 s by the calendar, after 8
		16 A running
	`
	counts := `A: cycles 2, taken 5, passed 2, input at last 1, scrapped cycles 0; B: cycles 2`
	a := one("A", "", 4)
	for _, clock := range []sim.Clock{sim.RunningClock, sim.CalendarClock} {
		jam.Clock = clock
		a.Stops = []sim.Stop{jam}
		line := sim.Line{Stations: []sim.Station{a, one("B", "A", 1)}}
		rec := course{line: line, measure: 18 * s, want: want, counts: counts}.follow(t)
		if rec.Stations[0].Lost != 2 {
			t.Errorf("%d pieces lost, by hand 2", rec.Stations[0].Lost)
		}
	}
}

// A check that ends at 6 starts the clock of the cleaning anew, which would begin at that
// instant: ends come before beginnings, whatever the names.
func TestRenewedAtTheInstantOfItsBeginning(t *testing.T) {
	for _, names := range [][2]string{{"check", "z cleaning"}, {"check", "a cleaning"}} {
		a := one("A", "", 100)
		a.Stops = []sim.Stop{
			{Name: names[0], Every: sec(4), Clock: sim.CalendarClock, Lasts: sec(2), Renews: []string{names[1]}},
			{Name: names[1], Every: sec(6), Clock: sim.CalendarClock, Lasts: sec(3), Crew: sim.Work{Crew: "cleaners"}},
		}
		course{
			line:    sim.Line{Stations: []sim.Station{a}, Crews: []sim.Crew{{Name: "cleaners", People: 1}}},
			measure: 17 * s,
			want: `
				0  A running
				4  A down (check)
				6  A running
				10 A down (check)   # 6 + 4; the cleaning is due at 6 + 6 = 12, at its end
				12 A running
				16 A down (check)
			`,
			counts: `cleaners: requests 0`,
		}.follow(t)
	}
}
