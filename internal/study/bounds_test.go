package study

import (
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/sim"
)

var typeOfLaw = reflect.TypeFor[sim.Law]()

func station(name, from string, takes, gives int64) sim.Station {
	return sim.Station{Name: name, From: from, Takes: takes, Gives: gives}
}

func compareLines(t *testing.T, want, got sim.Line) {
	t.Helper()
	ignoreLaws := cmp.FilterPath(func(p cmp.Path) bool { return p.Last().Type() == typeOfLaw }, cmp.Ignore())
	if diff := cmp.Diff(want, got, ignoreLaws); diff != "" {
		t.Error(diff)
	}
}

func belted() sim.Line {
	line := sim.Line{
		Stations: []sim.Station{station("web", "", 1, 4), station("cartoner", "store", 3, 1), station("label", "table", 1, 1)},
		Buffers: []sim.Buffer{
			{Name: "belt", From: []string{"web"}, Holds: 129, Transit: 20 * sim.Second, Conveyor: true},
			{Name: "store", From: []string{"belt"}, Holds: 720, StopUpstream: 700, Restart: sim.Level{On: true, Level: 504}, Start: sim.Level{On: true, Level: 144}, AtStart: 100},
			{Name: "table", From: []string{"cartoner"}, Holds: 30},
		},
	}
	line.Stations[1].Steps = []sim.SpeedStep{{From: 360, BackAt: 288, Cycle: 600_000}}
	return line
}

func TestWithoutBuffersKeepsBelts(t *testing.T) {
	want := sim.Line{
		Stations: []sim.Station{station("web", "", 1, 4), station("cartoner", "belt", 3, 1), station("label", "cartoner", 1, 1)},
		Buffers:  []sim.Buffer{{Name: "belt", From: []string{"web"}, Holds: 129, Transit: 20 * sim.Second, Conveyor: true}},
	}
	line := belted()
	compareLines(t, want, withoutBuffers(line))
	compareLines(t, belted(), line) // the line itself stays as it was
}

func TestWithoutLimit(t *testing.T) {
	line := belted()
	want := belted()
	want.Buffers[1] = sim.Buffer{Name: "store", From: []string{"belt"}, Holds: sim.Unlimited, AtStart: 100}
	want.Buffers[2].Holds = sim.Unlimited
	compareLines(t, want, withoutLimit(line))
	compareLines(t, belted(), line)
}

// Where two stations feed a buffer, the fewest places that cannot lock stay; package
// sim knows how many that are.
func TestWithoutBuffersAtAMerge(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{station("one", "", 1, 4), station("two", "", 1, 6), station("cartoner", "store", 3, 1)},
		Buffers:  []sim.Buffer{{Name: "store", From: []string{"one", "two"}, Holds: 720, Restart: sim.Level{On: true, Level: 500}}},
	}
	want := line
	want.Buffers = []sim.Buffer{{Name: "store", From: []string{"one", "two"}, Holds: sim.Smallest}}
	compareLines(t, want, withoutBuffers(line))

	line.Buffers[0].Transit = sim.Second
	want.Buffers = []sim.Buffer{{Name: "store", From: []string{"one", "two"}, Holds: sim.Smallest, Transit: sim.Second}}
	compareLines(t, want, withoutBuffers(line))
}

// Two consumers of one buffer compete for it; a hand-over has one consumer.
func TestWithoutBuffersAtACompetition(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{station("web", "", 1, 4), station("left", "store", 3, 1), station("right", "store", 2, 1)},
		Buffers:  []sim.Buffer{{Name: "store", From: []string{"web"}, Holds: 720}},
	}
	want := line
	want.Buffers = []sim.Buffer{{Name: "store", From: []string{"web"}, Holds: sim.Smallest}}
	compareLines(t, want, withoutBuffers(line))
}

// The places of an assembly are taken away one by one; whoever goes first keeps going first.
func TestWithoutBuffersAtAnAssembly(t *testing.T) {
	cartoner := station("cartoner", "store", 3, 1)
	cartoner.Also = []sim.Input{{From: "leaflets", Takes: 1}}
	line := sim.Line{
		Stations: []sim.Station{station("one", "", 1, 4), station("two", "", 1, 4), station("folder", "", 1, 1), cartoner},
		Buffers: []sim.Buffer{
			{Name: "small", From: []string{"one"}, Holds: 10},
			{Name: "store", From: []string{"small", "two"}, Holds: 720, Turns: sim.Turns{First: "small"}},
			{Name: "leaflets", From: []string{"folder"}, Holds: 50},
		},
	}
	want := line
	want.Stations = append([]sim.Station(nil), line.Stations...)
	want.Stations[3].Also = []sim.Input{{From: "folder", Takes: 1}}
	want.Buffers = []sim.Buffer{{Name: "store", From: []string{"one", "two"}, Holds: sim.Smallest, Turns: sim.Turns{First: "one"}}}
	compareLines(t, want, withoutBuffers(line))
	if from := line.Stations[3].Also[0].From; from != "leaflets" {
		t.Errorf("the line itself has changed: %s", from)
	}
}

// A split keeps the smallest places of its branches, and its rule.
func TestWithoutBuffersAtASplit(t *testing.T) {
	source := station("source", "", 1, 1)
	source.Sends = sim.Sends{To: []string{"a", "b"}, Rule: sim.FewestPieces}
	line := sim.Line{
		Stations: []sim.Station{source, station("one", "a", 1, 1), station("two", "b", 1, 1)},
		Buffers:  []sim.Buffer{{Name: "a", From: []string{"source"}, Holds: 9}, {Name: "b", From: []string{"source"}, Holds: 9}},
	}
	want := line
	want.Buffers = []sim.Buffer{{Name: "a", From: []string{"source"}, Holds: sim.Smallest}, {Name: "b", From: []string{"source"}, Holds: sim.Smallest}}
	compareLines(t, want, withoutBuffers(line))
}

// A store beside the line with a slow way back recovers less than one without limit: the end of the span
// has no rates, no stops and no carrying, only the pieces that the store held at the start.
func TestWithoutLimitStoresGiveWhatIsAsked(t *testing.T) {
	full := sim.Buffer{
		Name: "store", From: []string{"web"}, Holds: 600, Kind: sim.HandMagazine, LastIn: true, Keeps: 20, In: 3, Out: 4, Surplus: 5,
		StopUpstream: 500, Restart: sim.Level{On: true, Level: 300}, Start: sim.Level{On: true, Level: 3}, Transit: 6, AtStart: 7,
		Stops: []sim.Stop{{Name: "jam"}}, Hand: sim.Hand{Load: 30}, Returns: sim.Returns{Share: 0.5}, Turns: sim.Turns{First: "web"},
	}
	belt := sim.Buffer{Name: "belt", From: []string{"store"}, Holds: 100, Conveyor: true, Full: sim.Sensor{On: true, At: 9}}
	got := withoutLimit(sim.Line{Buffers: []sim.Buffer{full, belt}}).Buffers
	want := []sim.Buffer{{Name: "store", From: []string{"web"}, Holds: sim.Unlimited, Transit: 6, AtStart: 7, Turns: sim.Turns{First: "web"}}, belt}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v", got)
	}
}
