package scenario_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

func lasts(t *testing.T, law string) sim.Law {
	t.Helper()
	return read(t, "line: [{station: a, cycle: 1 s, stops: {jam: {every: 900 cycles, lasts: "+law+"}}}]\n").Line.Stations[0].Stops[0].Lasts
}

// TestLaws reads every law; the expected mean and cv in seconds follow from the
// parameters by the textbook formulas named beside them.
func TestLaws(t *testing.T) {
	for _, c := range []struct {
		text, kind string
		mean, cv   float64
	}{
		{"90 s", "fixed", 90, 0},
		{"{dist: exponential, mean: 90 s}", "exponential", 90, 1},
		{"{dist: erlang, mean: 90 s, k: 4}", "erlang", 90, 0.5}, // 1/√k
		{"{dist: gamma, mean: 90 s, cv: 0.7}", "gamma", 90, 0.7},
		{"{dist: lognormal, mean: 1.5 min, cv: 0.9}", "lognormal", 90, 0.9},
		{"{dist: weibull, mean: 90 s, cv: 0.7}", "weibull", 90, 0.7},
		{"{dist: weibull, shape: 1, scale: 90 s}", "weibull", 90, 1}, // shape 1 is exponential
		{"{dist: normal, mean: 90 s, cv: 0.3}", "normal", 90, 0.3},
		{"{dist: uniform, low: 60 s, high: 120 s}", "uniform", 90, 60 / math.Sqrt(12) / 90},
		{"{dist: triangular, low: 60 s, likely: 90 s, high: 120 s}", "triangular", 90, 60 / math.Sqrt(24) / 90},
		{"{dist: geometric, mean: 10 s, step: 1 s}", "geometric", 10, math.Sqrt(0.9)}, // √(1−p), p = step/mean
		{"{dist: empirical, values: {1 s: 0.2, 6 s: 0.5, 8 s: 0.3}}", "empirical", 5.6, math.Sqrt(0.2*4.6*4.6+0.5*0.4*0.4+0.3*2.4*2.4) / 5.6},
		{"{mixture: [{weight: 0.97, dist: exponential, mean: 90 s}, {weight: 0.03, dist: exponential, mean: 1080 s}]}", "mixture", 0.97*90 + 0.03*1080, 0},
		{"{dist: exponential, mean: 90 s, plus: 10 s}", "exponential", 100, 0.9}, // sd 90 on mean 100
	} {
		law := lasts(t, c.text)
		if law.Kind() != c.kind || math.Abs(law.Mean()-c.mean*1e6) > 1 {
			t.Errorf("%s was read as %v with mean %v", c.text, law, law.Mean())
		}
		if c.kind != "mixture" && math.Abs(law.CV()-c.cv) > 1e-6 {
			t.Errorf("%s has cv %v, want %v", c.text, law.CV(), c.cv)
		}
	}
}

// TestClocks reads what a stop is counted on.
func TestClocks(t *testing.T) {
	for text, want := range map[string]struct {
		clock sim.Clock
		mean  float64
	}{
		"900 cycles":     {sim.CycleClock, 900},
		"1000 cartons":   {sim.PieceClock, 1000},
		"20 min running": {sim.RunningClock, 1200e6},
		"{dist: exponential, mean: 20 h calendar}":           {sim.CalendarClock, 72000e6},
		"{dist: geometric, mean: 100 cycles}":                {sim.CycleClock, 100},
		"{dist: uniform, low: 10 min, high: 20 min running}": {sim.RunningClock, 900e6},
	} {
		s := read(t, "line: [{station: a, cycle: 1 s, gives: 2 cartons, stops: {jam: {every: "+text+", lasts: 9 s}}}]\n")
		stop := s.Line.Stations[0].Stops[0]
		if stop.Clock != want.clock || math.Abs(stop.Every.Mean()-want.mean) > 1e-3 {
			t.Errorf("%s was read as %v on clock %d", text, stop.Every, stop.Clock)
		}
	}
}

func TestEmpiricalFromFile(t *testing.T) {
	files := func(name string) ([]byte, error) {
		if name != "stops.csv" {
			return nil, errors.New("no such file")
		}
		return []byte("cause;lasts (min)\njam;1\njam;1\njam;4\nbreak;2\n"), nil
	}
	text := func(file, column string) []byte {
		return []byte("tuckline: 1\nline: [{station: a, cycle: 1 s, stops: {jam: {every: 900 cycles, lasts: {dist: empirical, file: " + file + ", column: " + column + "}}}}]\n")
	}
	s, err := scenario.Read("x.yaml", text("stops.csv", "lasts (min)"), scenario.Options{Files: files})
	if err != nil {
		t.Fatal(err)
	}
	if mean := s.Line.Stations[0].Stops[0].Lasts.Mean(); math.Abs(mean-120e6) > 1e-3 { // (1+1+4+2)/4 = 2 min
		t.Errorf("mean %v", mean)
	}
	for _, c := range []struct{ file, column, want string }{
		{"other.csv", "lasts (min)", `the file "other.csv" cannot be read: no such file`},
		{"stops.csv", "lasts", `the file "stops.csv" has no column "lasts"; it has cause, lasts (min)`},
		{"stops.csv", "cause", `stops.csv, row 2: "jam" does not begin with a number`},
	} {
		_, err := scenario.Read("x.yaml", text(c.file, c.column), scenario.Options{Files: files})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got %v, want %s", err, c.want)
		}
	}
}
