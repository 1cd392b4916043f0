package scenario_test

import (
	"slices"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/scenarios"
	"tuckline/sim"
)

// example reads one of the example files.
func example(t *testing.T, name string, sets ...string) *scenario.Scenario {
	t.Helper()
	text, err := scenarios.FS.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	s, err := scenario.Read(name, text, scenario.Options{Sets: sets})
	if err != nil {
		t.Fatalf("%s:\n%v", name, err)
	}
	return s
}

func TestFirstLine(t *testing.T) {
	s := example(t, "first-line.yaml")
	if got := s.Line.Stations[0]; got.Gives != 4 || got.RejectShare != 0.01 || got.Cycle.Mean() != 60e6/45.0 {
		t.Errorf("the blister machine was read as %+v", got)
	}
	if got := s.Line.Buffers[0]; got.Holds != 240 || got.From[0] != "blister machine" {
		t.Errorf("the store was read as %+v", got)
	}
	stop := s.Line.Stations[1].Stops[0]
	if stop.Clock != sim.PieceClock || stop.Every.Mean() != 600 || stop.Lasts.Mean() != 60e6 || stop.Crew.Crew != "operators" {
		t.Errorf("the stop of the cartoner was read as %+v", stop)
	}
	if s.Answer.Unit != "cartons" || !slices.Equal(s.Answer.CountedAfter, []int{1}) || s.Run.WarmUp != sim.Hour {
		t.Errorf("answer %+v, run %+v", s.Answer, s.Run)
	}
}
