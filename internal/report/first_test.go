package report

import (
	"testing"

	"tuckline/internal/study"
	"tuckline/sim"
)

func TestWordsOfCauses(t *testing.T) {
	for want, cause := range map[string]study.Cause{
		"minor stop of blister machine 1 and blister machine 2": {State: sim.Down, Stop: "minor stop", Stations: []string{"blister machine 1", "blister machine 2"}},
		"breakdown of cartoner":                                 {State: sim.Down, Stop: "breakdown", Stations: []string{"cartoner"}},
		"starved: waits for pieces":                             {State: sim.Starved},
	} {
		if got := causeWords(cause); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
