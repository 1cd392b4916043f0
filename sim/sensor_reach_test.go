package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A belt of 8 m at 24 m/min, 0.4 m/s, pitch 62 mm: 20 s, 129 places. 240/min come 0.25 s apart, and pieces that stand close
// together are 62 mm / 0.4 m/s = 0.155 s of belt apart. The cartoner stops at 60 s and leaves the piece that has just arrived, so that
// the k-th from the exit would be there at 60 + (k − 1) × 0.25 s. The front of the first stands at the exit, that of the second 62 mm
// before it, that of the k-th (k − 1) × 62 mm: it meets the queue (k − 1) × 0.155 s earlier, (k − 1) × 0.095 s after the stop:
//
//	1 m: 17 pieces (1/0.062 = 16.1)   60 + 16 × 0.095 = 61.52 s
//	4 m: 65 pieces (64.5)             60 + 64 × 0.095 = 66.08 s
//	7 m: 113 pieces (112.9)           60 + 112 × 0.095 = 70.64 s
//
// The web, with a piece each 0.25 s, is blocked from the first that is ready after the report; without a report from 72.25 s, when
// it finds no place.
func TestQueueReachesASensor(t *testing.T) {
	for _, c := range []struct {
		at, travel, delay, stop float64
		from                    float64 // when the web stops, 0 if it does not
	}{
		{17, 2.635, 0.5, 40, 62.25},    // report at 62.02 s
		{65, 10.075, 0.5, 40, 66.75},   // at 66.58 s
		{113, 17.515, 0.5, 40, 71.25},  // at 71.14 s
		{65, 10.075, 2, 40, 68.25},     // at 68.08 s
		{113, 17.515, 1.25, 40, 72},    // at 71.89 s
		{113, 17.515, 2, 40, 72.25},    // at 72.64 s: the belt is full before
		{65, 10.075, 2, 11, 68.25},     // a stop of 11 s is long enough
		{65, 10.075, 2, 8, 0},          // one of 8 s ends 0.08 s before the report
		{65, 10.075, 2, 8.5, 68.25},    // one of 8.5 s does not
		{17, 2.635, 0.5, 2, 0},         // ends at 62 s, 0.02 s before
		{17, 2.635, 0.5, 2.375, 62.25}, // blocked for the last 0.125 s
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
// are put at once, which are no nearer together than pieces that stand. One at a time: when one has been taken the k-th is at the exit
// after k × 0.25 s and at its place (k - 1) × 0.155 s before that, the first after 0.25 s, when it is taken, the second after 0.345 s,
// later still each next. Four at once each second: the first is taken as they arrive, the others 0.2, 0.4 and 0.6 s after that. Three of
// them do stand; the fourth from the exit is the first of the next four, at its place 1 - 3 × 0.155 = 0.535 s after these have arrived,
// and after 0.2 s it is the third, 0.69 s, then the second, 0.845 s, then the first.
func TestSteadyFlowIsNoQueue(t *testing.T) {
	for _, gives := range []int64{1, 4} {
		web := one("web", "", 0.25*float64(gives))
		web.Gives = gives
		for at := gives; at <= 129; at++ {
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

// A belt of 3 s with 6 places: 0.5 s for the length of a piece. Full sees two pieces for 1.75 s, clear none for 1 s.
func TestCourseOfAQueueOnABelt(t *testing.T) {
	rec := course{
		line: sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "belt", 4)},
			Buffers: []sim.Buffer{{
				Name: "belt", From: []string{"A"}, Holds: 6, Transit: 3 * s, Conveyor: true,
				Full:  sim.Sensor{On: true, At: 2, Delay: 7 * s / 4, Travel: 1 * s},
				Clear: sim.Sensor{On: true, At: 1, Delay: 1 * s, Travel: s / 2},
			}},
		},
		measure: 34 * s,
		want: `
			0  A running, B starved
			1  belt 1
			2  belt 2
			3  belt 3
			4  B running              # takes the first; the second is at its place at 5, the third at 6 - 0.5 = 5.5: full at 7.25
			5  belt 4
			6  belt 5
			7  belt 6
			8  A blocked, belt 5      # full since 7.25; there is room for what A holds
			12 belt 4
			16 belt 3
			20 belt 2
			24 belt 1
			28 belt 0                 # clear reports at 29
			29 A running, belt 1
			30 belt 2
			31 belt 3
			33 belt 4                 # at 32 one was taken and one put
		`,
		counts: `A: blocked 21 s, blocked spells 1`,
	}.follow(t)
	if got := rec.Buffers[0].SensorStops; got != 1 {
		t.Errorf("%d reports of a full belt, by hand 1", got)
	}
}

// The belt of above stands, by a stop of its own, from 61.1 s to 63.1 s: the 17th piece meets the queue 2 s later, at 63.52 s, and full
// reports at 64.02 s. The web holds the piece of 61.25 s until 63.1 s; the next are ready at 63.35, 63.6, 63.85 and 64.1 s, and
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
	for _, c := range []struct{ until, reports int64 }{{64_019_000, 0}, {64_021_000, 1}} {
		rec := m.NewEngine().Run(sim.Options{Measure: sim.Micros(c.until)})
		if got := rec.Buffers[0].SensorStops; got != c.reports {
			t.Errorf("%d reports up to %d, by hand %d at 64.02 s", got, c.until, c.reports)
		}
	}
}

// One is put each 2 s and is 3 s on the way, so that they arrive at 5, 7, 9, 11, 13 s; B takes at 5, 8.6 and 12.2 s. Full, without a
// delay, sees two 0.5 s before the second arrives: at 8.5 s, up to the take, and at 10.5 s, when the piece of 9 s stands. Clear counts
// only what has arrived, and that is one. It does not release what full has just stopped: a queue up to the farther sensor has reached
// the nearer. What B takes at 12.2 s clears the belt and lets A put what it has held since 12 s. At 12.5 s the piece of 13 s is at
// its place behind that of 11 s; when B takes that at 15.8 s the one put at 12.2 s stands too, and the belt is clear only at 19.4 s.
// A, which ends at 14.2 s, waits 0.2 + 5.2 s.
func TestFullSensorIsNotReleasedAtOnce(t *testing.T) {
	rec := compile(t, sim.Line{
		Stations: []sim.Station{one("A", "", 2), one("B", "belt", 3.6)},
		Buffers: []sim.Buffer{{
			Name: "belt", From: []string{"A"}, Holds: 6, Transit: 3 * s, Conveyor: true,
			Full: sim.Sensor{On: true, At: 2, Travel: 1 * s}, Clear: sim.Sensor{On: true, At: 2},
		}},
	}).NewEngine().Run(sim.Options{Measure: 20 * s})
	if got, blocked := rec.Buffers[0].SensorStops, rec.Stations[0].States[sim.Blocked]; got != 3 || blocked != 5_400_000 {
		t.Errorf("%d reports, by hand 3; A blocked for %d, by hand 5.4 s", got, blocked)
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
