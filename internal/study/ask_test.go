package study

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// namedLine is a blister machine that jams, a store, and a cartoner that jams and has a reel.
func namedLine(t *testing.T) (*scenario.Scenario, *sim.Model) {
	t.Helper()
	jam := sim.Stop{Name: "jam", Every: sim.Fixed(100), Lasts: sim.Fixed(1e7)}
	s := &scenario.Scenario{Line: sim.Line{
		Stations: []sim.Station{
			{Name: "blister machine", Takes: 1, Gives: 1, Cycle: sim.Fixed(1e6), Stops: []sim.Stop{jam}},
			{Name: "cartoner", From: "transfer store", Takes: 1, Gives: 1, Cycle: sim.Fixed(1e6), Stops: []sim.Stop{jam}},
		},
		Buffers: []sim.Buffer{{Name: "transfer store", From: []string{"blister machine"}, Holds: 10}},
	}}
	m, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	return s, m
}

func TestMeasuresAreFoundByTheirWords(t *testing.T) {
	s, m := namedLine(t)
	for words, of := range map[string]int{
		"good output": -1, "cartoner starved": 1, "blister machine waiting for crew": 0,
		"stops of  cartoner": 1, "transfer store full": 0, " crew busy ": -1,
		"stops of blister machine because of jam": 0, "stops of cartoner because of jam": 1, "free places needed at transfer store": 0,
	} {
		found, err := parseMeasure(words, s, m)
		if err != nil || found.of != of {
			t.Errorf("%q: got %d, %v, want %d", words, found.of, err, of)
		}
	}
}

func TestUnknownMeasureNamesTheNearest(t *testing.T) {
	s, m := namedLine(t)
	for words, near := range map[string]string{
		"cartner starved": "cartoner starved", "good outputs": "good output", "transfer store ful": "transfer store full",
		"stop of cartoner": "stops of cartoner", "restart of blister machine": "restarts of blister machine",
		"stops of cartoner because jam": "stops of cartoner because of jam",
	} {
		_, err := parseMeasure(words, s, m)
		if err == nil || !strings.Contains(err.Error(), `did you mean "`+near+`"?`) {
			t.Errorf("%q: got %v, want %q named", words, err, near)
		}
	}
}

func TestMeasureFarFromAllNamesNone(t *testing.T) {
	s, m := namedLine(t)
	_, err := parseMeasure("colour of the wall", s, m)
	if err == nil || strings.Contains(err.Error(), "did you mean") || !strings.Contains(err.Error(), "schema --measures") {
		t.Errorf("got %v", err)
	}
}
