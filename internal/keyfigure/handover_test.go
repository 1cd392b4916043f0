package keyfigure

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// A machine that gives 4 and one that takes 3: the larger less one, the last
// piece passes through; if room is reserved before the cycle, both less one.
// Hand computation: with a rest of 2, which is too few to take, 4 more must find room.
func TestHandOverPlaces(t *testing.T) {
	for _, test := range []struct {
		before bool
		want   int64
	}{{false, 3}, {true, 6}} {
		b := &build{}
		b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 4, BlocksBefore: test.before},
			scenario.Station{GivesUnit: "blisters"}, 60, 0)
		b.station(sim.Station{Name: "cartoner", From: "blister machine", Takes: 3, Gives: 1}, scenario.Station{}, 100, 0)
		b.Answer.CountedAfter = []int{1}
		f := Derive(&b.Scenario)
		if len(f.Places) != 1 {
			t.Fatalf("%d places, warnings %q", len(f.Places), f.Warnings)
		}
		p := f.Places[0]
		if p.Capacity != test.want || p.Kind != "hand-over" || p.Unit != "blisters" {
			t.Errorf("blocks before %v: %+v, want %d places", test.before, p, test.want)
		}
		near(t, "feed", p.Feed, 240)
		near(t, "drain", p.Drain, 300)
		if f.Way[0].Place || !f.Way[1].Place || f.Way[2].Place {
			t.Errorf("the hand-over stands between its neighbours: %+v", f.Way)
		}
	}
}

// Before a cartoner that lets empty pockets run through there are 2 × 3 − 1 places, and check says what for.
func TestHandOverBeforeEmptyPockets(t *testing.T) {
	for _, test := range []struct {
		pockets bool
		want    string
	}{
		{false, "2 places put by the program: the collating place of the machine"},
		{true, "5 places put by the program: one stack is collected beside one that waits for its pocket"},
	} {
		b := &build{}
		b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 1}, scenario.Station{GivesUnit: "blisters"}, 60, 0)
		b.station(sim.Station{Name: "cartoner", From: "blister machine", Takes: 3, Gives: 1}, scenario.Station{}, 21, 0)
		if test.pockets {
			b.Line.Stations[1].EmptyPockets = sim.EmptyPockets{On: true, Most: 2}
		}
		b.Answer.CountedAfter = []int{1}
		var text strings.Builder
		if err := Derive(&b.Scenario).Text(&text); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(strings.Join(strings.Fields(text.String()), " "), test.want) {
			t.Errorf("%q is not in\n%s", test.want, text.String())
		}
	}
}

// Lowmere writes a belt and a store; its last five stations hand over four times.
func TestWrittenPlacesAreNoHandOvers(t *testing.T) {
	kinds := map[string]int{}
	for _, p := range Derive(lowmere()).Places {
		kinds[p.Kind]++
	}
	if kinds["conveyor"] != 1 || kinds["buffer"] != 1 || kinds["hand-over"] != 4 {
		t.Errorf("%v", kinds)
	}
}
