package sim_test

import (
	"math"
	"testing"

	"tuckline/sim"
)

const minute = 60 * s

// Fixed times up and down: pieces made and stops begun up to the horizon are arithmetic.
func TestExactFixedUpAndDown(t *testing.T) {
	value := exactValues(t)
	for _, c := range []struct {
		name              string
		up, down, horizon float64 // minutes
		rate              float64 // cycles a minute
	}{
		{"DET-1", 55, 5, 480, 60}, {"DET-3", 20, 2.5, 450, 250}, {"DET-4", 33, 7, 100, 40},
	} {
		line := alone(60/c.rate, sim.Stop{Name: "fault", Every: sec(60 * c.up), Clock: sim.RunningClock, Lasts: sec(60 * c.down)})
		rec := compile(t, line).NewEngine().Run(sim.Options{Measure: sim.Micros(c.horizon * float64(minute))})
		made, stops := float64(rec.Stations[0].Given), float64(rec.Stations[0].Stops[0].Count)
		if want := value(c.name, "parts_made")[0]; math.Abs(made-want) > 1 { // the source: up to one piece at the horizon
			t.Errorf("%s: %v pieces, exact %v", c.name, made, want)
		}
		if want := value(c.name, "stops_started")[0]; stops != want {
			t.Errorf("%s: %v stops, exact %v", c.name, stops, want)
		}
	}
}

// Exactly 1000 cycles of 1 s between stops of 120 s, 20 cycles scrapped after each: in whole
// periods of 1120 s.
func TestExactScrapAfterRestart(t *testing.T) {
	value := exactValues(t)
	line := alone(1, sim.Stop{Name: "fault", Every: sim.Fixed(1000), Lasts: sec(120)})
	line.Stations[0].AfterStop = []sim.ScrapRule{{Cycles: 20}}
	rec := compile(t, line).NewEngine().Run(sim.Options{WarmUp: 1120 * s, Measure: 11_200 * s})
	a := &rec.Stations[0]
	if yield := float64(a.Given) / float64(a.Given+a.Scrapped); yield != value("SCRAPUP-DET-1", "yield")[0] {
		t.Errorf("yield %v", yield)
	}
	if rate := float64(a.Given) / 11_200; rate != value("SCRAPUP-DET-1", "good_per_second")[0] {
		t.Errorf("good pieces per second %v", rate)
	}
}

// A reel of the length of the source, spliced on: the k-th change comes after ⌊k × cycles of
// a reel⌋ cycles, so that the mean of k intervals is off by less than one cycle in k.
func TestExactReelInterval(t *testing.T) {
	value := exactValues(t)
	for _, c := range []struct {
		name     string
		drawOff  int64   // micrometres a cycle
		rate     float64 // cycles a minute
		outer    float64 // mm, as are core and thickness
		core     float64
		thick    float64
		splices  int
		duration float64 // seconds
	}{
		{"REEL-1", 100_000, 40, 800, 76, 0.25, 12, 90},
		{"REEL-5", 120_000, 60, 600, 76, 0.2, 20, 120},
	} {
		metres := math.Pi * (c.outer*c.outer - c.core*c.core) / (4 * c.thick) / 1000
		if want := value(c.name, "length_m")[0]; math.Abs(metres-want) > 1e-6 {
			t.Errorf("%s: %v m, exact %v", c.name, metres, want)
		}
		length := int64(math.Round(metres * 1e6))
		line := alone(60 / c.rate)
		line.Stations[0].Materials = []sim.Material{{
			Name: "reel", Amount: length, PerCycle: c.drawOff, Refill: length, Lasts: sec(c.duration),
		}}
		interval := value(c.name, "splice_interval_min")[0]
		var trace sim.Trace
		horizon := sim.Micros((float64(c.splices)+0.5)*interval*float64(minute) + float64(c.splices)*c.duration*1e6)
		compile(t, line).NewEngine().Run(sim.Options{Measure: horizon, Trace: &trace})
		if len(trace.Stops) != c.splices {
			t.Errorf("%s: %d splices, by hand %d", c.name, len(trace.Stops), c.splices)
			continue
		}
		for i, stop := range trace.Stops {
			k := i + 1
			run := float64(stop.Begin)/1e6 - float64(i)*c.duration
			cycles := math.Round(run * c.rate / 60)
			if want := math.Floor(float64(k) * float64(length) / float64(c.drawOff)); cycles != want {
				t.Errorf("%s: splice %d after %v cycles, by hand %v", c.name, k, cycles, want)
			}
			if mean := run / 60 / float64(k); math.Abs(mean-interval) > 1/c.rate/float64(k) {
				t.Errorf("%s: mean of %d intervals %v min, exact %v", c.name, k, mean, interval)
			}
		}
	}
}

// Two reels on one machine, changed one after the other when both are used up: the share of time
// in which it runs. The allowance is one change of each more or less in the window.
func TestExactTwoReels(t *testing.T) {
	value := exactValues(t)
	line := alone(60.0 / 40)
	reel := func(name string, minutes, change float64) sim.Material {
		amount := int64(math.Round(minutes * 40 * 100_000)) // micrometres at 100 mm a cycle, 40 a minute
		return sim.Material{Name: name, Amount: amount, PerCycle: 100_000, Refill: amount, Lasts: sec(60 * change)}
	}
	line.Stations[0].Materials = []sim.Material{reel("film", 498.1184, 2), reel("alu", 6226.4796, 3)}
	horizon := 150_000 * minute
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: horizon})
	got, want := running(0)(&rec), value("REELAV-1", "availability")[0]
	allowance := float64(2+3) / 150_000
	t.Logf("%.7f, exact %.7f, allowance %.1g", got, want, allowance)
	if math.Abs(got-want) > allowance {
		t.Error("outside")
	}
}
