package scenario_test

import (
	"os"
	"reflect"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// refLine is the reference line as the benchmarks of package sim build it.
func refLine(t *testing.T, web, packer, more sim.Micros) sim.Line {
	exp := func(mean sim.Micros) sim.Law { return must(t)(sim.Exponential(float64(mean))) }
	logn := func(mean sim.Micros, cv float64) sim.Law { return must(t)(sim.Lognormal(float64(mean), cv)) }
	nobody := sim.Work{Priority: 5}
	return sim.Line{
		Stations: []sim.Station{
			{
				Name: "web", Takes: 1, Gives: 4, Cycle: sim.Fixed(float64(web)), RejectShare: 0.004,
				AfterStop: []sim.ScrapRule{{Cycles: 6}},
				Stops: []sim.Stop{
					{Name: "minor stop", Every: exp(20 * sim.Minute), Clock: sim.RunningClock, Lasts: logn(90*sim.Second, 0.8), Crew: nobody},
					{Name: "breakdown", Every: exp(90 * sim.Minute), Clock: sim.RunningClock, Lasts: logn(6*sim.Minute, 1), Class: sim.Breakdown, Crew: nobody},
					{Name: "reel", Every: sim.Fixed(float64(45 * sim.Minute)), Clock: sim.RunningClock, Lasts: sim.Fixed(float64(120 * sim.Second)), Class: sim.MaterialChange, Crew: nobody},
				},
			},
			{
				Name: "cartoner", From: "buffer 1", Takes: 2, Gives: 1, Cycle: sim.Fixed(480_000), RejectShare: 0.003,
				Stops: []sim.Stop{
					{Name: "minor stop", Every: exp(12 * sim.Minute), Clock: sim.RunningClock, Lasts: logn(45*sim.Second, 0.7), Crew: nobody},
				},
				Materials: []sim.Material{{Name: "blanks", Amount: 3000, PerCycle: 1, Refill: 3000, Lasts: sim.Fixed(float64(20 * sim.Second)), Crew: nobody}},
			},
			{
				Name: "packer", From: "buffer 2", Takes: 1, Gives: 1, Cycle: sim.Fixed(float64(packer)),
				Group: sim.Group{Every: 12, Adds: more},
				Stops: []sim.Stop{
					{Name: "minor stop", Every: exp(60 * sim.Minute), Clock: sim.RunningClock, Lasts: logn(4*sim.Minute, 1), Crew: nobody},
				},
			},
		},
		Buffers: []sim.Buffer{
			{Name: "buffer 1", From: []string{"web"}, Holds: 400},
			{Name: "buffer 2", From: []string{"cartoner"}, Holds: 30},
		},
	}
}

func must(t *testing.T) func(l sim.Law, err error) sim.Law {
	return func(l sim.Law, err error) sim.Law {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
}

// TestReferenceLines holds the files of the reference lines against the lines
// that the benchmarks run.
func TestReferenceLines(t *testing.T) {
	for file, want := range map[string]sim.Line{
		"reference-line.yaml":   refLine(t, 600_000, 400_000, 3*sim.Second),
		"reference-line-w.yaml": refLine(t, 900_000, 200_000, sim.Second),
	} {
		text, err := os.ReadFile("../../testdata/" + file)
		if err != nil {
			t.Fatal(err)
		}
		s, err := scenario.Read(file, text, scenario.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(s.Line, want) {
			t.Errorf("%s was read as\n%+v\nwant\n%+v", file, s.Line, want)
		}
		if s.Run.WarmUp != sim.Hour || s.Run.Measure != 8*sim.Hour {
			t.Errorf("%s: run is %+v", file, s.Run)
		}
	}
}
