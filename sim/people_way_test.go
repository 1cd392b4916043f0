package sim_test

import (
	"testing"

	"tuckline/sim"
)

func withWay(line sim.Line, walk, response float64) sim.Line {
	line.Crews[0].Walk, line.Crews[0].Response = sec(walk), sec(response)
	return line
}

// Who is free when he is called sets out after 3 s and walks for 2; who comes from other work only walks.
func TestWalkAndResponse(t *testing.T) {
	course{
		line:    withWay(fitters(1, needing("A", 4, 4, 1, 5), needing("B", 6, 1, 1, 5)), 2, 3),
		measure: 22 * s,
		want: `
			0  A running, B running
			4  A waiting for crew (jam)   # 3 and 2 s
			6  B waiting for crew (jam)
			9  A down (jam)               # until 13
			13 A running                  # until 17; the fitter walks to B
			15 B down (jam)
			16 B running                  # until 22; the fitter is free
			17 A waiting for crew (jam)   # until 22
		`,
		counts: `
			fitters: requests 2, waited 1   # B waited for somebody; the third has not begun
			fitters: wait time 14 s         # 5 and 9
			fitters: busy 17 s, walking 12 s, present 22 s   # 4 to 16 and 17 to 22; on the way 4 to 9, 13 to 15 and 17 to 22
			A: jam waiting 10 s, jam down 4 s
			B: jam waiting 9 s, jam down 1 s
		`,
	}.follow(t)
}

// A refill with a way: the people are bound from the call on, and the magazine runs empty before they begin.
func TestWalkToARefill(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{{
		Name: "leaflets", Amount: 6, PerCycle: 1, Refill: 5, Lasts: sec(1), Crew: sim.Work{Crew: "fitters"},
		Alarm: sim.Level{On: true, Level: 1},
	}}
	course{
		line:    withWay(fitters(1, a), 3, 0),
		measure: 12 * s,
		want: `
			0  A running
			6  A waiting for crew (leaflets)   # asked for at 5
			8  A down (leaflets)
			9  A running
		`,
		counts: `fitters: requests 1, waited 0, wait time 3 s, busy 4 s, walking 3 s; A: leaflets late 1, leaflets lateness 3 s`,
	}.follow(t)
}

// A shift ends while its people are on the way: they go on, and do the work in overtime. A stop of the calendar has a way too.
func TestWayOverTheEndOfAShift(t *testing.T) {
	a := one("A", "", 1)
	a.Stops = []sim.Stop{{Name: "check", Every: sec(8), Clock: sim.CalendarClock, Lasts: sec(2), Crew: sim.Work{Crew: "fitters"}}}
	line := withWay(fitters(1, a), 4, 0)
	line.Calendar = calendar(hours(0, "w", 10), hours(1, "w", 100))
	course{
		line:    line,
		measure: 16 * s,
		want: `
			0  A running
			8  A waiting for crew (check)
			12 A down (check)
			14 A running
		`,
		counts: `fitters: busy 6 s, walking 4 s, overtime 4 s, present 16 s`,
	}.follow(t)
}

// The way of a stop has streams of its own: a law of the way changes neither when stops come nor how long their work lasts.
func TestWayHasItsOwnStreams(t *testing.T) {
	jam := needing("A", 1, 1, 1, 5)
	jam.Stops[0].Every, jam.Stops[0].Lasts = must(t)(sim.Exponential(20e6)), must(t)(sim.Exponential(5e6))
	line := fitters(1, jam)
	plain := compile(t, line).NewEngine().Run(sim.Options{Seed: 4, Measure: 3600 * s})
	line.Crews[0].Walk, line.Crews[0].Response = must(t)(sim.Exponential(3e6)), must(t)(sim.Exponential(2e6))
	m := compile(t, line)
	var trace sim.Trace
	walked := m.NewEngine().Run(sim.Options{Seed: 4, Measure: 3600 * s, Trace: &trace, Waits: true})
	running, at := sim.Micros(0), sim.Micros(0)
	var plainTrace sim.Trace
	compile(t, fitters(1, jam)).NewEngine().Run(sim.Options{Seed: 4, Measure: 3600 * s, Trace: &plainTrace})
	for k, stop := range trace.Stops[:len(trace.Stops)-1] { // the last may be cut
		other := plainTrace.Stops[k]
		if stop.Done-stop.Work != other.Done-other.Work {
			t.Fatalf("stop %d: work of %d and %d", k, stop.Done-stop.Work, other.Done-other.Work)
		}
		running, at = running+stop.Begin-at, stop.Done
	}
	if plain.Stations[0].Stops[0].Count <= walked.Stations[0].Stops[0].Count || running == 0 {
		t.Errorf("%d and %d stops", plain.Stations[0].Stops[0].Count, walked.Stations[0].Stops[0].Count)
	}
	// By hand: each waits for 5 s on average, its way being a sum of two exponential times, of 3 and of 2 s.
	c := walked.Crews[0]
	if mean := float64(c.WaitTime) / float64(c.Requests) / 1e6; mean < 4 || mean > 6 {
		t.Errorf("a mean way of %g s", mean)
	}
	if c.Waited != 0 || c.Waits.Count != c.Requests || c.Waits.Sum != int64(c.WaitTime) || walked.Stations[0].Waits.Sum != c.Waits.Sum {
		t.Errorf("waits %+v of %+v", c.Waits, c)
	}
}
