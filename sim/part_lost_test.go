package sim_test

import (
	"testing"

	"tuckline/sim"
)

// packing is one station of 1 s that loses so many packs at every stop.
func packing(packs int64, stops ...sim.Stop) sim.Line {
	line := alone(1, stops...)
	line.Stations[0].LostPerStop = packs
	return line
}

// After each stop the next three pieces are rejected, then all are good again.
func TestPacksLostPerStop(t *testing.T) {
	course{
		line:    packing(3, jam(5, 2)),
		measure: 16 * s,
		want: `
			0  A running
			5  A down (jam)   # five cycles
			7  A running      # 8, 9, 10 lost; 11, 12
			12 A down (jam)
			14 A running      # 15 lost; 16 is outside
		`,
		counts: `A: cycles 11, rejected 4, lost packs 4, passed 7`,
	}.follow(t)
}

// A cycle that is struck is the first of those that come; a cycle of four loses its first three. A stop while
// some are still to come makes it three again.
func TestPacksLostOfTheCycleUnderWay(t *testing.T) {
	line := packing(3, jam(2.5, 2))
	line.Stations[0].Gives = 4
	course{
		line:    line,
		measure: 8 * s,
		want: `
			0   A running
			2.5 A down (jam)
			4.5 A running     # the third cycle ends at 5, three of four lost; 6, 7
			7   A down (jam)
		`,
		counts: `A: cycles 5, given 20, rejected 3, lost packs 3`,
	}.follow(t)
	line = packing(3, jam(2, 2))
	course{
		line:    line,
		measure: 13 * s,
		want: `
			0  A running
			2  A down (jam)
			4  A running     # 5, 6 lost
			6  A down (jam)
			8  A running     # 9, 10 lost
			10 A down (jam)
			12 A running
		`,
		counts: `A: cycles 6, lost packs 4, passed 2`,
	}.follow(t)
}

// Blocked for 3 s, longer than a cycle, loses two; blocked for 1 s does not.
func TestPacksLostWhenBlocked(t *testing.T) {
	a, b := one("A", "", 1), one("B", "A", 4)
	a.LostPerStop = 2
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 16_500_000,
		want: `
			0  A running, B starved
			1  B running      # until 5, 9, 13, 17
			2  A blocked
			5  A running      # 3 s: the cycles until 6 and 7 are lost, that until 8 is good
			8  A blocked
			9  A running      # 1 s: good
			10 A blocked
			13 A running      # 3 s: 14 and 15 are lost
			16 A blocked
		`,
		counts: `A: cycles 9, rejected 4, lost packs 4, passed 4, output at last 1`,
	}.follow(t)
}

// A stop of its group counts; what leaves in the cycle that is then finished has kept its place. A starved station
// loses nothing: its packs have run out.
func TestPacksLostAtAStopOfTheGroup(t *testing.T) {
	a, b := one("A", "", 1), one("B", "A", 1)
	a.Stops = []sim.Stop{jam(3.5, 2)}
	b.StopsWith, b.LostPerStop = "A", 1
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 7_500_000,
		want: `
			0   A running, B starved
			1   B running
			3.5 A down (jam)           # B finishes its third cycle
			4   B down (A jam)
			5.5 A running, B starved
			6   B running              # until 7: lost
		`,
		counts: `B: rejected 1, lost packs 1, passed 3`,
	}.follow(t)
	b.StopsWith, b.LostPerStop = "", 0
	a.LostPerStop = 0
	c := one("C", "B", 1)
	c.StopsWith, c.LostPerStop = "A", 5
	b.Cycle = sec(4.5)
	course{
		line:    sim.Line{Stations: []sim.Station{{Name: "A", Takes: 1, Gives: 1, Cycle: sec(10), Stops: []sim.Stop{jam(0.7, 1)}}, b, c}},
		measure: 17_500_000,
		want: `
			0  A running, B starved, C starved
			7  A down (jam), C down (A jam)    # C has had nothing yet
			8  A running, C starved
			11 B running
			15 A down (jam), C down (A jam)    # 3 s of the first cycle, 4 s of the second
			15.5 B blocked                     # C takes nothing while it is stopped
			16 A running, B starved, C running # it was starved when the stop began: nothing is lost
			17 C starved
		`,
		counts: `C: cycles 1, lost packs 0, passed 1`,
	}.follow(t)
}

// Glue that has to be hot first stops nothing that has been printed, and scraps nothing.
func TestPacksNotLostAtHeatUp(t *testing.T) {
	line := packing(3)
	line.Stations[0].HeatUp, line.Stations[0].AfterStop = 5*s, []sim.ScrapRule{{Cycles: 1}}
	course{
		line:    line,
		measure: 8_500_000,
		want: `
			0 A planned stop (heat-up)
			5 A running
		`,
		counts: `A: cycles 3, scrapped cycles 0, lost packs 0`,
	}.follow(t)
}

// Packs wait for pieces given: a scrapped cycle gives none.
func TestPacksLostBehindScrap(t *testing.T) {
	line := packing(2, jam(3, 2))
	line.Stations[0].AfterStop = []sim.ScrapRule{{Cycles: 1}}
	course{
		line:    line,
		measure: 8_500_000,
		want: `
			0 A running
			3 A down (jam)
			5 A running      # 6 scrap, 7 and 8 lost
			8 A down (jam)
		`,
		counts: `A: cycles 6, scrapped cycles 1, lost packs 2, rejected 2, passed 3`,
	}.follow(t)
}

// Five and six cycles: the second stop comes when one of three has been rejected; three are rejected after
// it, not five.
func TestPacksLostAreTheSamePacks(t *testing.T) {
	second := jam(6, 1)
	second.Name = "second"
	course{
		line:    packing(3, jam(5, 1), second),
		measure: 12_500_000,
		want: `
			0  A running
			5  A down (jam)
			6  A running       # 7 lost
			7  A down (second)
			8  A running       # 9, 10, 11 lost; 12 good
			12 A down (jam)
		`,
		counts: `A: cycles 10, lost packs 4, passed 6`,
	}.follow(t)
}

// A stop that begins while the station is blocked counts, however short it was blocked.
func TestPacksLostAtAStopWhileBlocked(t *testing.T) {
	a := one("A", "", 1)
	a.LostPerStop = 1
	a.Stops = []sim.Stop{{Name: "look", Clock: sim.CalendarClock, Every: sec(2.2), Lasts: sec(1)}}
	course{
		line:    sim.Line{Stations: []sim.Station{a, one("B", "A", 1.5)}},
		measure: 5 * s,
		want: `
			0   A running, B starved
			1   B running
			2   A blocked
			2.2 A down (look)    # B takes what A holds at 2.5
			3.2 A running        # until 4.2: lost
			4   B starved
		`,
		counts: `A: cycles 3, lost packs 1, passed 2`,
	}.follow(t)
}

// A starved station still has its packs until they have left, one a cycle: two of them in 2 s. Every 5 s A, slower
// than B, gives one; the stop of the group comes 0.5 s, 2 s and 2.5 s after B's last cycle.
func TestPacksLostWhileShortlyStarved(t *testing.T) {
	for _, c := range []struct {
		stop float64
		lost int64
	}{{6.5, 1}, {8, 1}, {8.5, 0}} {
		a, b := one("A", "", 5), one("B", "A", 1)
		b.LostPerStop = 2
		b.Stops = []sim.Stop{{Name: "look", Clock: sim.CalendarClock, Every: sec(c.stop), Lasts: sec(1)}}
		// B works 5-6 and 10-11: the second is the first after the stop.
		rec := compile(t, sim.Line{Stations: []sim.Station{a, b}}).NewEngine().Run(sim.Options{Measure: 12 * s})
		if got := rec.Stations[1].LostPacks; got != c.lost {
			t.Errorf("a stop at %v s: %d lost, by hand %d", c.stop, got, c.lost)
		}
	}
}

// A stop after a whole number of cycles strikes when the next begins: behind a slower feeder the station has been starved
// until then, for 1 s of every 2, which is no longer than the three packs need to leave.
func TestPacksLostBehindASlowerFeeder(t *testing.T) {
	a, b := one("A", "", 2), one("B", "A", 1)
	b.LostPerStop = 3
	b.Stops = []sim.Stop{jam(5, 1)}
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 23 * s,
		want: `
			0  A running, B starved
			2  B running
			3  B starved
			4  B running
			5  B starved
			6  B running
			7  B starved
			8  B running
			9  B starved
			10 B running
			11 B starved
			12 B down (jam)      # five cycles; the sixth has its input, 3 packs are on their way
			13 B running         # the cycles until 14 and 15: lost
			15 B starved
			16 B running         # until 17: lost
			17 B starved
			18 B running
			19 B starved
			20 B running
			21 B starved
			22 B down (jam)
		`,
		counts: `B: cycles 10, lost packs 3, passed 7`,
	}.follow(t)
}
