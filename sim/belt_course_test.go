package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A belt of 2 s that does not accumulate: while the piece at its exit waits for B, nothing on it moves
// and A cannot put anything.
func TestCourseOfABeltThatStands(t *testing.T) {
	course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "belt", 3)},
			Buffers:  []sim.Buffer{{Name: "belt", From: []string{"A"}, Holds: 4, Transit: 2 * s, Conveyor: true, Stands: true}},
		},
		measure: 11 * s,
		want: `
			0  A running, B starved
			1  belt 1                 # first piece, at the exit at 3
			2  belt 2                 # second, at the exit at 4
			3  B running              # B takes the first until 6; A puts its third, due at 5
			4  A blocked              # the second waits for B: the belt stands, the fourth finds no way on
			6  A running              # B takes the second; the third, 1 s from the exit, is due at 7; the fourth goes on, due at 8
			7  A blocked              # the third waits until 9; the belt stands
			9  A running              # the fourth, 1 s from the exit, is due at 10
			10 A blocked
		`,
		counts: `
			A: cycles 6, passed 5, blocked 5 s  # ends at 1, 2, 3, 4, 7, 10; blocked 4-6, 7-9, 10-11
			B: cycles 2, taken 3                # takes at 3, 6, 9
			belt: in 5, out 3, level time 19000000  # 1 × 1 + 2 × 9 piece seconds`,
	}.follow(t)
}

// The station behind takes two: the program puts a collating place of one piece, because the belt
// cannot bring two together.
func TestCourseOfACollatingPlaceBehindABeltThatStands(t *testing.T) {
	c := one("C", "belt", 5)
	c.Takes = 2
	course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), c},
			Buffers:  []sim.Buffer{{Name: "belt", From: []string{"A"}, Holds: 4, Transit: 2 * s, Conveyor: true, Stands: true}},
		},
		measure: 13 * s,
		want: `
			0  A running, C starved
			1  belt 1
			2  belt 2
			3  belt to C 1             # the first piece goes into the collating place
			4  C running, belt to C 0  # the second passes straight through: C works until 9
			5  belt to C 1             # the third
			6  A blocked               # the fourth waits: the belt stands with the fifth 1 s from the exit
			9  A running, belt to C 0  # C takes the third and the fourth; the sixth goes onto the belt
			10 belt to C 1             # the fifth
			11 A blocked               # the sixth waits
		`,
	}.follow(t)
}

// The usable buffer of a conveyor: 8 m at 24 m/min are 20 s; 240/min × 20 s = 80 pieces in transit; at a pitch of
// 62 mm it holds 129; 129 − 80 = 49 spare pieces are 49 / 4 per s = 12.25 s (by hand). When the cartoner stops at 60 s it leaves
// the piece that has just arrived: 81 pieces at 60 s, and one more every 0.25 s: 129 at 72 s, and at
// 72.25 s the web finds no place.
func TestUsableBufferOfAConveyor(t *testing.T) {
	stopFor := func(seconds float64, stands bool) *sim.Record {
		cartoner := one("cartoner", "belt", 0.25)
		cartoner.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(60), Lasts: sec(seconds)}}
		rec := compile(t, sim.Line{
			Stations: []sim.Station{one("web", "", 0.25), cartoner},
			Buffers:  []sim.Buffer{{Name: "belt", From: []string{"web"}, Holds: 129, Transit: 20 * s, Conveyor: true, Stands: stands}},
		}).NewEngine().Run(sim.Options{WarmUp: 30 * s, Measure: 70 * s})
		return &rec
	}
	for _, c := range []struct {
		seconds float64
		blocked sim.Micros
		highest int64
	}{
		{12, 0, 129},         // taken again from 72 s on, at which the 129th piece comes
		{12.25, 0, 129},      // taken again at 72.25 s
		{13, 3 * s / 4, 129}, // blocked from 72.25 s to 73 s
	} {
		rec := stopFor(c.seconds, false)
		if web := &rec.Stations[0]; web.States[sim.Blocked] != c.blocked || rec.Buffers[0].Max > c.highest {
			t.Errorf("a stop of %g s blocks the web for %d, by hand %d; at most %d pieces", c.seconds, web.States[sim.Blocked], c.blocked, rec.Buffers[0].Max)
		}
	}
	// A belt that does not accumulate is no buffer: the web waits from 60.25 s, when its next piece is
	// ready, to the end of the stop.
	if rec := stopFor(12, true); rec.Stations[0].States[sim.Blocked] != 12*s || rec.Buffers[0].Max != 80 {
		t.Errorf("a belt that stands: the web is blocked for %d, by hand 12 s; %d pieces, by hand 80", rec.Stations[0].States[sim.Blocked], rec.Buffers[0].Max)
	}
}

// The full sensor sees two standing pieces for 1.5 s, the clear sensor none for 1 s.
func TestCourseOfSensorsOnABelt(t *testing.T) {
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "belt", 4)},
			Buffers: []sim.Buffer{{
				Name: "belt", From: []string{"A"}, Holds: 10, Transit: 1 * s, Conveyor: true,
				Full: sim.Sensor{On: true, At: 2, Delay: 3 * s / 2}, Clear: sim.Sensor{On: true, At: 1, Delay: 1 * s},
			}},
		},
		measure: 22 * s,
		want: `
			0  A running, B starved
			1  belt 1
			2  B running               # B works until 6, the second piece goes on
			3  belt 2                  # one stands
			4  belt 3                  # two stand: full would report at 5.5
			5  belt 4                  # three stand
			6  A blocked, belt 3       # full since 5.5; A holds its sixth, B takes the second of its own
			10 belt 2
			14 belt 1
			18 belt 0                  # none stands: clear reports at 19
			19 A running, belt 1
			20 belt 2
			21 belt 3
		`,
		counts: `A: blocked 13 s, blocked spells 1`,
	}.follow(t)
	if got := rec.Buffers[0].SensorStops; got != 1 {
		t.Errorf("%d reports of a full belt, by hand 1", got)
	}
}

// What stands for less than the delay is not seen: B takes the second piece before the 1.5 s are over.
func TestSensorNeedsItsDelayWithoutABreak(t *testing.T) {
	rec := compile(t, sim.Line{
		Stations: []sim.Station{one("A", "", 2), one("B", "belt", 2.5)},
		Buffers: []sim.Buffer{{
			Name: "belt", From: []string{"A"}, Holds: 10, Transit: 1 * s, Conveyor: true,
			Full: sim.Sensor{On: true, At: 1, Delay: 3 * s / 2},
		}},
	}).NewEngine().Run(sim.Options{Measure: 13 * s})
	// Arrivals at 3, 5, 7, 9, 11; B takes at 3, 5.5, 8, 10.5, 13: pieces stand 5-5.5, 7-8 and 9-10.5, 1.5 s at last: the
	// report at 10.5 comes before the take. None stands 10.5-11: too short to be clear. A, which ends at 12, waits.
	if got, blocked := rec.Buffers[0].SensorStops, rec.Stations[0].States[sim.Blocked]; got != 1 || blocked != 1*s {
		t.Errorf("%d reports of a full belt, by hand 1; A blocked for %d, by hand from 12 s to 13 s", got, blocked)
	}
}
