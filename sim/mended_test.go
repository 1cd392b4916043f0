package sim_test

import (
	"math"
	"testing"

	"tuckline/sim"
)

// A station that waits for its restart level goes on waiting for it after a short stop,
// whether it blocks after or before its cycle: the store is as full on average.
func TestRestartLevelOutlivesAStop(t *testing.T) {
	var mean [2]float64
	for i, before := range []bool{false, true} {
		web := one("web", "", 1)
		web.BlocksBefore = before
		web.Stops = []sim.Stop{{Name: "check", Every: sec(10), Clock: sim.CalendarClock, Lasts: sec(0.1)}}
		line := withBuffer(web, one("cartoner", "", 2), sim.Buffer{Name: "store", Holds: 20, Restart: sim.Level{On: true, Level: 5}})
		rec := compile(t, line).NewEngine().Run(sim.Options{Measure: sim.Hour})
		mean[i] = rec.Buffers[0].MeanLevel(rec.Window)
	}
	// The level swings between 5 and 20; forgetting the level lets it stay at 17 and above.
	if math.Abs(mean[0]-mean[1]) > 1 || mean[1] > 14 {
		t.Errorf("mean levels %.1f and %.1f", mean[0], mean[1])
	}
}

// A belt does not wait behind a station that the restart level of the store holds back: the
// level counts the pieces on the belt, so that it could never fall.
func TestBeltBesideAStationHeldByLevel(t *testing.T) {
	first, second := one("web 1", "", 1), one("web 2", "", 1)
	first.Gives, second.Gives = 4, 4
	cartoner := one("cartoner", "store", 0.6)
	cartoner.Takes = 3
	line := sim.Line{
		Stations: []sim.Station{first, second, cartoner},
		Buffers: []sim.Buffer{
			{Name: "belt", From: []string{"web 1"}, Holds: 129, Transit: 20 * s, Conveyor: true},
			{Name: "store", From: []string{"belt", "web 2"}, Holds: 720, Restart: sim.Level{On: true, Level: 108}},
		},
	}
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: sim.Hour})
	// The webs give 8 a second, the cartoner takes 5: it never starves but at the start, when
	// the pieces of web 2 alone, 4 a second, feed it.
	if rec.End != sim.HorizonReached || rec.Stations[2].States[sim.Starved] > sim.Minute {
		t.Errorf("ended with %v, %v locked, starved for %d", rec.End, rec.Locked, rec.Stations[2].States[sim.Starved])
	}
}

// Of two stores in a row the levels of both hold: the second stops the web at 10 pieces and
// lets it start again at 5, although the first would let it go on.
func TestLevelsOfBothStoresInARow(t *testing.T) {
	web, cartoner := one("web", "", 1), one("cartoner", "second", 2)
	line := sim.Line{
		Stations: []sim.Station{web, cartoner},
		Buffers: []sim.Buffer{
			{Name: "first", From: []string{"web"}, Holds: 100, StopUpstream: 90, Restart: sim.Level{On: true, Level: 50}},
			{Name: "second", From: []string{"first"}, Holds: 100, StopUpstream: 10, Restart: sim.Level{On: true, Level: 5}},
		},
	}
	rec := compile(t, line).NewEngine().Run(sim.Options{WarmUp: sim.Hour / 2, Measure: sim.Hour})
	second := &rec.Buffers[1]
	if mean := second.MeanLevel(rec.Window); second.Max != 10 || mean < 6 || mean > 8.5 {
		t.Errorf("at most %d and %.2f on average in the second store; by hand 10, and half way from 5 to 10", second.Max, mean)
	}
}
