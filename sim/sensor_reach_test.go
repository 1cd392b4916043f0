package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A belt of 8 m at 24 m/min, 0.4 m/s, pitch 62 mm: 20 s, 129 places. 240/min come 0.25 s apart, and pieces that stand close
// together are 62 mm / 0.4 m/s = 0.155 s of belt apart. The cartoner stops at 60 s and leaves the piece that has just arrived, so that
// the k-th from the exit would be there at 60 + (k − 1) × 0.25 s; it meets the queue k × 0.155 s earlier:
//
//	1 m: 17 pieces (1/0.062 = 16.1)   60 + 16 × 0.25 − 17 × 0.155 = 61.365 s
//	4 m: 65 pieces (64.5)             60 + 64 × 0.25 − 65 × 0.155 = 65.925 s
//	7 m: 113 pieces (112.9)           60 + 112 × 0.25 − 113 × 0.155 = 70.485 s
//
// The web, with a piece each 0.25 s, is blocked from the first that is ready after the report; without a report from 72.25 s, when
// it finds no place.
func TestQueueReachesASensor(t *testing.T) {
	for _, c := range []struct {
		at, travel, delay, stop float64
		from                    float64 // when the web stops, 0 if it does not
	}{
		{17, 2.635, 0.5, 40, 62},    // report at 61.865 s
		{65, 10.075, 0.5, 40, 66.5}, // at 66.425 s
		{113, 17.515, 0.5, 40, 71},  // at 70.985 s
		{65, 10.075, 2, 40, 68},     // at 67.925 s
		{113, 17.515, 1.5, 40, 72},  // at 71.985 s
		{113, 17.515, 2, 40, 72.25}, // at 72.485 s: the belt is full before
		{65, 10.075, 2, 11, 68},     // a stop of 11 s is long enough
		{65, 10.075, 2, 7.75, 0},    // one of 7.75 s ends 0.175 s before the report
		{65, 10.075, 2, 8, 68},      // one of 8 s does not
		{17, 2.635, 0.5, 1.75, 0},   // ends at 61.75 s
		{17, 2.635, 0.5, 2, 62},
	} {
		cartoner := one("cartoner", "belt", 0.25)
		cartoner.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(60), Lasts: sec(c.stop)}}
		full := sim.Sensor{On: true, At: int64(c.at), Delay: sim.Micros(c.delay * 1e6), Travel: sim.Micros(c.travel * 1e6)}
		line := sim.Line{
			Stations: []sim.Station{one("web", "", 0.25), cartoner},
			Buffers:  []sim.Buffer{{Name: "belt", From: []string{"web"}, Holds: 129, Transit: 20 * s, Conveyor: true, Full: full}},
		}
		end := 60 + c.stop // up to here nothing is taken
		rec := compile(t, line).NewEngine().Run(sim.Options{WarmUp: 30 * s, Measure: sim.Micros((end - 30) * 1e6)})
		blocked := sim.Micros(0)
		if c.from > 0 {
			blocked = sim.Micros((end - c.from) * 1e6)
		}
		if got := rec.Stations[0].States[sim.Blocked]; got != blocked {
			t.Errorf("full at %g with %g s, a stop of %g s: the web is blocked for %d, by hand %d", c.at, c.delay, c.stop, got, blocked)
		}
	}
}

// In steady flow pieces are farther apart than those that stand: even without a delay no sensor sees a queue, also where four
// are put at once, which are no nearer together than pieces that stand. It is so from three pieces on: when one has been taken the
// k-th comes to its place after k × (0.25 - 0.155) s, for the third 0.285 s, and the next is taken after 0.25 s.
func TestSteadyFlowIsNoQueue(t *testing.T) {
	for _, gives := range []int64{1, 4} {
		web := one("web", "", 0.25*float64(gives))
		web.Gives = gives
		for at := gives + 2; at <= 129; at++ {
			line := sim.Line{
				Stations: []sim.Station{web, one("cartoner", "belt", 0.2)},
				Buffers: []sim.Buffer{{
					Name: "belt", From: []string{"web"}, Holds: 129, Transit: 20 * s, Conveyor: true,
					Full: sim.Sensor{On: true, At: at, Travel: sim.Micros(at) * 155_000},
				}},
			}
			rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 120 * s})
			if n := rec.Buffers[0].SensorStops; n > 0 {
				t.Errorf("%d at once: the sensor at %d pieces reports %d times", gives, at, n)
			}
		}
	}
}

// A belt of 3 s with 6 places: 0.5 s for the length of a piece. Full sees two pieces for 1.5 s, clear none for 1 s.
func TestCourseOfAQueueOnABelt(t *testing.T) {
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "belt", 4)},
			Buffers: []sim.Buffer{{
				Name: "belt", From: []string{"A"}, Holds: 6, Transit: 3 * s, Conveyor: true,
				Full:  sim.Sensor{On: true, At: 2, Delay: 3 * s / 2, Travel: 1 * s},
				Clear: sim.Sensor{On: true, At: 1, Delay: 1 * s, Travel: s / 2},
			}},
		},
		measure: 30 * s,
		want: `
			0  A running, B starved
			1  belt 1
			2  belt 2
			3  belt 3
			4  B running              # takes the first; the second is at its place at 5 - 0.5, the third at 6 - 1 = 5: full at 6.5
			5  belt 4
			6  belt 5
			7  A blocked              # full since 6.5
			8  belt 4
			12 belt 3
			16 belt 2
			20 belt 1
			24 belt 0                 # clear reports at 25
			25 A running, belt 1
			26 belt 2
			27 belt 3
			29 belt 4                 # at 28 one was taken and one put
		`,
		counts: `A: blocked 18 s, blocked spells 1`,
	}.follow(t)
	if got := rec.Buffers[0].SensorStops; got != 1 {
		t.Errorf("%d reports of a full belt, by hand 1", got)
	}
}

// The belt of above stands, by a stop of its own, from 61.1 s to 63.1 s: the 17th piece meets the queue 2 s later, at 63.365 s, and full
// reports at 63.865 s. The web holds the piece of 61.25 s until 63.1 s; the next are ready at 63.35, 63.6, 63.85 and 64.1 s, and
// the last of these waits: 63.1 - 61.25 + 100 - 64.1 = 37.75 s.
func TestQueueStandsWithItsBelt(t *testing.T) {
	cartoner := one("cartoner", "belt", 0.25)
	cartoner.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(60), Lasts: sec(40)}}
	rec := compile(t, sim.Line{
		Stations: []sim.Station{one("web", "", 0.25), cartoner},
		Buffers: []sim.Buffer{{
			Name: "belt", From: []string{"web"}, Holds: 129, Transit: 20 * s, Conveyor: true,
			Full:  sim.Sensor{On: true, At: 17, Delay: s / 2, Travel: 2_635_000},
			Stops: []sim.Stop{{Name: "drive", Clock: sim.CalendarClock, Every: sec(61.1), Lasts: sec(2)}},
		}},
	}).NewEngine().Run(sim.Options{WarmUp: 30 * s, Measure: 70 * s})
	if got := rec.Stations[0].States[sim.Blocked]; got != 37_750_000 || rec.Buffers[0].SensorStops != 1 {
		t.Errorf("the web is blocked for %d, by hand 37.75 s; %d reports, by hand 1", got, rec.Buffers[0].SensorStops)
	}
}

// The same where nothing but the belt itself moves when it goes on: the web has put its last of 244 pieces at 61 s.
func TestQueueGoesOnWithItsBelt(t *testing.T) {
	web, cartoner := one("web", "", 0.25), one("cartoner", "belt", 0.25)
	web.Supply = 244
	cartoner.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(60), Lasts: sec(40)}}
	m := compile(t, sim.Line{
		Stations: []sim.Station{web, cartoner},
		Buffers: []sim.Buffer{{
			Name: "belt", From: []string{"web"}, Holds: 129, Transit: 20 * s, Conveyor: true,
			Full:  sim.Sensor{On: true, At: 17, Delay: s / 2, Travel: 2_635_000},
			Stops: []sim.Stop{{Name: "drive", Clock: sim.CalendarClock, Every: sec(61.1), Lasts: sec(2)}},
		}},
	})
	for _, c := range []struct{ until, reports int64 }{{63_864_000, 0}, {63_866_000, 1}} {
		rec := m.NewEngine().Run(sim.Options{Measure: sim.Micros(c.until)})
		if got := rec.Buffers[0].SensorStops; got != c.reports {
			t.Errorf("%d reports up to %d, by hand %d at 63.865 s", got, c.until, c.reports)
		}
	}
}

// Two are put each 4 s and are 3 s on the way; B takes one each 1.5 s. Full, without a delay, sees both 0.25 s before they
// arrive, at 6.75 s; clear counts only what has arrived, and none has. It does not release what full has just stopped: a queue
// up to the farther sensor has reached the nearer. B takes at 7 and 8.5 s, which clears the belt and lets A put what it has
// held since 8 s; the same again each 4.5 s: reports at 6.75, 11.25 and 15.75 s, and A waits 0.5 s after each.
func TestFullSensorIsNotReleasedAtOnce(t *testing.T) {
	web := one("A", "", 4)
	web.Gives = 2
	rec := compile(t, sim.Line{
		Stations: []sim.Station{web, one("B", "belt", 1.5)},
		Buffers: []sim.Buffer{{
			Name: "belt", From: []string{"A"}, Holds: 6, Transit: 3 * s, Conveyor: true,
			Full: sim.Sensor{On: true, At: 2, Travel: s / 2}, Clear: sim.Sensor{On: true, At: 1},
		}},
	}).NewEngine().Run(sim.Options{Measure: 20 * s})
	if got, blocked := rec.Buffers[0].SensorStops, rec.Stations[0].States[sim.Blocked]; got != 3 || blocked != 3*s/2 {
		t.Errorf("%d reports, by hand 3; A blocked for %d, by hand 1.5 s", got, blocked)
	}
}

// What is taken as it arrives does not stand, and is not seen by a sensor without a delay.
func TestSensorSeesNothingThatLastsNoTime(t *testing.T) {
	rec := compile(t, sim.Line{
		Stations: []sim.Station{one("A", "", 1), one("B", "belt", 0.5)},
		Buffers:  []sim.Buffer{{Name: "belt", From: []string{"A"}, Holds: 6, Transit: 3 * s, Conveyor: true, Full: sim.Sensor{On: true, At: 1}}},
	}).NewEngine().Run(sim.Options{Measure: 20 * s})
	if got := rec.Buffers[0].SensorStops; got != 0 {
		t.Errorf("%d reports, by hand none", got)
	}
}
