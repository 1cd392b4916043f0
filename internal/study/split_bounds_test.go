package study

import (
	"context"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// split is a web that sends to two lanes: to a cartoner each, or to one that joins both.
type split struct {
	rule          string
	perMinute     int
	lanes, speeds [2]int
	joined        bool
}

func (s split) text() string {
	text := fmt.Sprintf(`tuckline: 1
title: A split
run: {warm-up: 10 min, measure: 2 h, replications: 8}
line:
  - {station: web, cycle: %d/min, sends: {to: [lane 1, lane 2], rule: %s},
     stops: {jam: {every: {dist: exponential, mean: 10 min running}, lasts: 60 s}}}
`, s.perMinute, s.rule)
	for i := range 2 {
		text += fmt.Sprintf("  - {buffer: lane %d, from: web, holds: %d blisters}\n", i+1, s.lanes[i])
	}
	const stops = "stops: {fault: {every: {dist: exponential, mean: 6 min calendar}, lasts: 45 s}}"
	if s.joined {
		return text + fmt.Sprintf("  - {station: cartoner, takes: {lane 1: 1 blister, lane 2: 1 blister}, cycle: %d/min, gives: 1 carton, %s}\n", s.speeds[0], stops) +
			"answer: {in: cartons, counted after: cartoner}\n"
	}
	for i := range 2 {
		text += fmt.Sprintf("  - {station: cartoner %d, from: lane %d, takes: 1 blister, cycle: %d/min, gives: 1 carton, %s}\n", i+1, i+1, s.speeds[i], stops)
	}
	return text + "answer: {in: cartons, counted after: [cartoner 1, cartoner 2]}\n"
}

// A lane that is never full would take everything from the next ones: without
// limit the lanes share, as they do in the line as entered. By hand: each
// cartoner makes 45/min, the fault leaves 360/405 of it, and the web with 80/min
// and 600/660 of it is the narrower: 4,364/h.
func TestUnlimitedLanesOfFirstWithRoomShare(t *testing.T) {
	s := split{rule: "first with room", perMinute: 80, lanes: [2]int{50, 50}, speeds: [2]int{45, 45}}
	span := mustRun(t, readText(t, s.text()), Options{Bounds: true}).Span
	if !span.Shared || span.Worse() || span.Recovered.N == 0 {
		t.Errorf("got %+v", span)
	}
	if least := 0.97 * 80 * 60 / 1.1; span.Unlimited.High < least {
		t.Errorf("without limit %+v cartons/h, by hand about 4,364", span.Unlimited)
	}
	s.joined = true
	if span := mustRun(t, readText(t, s.text()), Options{Bounds: true}).Span; span.Unlimited.Mean <= 0 || span.Worse() {
		t.Errorf("lanes that are joined again: %+v", span)
	}
	s.rule = "in turn"
	if span := mustRun(t, readText(t, s.text()), Options{Bounds: true}).Span; span.Shared {
		t.Error("lanes in turn keep their rule")
	}
}

// Only a rule that would never get to its later places is replaced: belts stay as they are.
func TestUnlimitedKeepsFirstWithRoomOfBelts(t *testing.T) {
	web := station("web", "", 1, 1)
	web.Sends = sim.Sends{To: []string{"a", "b"}, Rule: sim.FirstWithRoom}
	belt := func(name string) sim.Buffer {
		return sim.Buffer{Name: name, From: []string{"web"}, Holds: 9, Conveyor: true}
	}
	store := func(name string) sim.Buffer { return sim.Buffer{Name: name, From: []string{"web"}, Holds: 9} }
	for _, c := range []struct {
		first, second sim.Buffer
		want          sim.SendRule
	}{
		{belt("a"), belt("b"), sim.FirstWithRoom},
		{belt("a"), store("b"), sim.FirstWithRoom},
		{store("a"), belt("b"), sim.FewestPieces},
		{store("a"), store("b"), sim.FewestPieces},
	} {
		line := sim.Line{
			Stations: []sim.Station{web, station("one", "a", 1, 1), station("two", "b", 1, 1)},
			Buffers:  []sim.Buffer{c.first, c.second},
		}
		if got := withoutLimit(line).Stations[0].Sends.Rule; got != c.want {
			t.Errorf("belts %v, %v: rule %d, by hand %d", c.first.Conveyor, c.second.Conveyor, got, c.want)
		}
		if line.Stations[0].Sends.Rule != sim.FirstWithRoom {
			t.Error("the line itself has changed")
		}
	}
}

// Places more cannot cost output: buffers without limit make no less than the
// line as entered, whichever way its web shares.
func TestUnlimitedIsNoLessOnRandomSplits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pair := func(what string, from, to int) [2]int {
			draw := rapid.IntRange(from, to)
			return [2]int{draw.Draw(t, what+" 1"), draw.Draw(t, what+" 2")}
		}
		s := split{
			rule:      rapid.SampledFrom([]string{"in turn", "first with room", "fewest pieces"}).Draw(t, "rule"),
			perMinute: rapid.IntRange(20, 100).Draw(t, "web"),
			lanes:     pair("lane", 2, 60), speeds: pair("cartoner", 15, 60),
			joined: rapid.Bool().Draw(t, "joined"),
		}
		line, err := scenario.Read("line.yaml", []byte(s.text()), scenario.Options{})
		if err != nil {
			t.Fatal(err)
		}
		o, err := Run(context.Background(), line, Options{Bounds: true})
		if err != nil {
			t.Fatal(err)
		}
		if o.Span.Worse() {
			t.Fatalf("%s\nas entered %+v, without limit %+v", s.text(), o.Span.Now, o.Span.Unlimited)
		}
	})
}

// A line that makes less without limit recovers nothing that could be told.
func TestWorse(t *testing.T) {
	at := func(low, high float64) result.Estimate {
		return result.Estimate{Mean: (low + high) / 2, Low: low, High: high, N: 8}
	}
	for _, c := range []struct {
		now, unlimited result.Estimate
		want           bool
	}{
		{at(100, 110), at(80, 99), true},
		{at(100, 110), at(80, 100), false},
		{at(100, 110), at(120, 130), false},
		{at(100, 110), result.Estimate{}, false},
		{at(3274.02, 3274.02), at(3274.01, 3274.01), false}, // one piece in hours
	} {
		if got := (Span{Now: c.now, Unlimited: c.unlimited}).Worse(); got != c.want {
			t.Errorf("as entered %+v, without limit %+v: %v", c.now, c.unlimited, got)
		}
	}
}

// Stores whose own stops or rates cost more than they recover: that is said, not a share below nothing.
func TestCosts(t *testing.T) {
	at := func(low, high float64) result.Estimate {
		return result.Estimate{Mean: (low + high) / 2, Low: low, High: high, N: 8}
	}
	for _, c := range []struct {
		none, now, recovered result.Estimate
		want                 bool
	}{
		{at(120, 130), at(100, 110), result.Estimate{}, true},
		{at(100, 112), at(100, 110), at(-0.6, -0.4), true}, // the pairs tell it
		{at(100, 112), at(100, 110), at(-0.2, 0.1), false},
		{at(80, 90), at(100, 110), at(0.3, 0.5), false},
		{result.Estimate{}, at(100, 110), result.Estimate{}, false},
	} {
		if got := (Span{None: c.none, Now: c.now, Recovered: c.recovered}).Costs(); got != c.want {
			t.Errorf("without %+v, as entered %+v, recovered %+v: %v", c.none, c.now, c.recovered, got)
		}
	}
}
