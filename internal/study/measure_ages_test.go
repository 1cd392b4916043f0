package study

import (
	"math"
	"testing"

	"tuckline/sim"
)

// A belt of 10 s between two stations of 2 s: every piece is 14 s in the line.
func TestTimeInLine(t *testing.T) {
	s := jamming()
	s.Line.Stations[0].Stops, s.Line.Stations[1].Stops = nil, nil
	s.Line.Stations[1].From = "belt"
	s.Line.Buffers = []sim.Buffer{{Name: "belt", From: []string{"web"}, Holds: 20, Transit: 10 * sim.Second, Conveyor: true}}
	out, err := Run(t.Context(), s, Options{Show: []string{"time in line"}})
	if err != nil {
		t.Fatal(err)
	}
	rows := out.Results.Measures
	for i, of := range []string{"mean", "P95", "P99", "longest"} {
		if len(rows) != 4 || rows[i].Of != of || math.Abs(rows[i].Value.Mean/14-1) > 0.005 || i == 0 && rows[i].Value.Mean != 14 {
			t.Fatalf("%s: got %+v", of, rows)
		}
	}
	if rows[0].Value.N != 3 || rows[0].Per != "piece, in seconds" {
		t.Errorf("got %+v", rows[0])
	}
}

// The share of a distribution in classes: 90 pieces of 10 s and 10 of 100 s.
func TestAgeNotExceeded(t *testing.T) {
	var a sim.Ages
	a.Add(10*sim.Second, 90)
	a.Add(100*sim.Second, 10)
	for share, want := range map[float64]float64{0.5: 10e6, 0.9: 10e6, 0.95: 100e6, 1: 100e6} {
		if got := ageNotExceeded(&a, share); math.Abs(got/want-1) > 0.005 {
			t.Errorf("%v: got %v, want %v", share, got, want)
		}
	}
}

// Two tests with exposures of 10 and 11 blisters in every replication: the course of the engine's test of exposures.
func TestExposureMeasures(t *testing.T) {
	s := jamming()
	for i := range s.Line.Stations {
		s.Line.Stations[i].Stops, s.Line.Stations[i].Cycle = nil, sim.Fixed(1e6)
	}
	s.Line.Stations[1].Checks = []sim.Check{{Name: "leak test", Every: sim.Fixed(4), Clock: sim.CycleClock, Takes: 2, Lasts: sim.Fixed(3e6)}}
	s.Run.Measure = 16 * sim.Second
	out, err := Run(t.Context(), s, Options{Show: []string{"exposure"}})
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]float64{
		"leak test of cartoner, mean": 10.5, "leak test of cartoner, P95": 11, "leak test of cartoner, most": 11,
	}
	if len(out.Results.Measures) != 3 {
		t.Errorf("got %+v", out.Results.Measures)
	}
	for _, m := range out.Results.Measures {
		if m.Value.Mean != want[m.Of] || m.Unit != "blisters" || m.Per != "test, in pieces" {
			t.Errorf("got %+v, want %v", m, want[m.Of])
		}
	}
}

// Nothing is followed that nobody asked for.
func TestAgesAreFollowedOnRequest(t *testing.T) {
	s := jamming()
	out, err := Run(t.Context(), s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range out.Records {
		if r := &out.Records[i]; r.Ages != nil || r.Stations[1].Pauses != nil || r.Stations[1].Because == nil {
			t.Errorf("got ages %v, pauses %v, because %v", r.Ages, r.Stations[1].Pauses, r.Stations[1].Because)
		}
	}
}
