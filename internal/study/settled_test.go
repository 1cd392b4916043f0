package study

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/estimate"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

func readText(t *testing.T, text string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("line.yaml", []byte(text), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// longBelt delivers nothing for the 10 min that its belt takes, then a piece a second.
const longBelt = `tuckline: 1
title: A long belt
run: {warm-up: auto, measure: 2 h, replications: 2}
line:
  - {station: press, cycle: 1 s}
  - {buffer: oven, holds: unlimited, transit: 10 min}
  - {station: wrapper, cycle: 0.5 s}
`

// By hand: the pilot runs for 4 h in 300 intervals of 48 s; 600 s are 12.5 of them. Batches of
// five: two of nothing, one of part, then all alike. MSER-5 leaves out three batches, 15
// intervals, 720 s.
func TestWarmUpOfALongBelt(t *testing.T) {
	s := readText(t, longBelt)
	o, err := Run(t.Context(), s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if want := (WarmUp{Found: true, Length: 720 * sim.Second}); o.WarmUp != want {
		t.Errorf("found %+v, by hand %+v", o.WarmUp, want)
	}
	if o.Results.WarmUpHours != 0.2 || o.Results.MeasuredHours != 2 || o.Results.Output.Total.Mean != 7200 {
		t.Errorf("warm-up %v h, window %v h, output %v: by hand 0.2 h, 2 h, 7200",
			o.Results.WarmUpHours, o.Results.MeasuredHours, o.Results.Output.Total.Mean)
	}
	if o.Results.ScenarioHash != s.Hash() || s.Run.WarmUp != 0 {
		t.Error("the scenario must stay as it was, and so its hash")
	}
}

// A belt of 126 min settles a little behind half of a pilot of 4 h: the window is doubled,
// once, to 4 h. In a pilot of 8 h they are 78.75 intervals of 96 s: 16 batches are left out.
func TestWarmUpDoublesTheWindow(t *testing.T) {
	s := readText(t, longBelt)
	s.Line.Buffers[0].Transit = 126 * sim.Minute
	o, err := Run(t.Context(), s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := WarmUp{Found: true, Length: 16 * 5 * 96 * sim.Second, Doubled: true}
	if o.WarmUp != want || o.Results.MeasuredHours != 4 || len(o.Results.Warnings) == 0 {
		t.Errorf("found %+v in %v h, warned %q; by hand %+v in 4 h", o.WarmUp, o.Results.MeasuredHours, o.Results.Warnings, want)
	}
}

// The pilot has random numbers of its own and any number of workers finds the same.
func TestPilotIsTheSameForAnyWorkers(t *testing.T) {
	s := readText(t, scattered)
	s.Run.AutoWarmUp = true
	one, err := Run(t.Context(), s, Options{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	three, err := Run(t.Context(), s, Options{Workers: 3})
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(asText(t, one), asText(t, three)); d != "" {
		t.Error(d)
	}
	if pilotSeed(1) == pilotSeed(2) || pilotSeed(1) == 1 {
		t.Error("the pilot shares its random numbers")
	}
}

func asText(t *testing.T, o *Outcome) string {
	t.Helper()
	text, err := json.Marshal(o.Results)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

const scattered = `tuckline: 1
title: Stops of all lengths
run: {warm-up: 1 h, measure: 8 h, replications: {half-width: 3 %, at most: 400}, seed: 3}
line:
  - station: press
    cycle: 1 s
    stops:
      jam: {every: {dist: exponential, mean: 30 min running}, lasts: {dist: exponential, mean: 10 min}}
`

// The rule looks at 20, 28, 40, 56 … and ends at the first look that meets half-width / mean
// <= g / (1 + g): here the looks before it, computed from the same records, do not.
func TestRunUntilPrecise(t *testing.T) {
	s := readText(t, scattered)
	o, err := Run(t.Context(), s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	looks := []int{20, 28, 40, 56, 79, 111, 156, 219, 307, 400}
	n := slices.Index(looks, len(o.Records))
	if n < 1 || !o.Precision.Reached || o.Precision.Looks != n+1 || o.Interrupted {
		t.Fatalf("%d replications after %d looks, reached %v", len(o.Records), o.Precision.Looks, o.Precision.Reached)
	}
	for i, look := range looks[:n+1] {
		iv := estimate.Of(o.Shifts[:look], 0.95)
		if meets := iv.HalfWidth() <= 0.03/1.03*math.Abs(iv.Mean); meets != (i == n) {
			t.Errorf("look at %d: half-width %v of %v", look, iv.HalfWidth(), iv.Mean)
		}
	}
}

func TestHalfWidthOutOfReach(t *testing.T) {
	s := readText(t, scattered)
	s.Run.HalfWidth, s.Run.AtMost, s.Run.Replications = 0.0001, 25, 25
	o, err := Run(t.Context(), s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(o.Records) != 25 || o.Precision.Reached || o.Interrupted || !slices.ContainsFunc(o.Results.Warnings, func(w string) bool {
		return w == "The half-width asked for, 0.01 % of the mean, was not reached with 25 runs."
	}) {
		t.Errorf("%d replications, %+v, %q", len(o.Records), o.Precision, o.Results.Warnings)
	}
}

func TestPartsHaveAFixedNumber(t *testing.T) {
	_, err := Run(t.Context(), readText(t, scattered), Options{From: 1, To: 20, Part: true})
	var input *InputError
	if !errors.As(err, &input) {
		t.Errorf("%v", err)
	}
}
