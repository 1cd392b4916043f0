package scenario_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// read reads a scenario of a few lines of text.
func read(t *testing.T, line string, sets ...string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("test.yaml", []byte("tuckline: 1\n"+line), scenario.Options{Sets: sets})
	if err != nil {
		t.Fatalf("%s\n%v", line, err)
	}
	return s
}

// TestBareLines reads the lines of the exact cases, which name no pieces.
func TestBareLines(t *testing.T) {
	for name, line := range map[string]string{
		"queue": `
  - {station: arrivals, cycle: {dist: exponential, mean: 2 s}}
  - {buffer: queue, holds: unlimited}
  - {station: server, cycle: {dist: exponential, mean: 1 s}, stops: {fault: {every: {dist: exponential, mean: 20 s running}, lasts: {dist: exponential, mean: 2 s}}}}`,
		"several servers": `
  - {station: arrivals, cycle: {dist: exponential, mean: 2 s}}
  - {buffer: queue, holds: unlimited}
  - {station: server 1, from: queue, cycle: {dist: erlang, mean: 1 s, k: 4}}
  - {station: server 2, from: queue, cycle: 1 s}`,
		"exponential line": `
  - {station: one, cycle: {dist: exponential, mean: 1 s}, rejects: 5 %}
  - {buffer: b1, holds: 2}
  - {station: two, cycle: {dist: exponential, mean: 1 s}}
  - {station: three, cycle: {dist: exponential, mean: 1 s}}`,
		"geometric": `
  - {station: one, cycle: 1 s, stops: {fault: {every: {dist: geometric, mean: 100 cycles}, lasts: {dist: geometric, mean: 10 s, step: 1 s}}}}
  - {buffer: b1, holds: 4}
  - {station: two, cycle: 1 s, stops: {fault: {every: {dist: geometric, mean: 100 cycles}, lasts: {dist: empirical, values: {1 s: 0.2, 6 s: 0.5, 8 s: 0.3}}}}}`,
		"alternating on the calendar": `
  - station: one
    cycle: 1 s
    blocks: before cycle
    stops: {off: {every: {dist: geometric, mean: 10 s calendar, step: 1 s}, lasts: {dist: geometric, mean: 1.1111111 s, step: 1 s}}}
  - {buffer: b1, holds: 2}
  - {station: two, cycle: 1 s}`,
		"merge": `
  - {station: feeder a, from: supply, cycle: {dist: exponential, mean: 1.6667 s}}
  - {station: feeder b, from: supply, cycle: {dist: exponential, mean: 1.6667 s}}
  - {buffer: shared, from: [feeder a, feeder b], holds: 3}
  - {station: consumer, from: shared, cycle: {dist: exponential, mean: 1 s}}`,
		"scrap after stop": `
  - {station: one, cycle: 1 s, after stop: {scrap: 20 cycles}, stops: {jam: {every: 900 cycles, lasts: 90 s}}}`,
		"repairmen": `
  - {station: m1, from: supply, cycle: 1 ms, stops: {fault: {every: {dist: exponential, mean: 10 min running}, lasts: {dist: exponential, mean: 1 min}, crew: repairers}}}
  - {station: m2, like: m1}
  - {station: m3, like: m1}
crews: {repairers: 1}`,
	} {
		t.Run(name, func(t *testing.T) {
			s := read(t, "run: {confidence: 99 %, replications: 30}\nline:"+line+"\n")
			for i := range s.Stations {
				if unit := s.Stations[i].GivesUnit; unit != "pieces" {
					t.Errorf("%s gives %s", s.Line.Stations[i].Name, unit)
				}
			}
		})
	}
}

func TestLikeCopiesAndIsLaidOver(t *testing.T) {
	s := read(t, `line:
  - station: one
    from: supply
    cycle: 1 s
    stops:
      jam: {every: 900 cycles, lasts: {dist: lognormal, mean: 90 s, cv: 0.9}}
  - station: two
    like: one
    cycle: 2 s
    stops:
      jam: {lasts: {mean: 60 s}}
      break: {every: 9000 cycles, lasts: 10 min}
  - station: three
    like: two
    stops: {jam: {lasts: {dist: exponential, mean: 5 s}}}
`)
	two, three := s.Line.Stations[1], s.Line.Stations[2]
	if two.From != "" || two.Cycle.Mean() != 2e6 || three.Cycle.Mean() != 2e6 {
		t.Errorf("two is %+v", two)
	}
	law := func(station sim.Station, stop string) string {
		for _, one := range station.Stops {
			if one.Name == stop {
				return fmt.Sprint(one.Every, "; ", one.Lasts)
			}
		}
		return "none"
	}
	for _, c := range []struct{ got, want string }{
		{law(two, "jam"), "fixed, 900; lognormal, mean 6e+07, cv 0.9"},
		{law(two, "break"), "fixed, 9000; fixed, 6e+08"},
		{law(three, "jam"), "fixed, 900; exponential, mean 5e+06"},
		{law(three, "break"), "fixed, 9000; fixed, 6e+08"},
	} {
		if c.got != c.want {
			t.Errorf("got %s, want %s", c.got, c.want)
		}
	}
}

// TestEmptyBufferLapses leaves a buffer of no places out, with all that reads it.
func TestEmptyBufferLapses(t *testing.T) {
	s := example(t, "lowmere.yaml", "transfer store.holds=0")
	if len(s.Line.Buffers) != 1 || s.Line.Stations[1].From != "transfer belt" || len(s.Line.Stations[1].Steps) != 0 {
		t.Errorf("buffers %+v, cartoner %+v", s.Line.Buffers, s.Line.Stations[1])
	}
	if !strings.Contains(strings.Join(s.Warnings, "\n"), "transfer store holds 0 places and counts as not written") {
		t.Errorf("warnings: %q", s.Warnings)
	}
	s = read(t, "line: [{station: a, cycle: 1 s}, {buffer: b, holds: 0}, {station: c, cycle: 1 s}]\n")
	if len(s.Line.Buffers) != 0 || s.Line.Stations[1].From != "a" {
		t.Errorf("a hand-over is left: %+v", s.Line)
	}
	s = read(t, "line: [{station: a, from: supply, cycle: 1 s}, {station: b, from: supply, cycle: 1 s}, {buffer: m, from: [a, b], holds: 0}, {station: c, cycle: 1 s}]\n")
	if len(s.Line.Buffers) != 1 || s.Line.Buffers[0].Holds != 0 {
		t.Errorf("a merge stays: %+v", s.Line.Buffers)
	}
}

func TestGuessedRangeUsesTheLikelyValue(t *testing.T) {
	s := read(t, "line:\n  - {station: a, cycle: {likely: 60/min, low: 50/min, high: 70/min}, rejects: {likely: 1 %, low: 0.5 %, high: 2 %}, stops: {jam: {every: {dist: exponential, mean: {likely: 900 cycles, low: 500 cycles, high: 2000 cycles}}, lasts: 90 s}}}\n")
	a := s.Line.Stations[0]
	if a.Cycle.Mean() != 1e6 || a.RejectShare != 0.01 || a.Stops[0].Every.Mean() != 900 || a.Stops[0].Clock != sim.CycleClock {
		t.Errorf("read as %+v", a)
	}
	if len(s.Warnings) != 3 {
		t.Errorf("each range is warned of once: %q", s.Warnings)
	}
}

func TestFiniteSupplyAndDefaults(t *testing.T) {
	s := read(t, "line: [{station: a, from: {supply: 252000 blisters}, cycle: 1 s}, {station: b, takes: 2 blisters, gives: 1 carton, cycle: 1 s}]\n")
	if s.Line.Stations[0].Supply != 252000 || s.Stations[0].GivesUnit != "blisters" {
		t.Errorf("%+v %+v", s.Line.Stations[0], s.Stations[0])
	}
	if s.Answer.Unit != "cartons" || !slices.Equal(s.Answer.CountedAfter, []int{1}) || s.Answer.Per != "hour" {
		t.Errorf("answer %+v", s.Answer)
	}
	if want := (scenario.Run{Measure: 8 * sim.Hour, Replications: 40, Confidence: 0.95, Seed: 1}); s.Run != want {
		t.Errorf("run %+v, want %+v", s.Run, want)
	}
}
