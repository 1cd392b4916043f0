package study

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

func namedLine() (*scenario.Scenario, []sim.Place) {
	s := &scenario.Scenario{Line: sim.Line{Stations: []sim.Station{{Name: "blister machine"}, {Name: "cartoner"}}}}
	return s, []sim.Place{{Name: "transfer store"}}
}

func TestMeasuresAreFoundByTheirWords(t *testing.T) {
	s, places := namedLine()
	for words, of := range map[string]int{
		"good output": -1, "cartoner starved": 1, "blister machine waiting for crew": 0,
		"stops of  cartoner": 1, "transfer store full": 0, " crew busy ": -1,
	} {
		found, err := parseMeasure(words, s, places)
		if err != nil || found.of != of {
			t.Errorf("%q: got %d, %v, want %d", words, found.of, err, of)
		}
	}
}

func TestUnknownMeasureNamesTheNearest(t *testing.T) {
	s, places := namedLine()
	for words, near := range map[string]string{
		"cartner starved": "cartoner starved", "good outputs": "good output", "transfer store ful": "transfer store full",
		"stop of cartoner": "stops of cartoner", "restart of blister machine": "restarts of blister machine",
	} {
		_, err := parseMeasure(words, s, places)
		if err == nil || !strings.Contains(err.Error(), `did you mean "`+near+`"?`) {
			t.Errorf("%q: got %v, want %q named", words, err, near)
		}
	}
}

func TestMeasureFarFromAllNamesNone(t *testing.T) {
	s, places := namedLine()
	_, err := parseMeasure("colour of the wall", s, places)
	if err == nil || strings.Contains(err.Error(), "did you mean") || !strings.Contains(err.Error(), "schema --measures") {
		t.Errorf("got %v", err)
	}
}
