package scenario_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

func filler(t *testing.T, words string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("f.yaml", []byte("tuckline: 1\n"+words+"\nline:\n  - {station: filler, cycle: 60/min}\n"), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestKeyFiguresAsWritten(t *testing.T) {
	usual := scenario.Counting{MinorUpTo: 5 * sim.Minute, MinorIn: scenario.FromPerformance, MaterialIn: scenario.FromAvailability, NotBusy: []string{"breaks", "cleaning"}}
	other := scenario.Counting{AtTopSpeed: true, MinorUpTo: 30 * sim.Second, MinorIn: scenario.FromAvailability, MaterialIn: scenario.FromPlanned, NotBusy: []string{"changeover"}}
	words := "planned run time from: top speed, minor stop shorter than: 30 s, minor stops count as: availability, material counts as: planned, not counted as planned busy time: changeover"
	fromTop, none := usual, usual
	fromTop.AtTopSpeed, none.NotBusy = true, nil
	for _, c := range []struct {
		words string
		want  scenario.KeyFigures
	}{
		{"", scenario.KeyFigures{Counting: usual}},
		{"key figures: {" + words + "}", scenario.KeyFigures{Counting: other}},
		{"key figures: {as reported: {OEE: 61 %, " + words + "}}", scenario.KeyFigures{Counting: usual, Reported: &scenario.Reported{Counting: other, OEE: 0.61}}},
		{"key figures: {as reported: {planned run time from: top speed}}", scenario.KeyFigures{Counting: usual, Reported: &scenario.Reported{Counting: fromTop}}},
		// What the other report does not say is as here.
		{"key figures: {" + words + ", as reported: {OEE: 50 %}}", scenario.KeyFigures{Counting: other, Reported: &scenario.Reported{Counting: other, OEE: 0.5}}},
		{"key figures: {not counted as planned busy time: nothing}", scenario.KeyFigures{Counting: none}},
	} {
		if diff := cmp.Diff(c.want, filler(t, c.words).KeyFigures); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.words, diff)
		}
	}
}

func TestAgreementAsWritten(t *testing.T) {
	for words, want := range map[string]scenario.Agreement{
		"": {},
		"agreement: {efficiency: 85 %, run: 8 h}":                                        {Efficiency: 0.85, Run: 8 * sim.Hour, From: sim.Hour},
		"agreement: {efficiency: 85 %, of: top speed, run: 8 h, scheduled from: 30 min}": {Efficiency: 0.85, OfTopSpeed: true, Run: 8 * sim.Hour, From: 30 * sim.Minute},
	} {
		if got := filler(t, words).Agreement; got != want {
			t.Errorf("%s: got %+v, want %+v", words, got, want)
		}
	}
}

// Records are made for the limits of minor stops, so a part with another limit is of another study; the rest of the key
// figures is computed from records and does not matter.
func TestHashOfKeyFigures(t *testing.T) {
	usual := filler(t, "").Hash()
	for words, same := range map[string]bool{
		"key figures: {minor stop shorter than: 5 min}":                 true,
		"key figures: {minor stop shorter than: 4 min}":                 false,
		"key figures: {as reported: {minor stop shorter than: 30 s}}":   false,
		"key figures: {as reported: {OEE: 61 %}}":                       true,
		"key figures: {planned run time from: top speed}":               true,
		"agreement: {efficiency: 85 %, run: 8 h, scheduled from: 30 s}": true,
	} {
		if got := filler(t, words).Hash(); (got == usual) != same {
			t.Errorf("%s: the hash is the same: %v", words, got == usual)
		}
	}
}
