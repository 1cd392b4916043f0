package study

import (
	"math"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// working is a small line with two shifts, a break, start-up and tidy, and a shift of its own for each replication.
const working = `tuckline: 1
answer: {in: cartons, counted after: cartoner, per: week}
calendar:
  days: Mon-Fri
  shifts:
    early: {from: "06:00", to: "14:00", breaks: [{at: "10:00", lasts: 30 min}], start-up: 20 min, tidy: 10 min}
    late: {from: "14:00", to: "22:00", breaks: [{at: "18:00", lasts: 30 min}]}
  cleaning: {on: Fri, at: "20:00", lasts: 2 h}
run: {measure: 1 week, replications: 4, seed: 3}
key figures: {minor stop shorter than: 2 min}
crews: {operators: 1}
line:
  - station: web
    cycle: 30/min
    gives: 4 blisters
    rejects: 1 %
    consumes:
      foil: {reel: {holds: 9000 lengths}, per cycle: 1 length, change: 6 min, crew: operators}
    stops:
      jam: {every: {dist: exponential, mean: 10 min running}, lasts: {dist: lognormal, mean: 90 s, cv: 2}, crew: operators}
      service: {every: 7 h calendar, lasts: 50 min, class: external}
  - buffer: store
    holds: 240 blisters
  - station: cartoner
    cycle: 70/min
    takes: 2 blisters
    gives: 1 carton
    stops:
      jam: {every: {dist: exponential, mean: 8 min running}, lasts: {dist: lognormal, mean: 60 s, cv: 2}, crew: operators}
`

func read(t *testing.T, text string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("working.yaml", []byte(text), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A week of two shifts: by hand 80 h scheduled, 10 breaks of 30 min, 5 start-ups of 20 min and 5 tidies of 10 min, cleaning 2 h. Stops
// that go on in a break (service lasts 50 min) count once: what is left of the states is the planned busy time, at every station.
func TestKeyFiguresOfAWorkingWeek(t *testing.T) {
	s := read(t, working)
	o := mustRun(t, s, Options{})
	f := viewOf(s, o.Model, o.Records).figuring()
	usual := s.KeyFigures.Counting
	every := usual
	every.NotBusy = scenario.BusyWords
	nothing := usual
	nothing.NotBusy, nothing.MaterialIn = nil, scenario.FromPerformance
	for r := range o.Records {
		record := &o.Records[r]
		overlaps := false
		for i := range s.Line.Stations {
			times := f.clock.times(record, i)
			if times.heatUp != 0 {
				t.Errorf("replication %d, station %d: %v of planned stops are none of the calendar", r, i, times.heatUp)
			}
			for word, want := range map[string]sim.Micros{"breaks": 5 * sim.Hour, "start-up": 100 * m, "tidy": 50 * m, "cleaning": 2 * sim.Hour} {
				if times.planned[word] != want {
					t.Errorf("%s: %v, want %v", word, times.planned[word], want)
				}
			}
			for _, c := range []struct {
				by   scenario.Counting
				want float64
			}{{usual, 4800 - 300 - 120}, {every, 4800 - 300 - 120 - 150}, {nothing, 4800}} {
				counted := f.station(record, i, c.by)
				sum := counted.Times.Production + counted.Times.Setup + counted.Times.Delay + counted.Times.Down
				if counted.Times.PlannedBusy != c.want || math.Abs(sum-c.want) > 1e-6 {
					t.Errorf("station %d, without %v: %v planned busy, elements %v, want %v", i, c.by.NotBusy, counted.Times.PlannedBusy, sum, c.want)
				}
				oee, _ := keyfigure.ISOOEE(counted.Times, counted.Counts)
				good := float64(goodGiven(&record.Stations[i]))
				if got := oee * counted.Times.PlannedBusy / counted.Counts.PlannedRunTime; math.Abs(got-good) > 1e-6*good {
					t.Errorf("station %d: OEE gives back %v of %v good pieces", i, got, good)
				}
			}
			var stops sim.Micros
			for k := range record.Stations[i].Stops {
				stops += stopped(&record.Stations[i].Stops[k])
			}
			overlaps = overlaps || stops > times.stops+times.material
		}
		if !overlaps {
			t.Error("no stop goes on in a break: the test looks at nothing")
		}
	}
}

// Per scheduled hour and per run hour of the same week.
func TestGoodOutputPerHour(t *testing.T) {
	s := read(t, working)
	o := mustRun(t, s, Options{})
	k := o.Results.KeyFigures
	for _, one := range k.Line {
		switch one.Key {
		case "good_per_scheduled_hour":
			if want := o.Results.Output.PerHour; math.Abs(one.Value.Mean-want.Mean) > 1e-6*want.Mean {
				t.Errorf("%v per scheduled hour, the answer says %v", one.Value.Mean, want.Mean)
			}
		case "good_per_run_hour":
			if one.Value.Mean <= o.Results.Output.PerHour.Mean {
				t.Errorf("%v per run hour is not more than per scheduled hour", one.Value.Mean)
			}
		}
	}
}

// An agreed run of scheduled hours: 8 h from 1 h after the start lie in the early and the late shift of the first day; by hand the clock
// says 07:00 to 15:00 of which 40 min are break and tidy. Without a stop the line makes all of the rest, 440 min of 60 cartons.
func TestAgreedRunOfScheduledHours(t *testing.T) {
	text := strings.Replace(working, "run: {measure", "agreement: {efficiency: 85 %, run: 8 h}\nrun: {measure", 1)
	text = strings.Replace(text, "rejects: 1 %", "rejects: 0 %", 1)
	text = strings.Replace(text, "holds: 9000 lengths", "holds: 9000000 lengths", 1)
	s := read(t, text)
	for i := range s.Line.Stations {
		s.Line.Stations[i].Stops = nil
	}
	a := accepted(t, s, AcceptanceOptions{Runs: 2})
	if got := a.AsEntered; math.Abs(got.Shown.Mean-1) > 0.002 || math.Abs(got.True.Mean-1) > 0.002 {
		t.Errorf("the run shows %v, in the long run %v, want 1", got.Shown.Mean, got.True.Mean)
	}
	nearly(t, "what the run must make", a.Agreement.Needed, 0.85*440*60)
}

// An acceptance run has no changeover: a line with orders is looked at as one that makes the same product on and on.
func TestAgreedRunWithoutOrders(t *testing.T) {
	text := strings.Replace(working, "run: {measure", "agreement: {efficiency: 85 %, run: 2 h}\nrun: {measure", 1)
	orders := "orders: [{batch: 24000 blisters, product: ALDER, times: without end}]\nchangeover: {same product: {lasts: 1 h}}\nline:"
	o := AcceptanceOptions{Runs: 5, Truly: []float64{0.8}}
	plain := accepted(t, read(t, text), o)
	s := read(t, strings.Replace(text, "\nline:", "\n"+orders, 1))
	ordered := accepted(t, s, o)
	if plain.AsEntered != ordered.AsEntered || len(ordered.Warnings) != len(plain.Warnings)+1 || len(s.Line.Orders.List) != 1 {
		t.Errorf("got %+v with orders, %+v without", ordered, plain)
	}
}

// Two stations one behind the other that are as fast limit the line together, but make the same cartons: a line that never
// stops has an OEE of 100 %, not half of it; and so have two such lines with one machine each side by side.
func TestOEEOfStationsThatLimitTogether(t *testing.T) {
	one := `tuckline: 1
answer: {in: cartons, counted after: packer}
run: {measure: 10 h, replications: 2}
`
	row := "[{station: filler, cycle: 60/min, gives: 1 carton}, {station: packer, cycle: 60/min, takes: 1 carton, gives: 1 carton}]"
	for _, text := range []string{
		one + "line: " + row,
		one + "lines: {a: " + row + ", b: {like: a}}",
	} {
		o := mustRun(t, read(t, text), Options{})
		// Fillings end at 1, 2, … 35,999 s, cartons at 2, 3, … 35,999 s.
		for key, want := range map[string]float64{"oee": 35_998.0 / 36_000, "quality": 35_998.0 / 35_999} {
			at := slices.IndexFunc(o.Results.KeyFigures.Line, func(f result.KeyFigure) bool { return f.Key == key })
			if got := o.Results.KeyFigures.Line[at].Value.Mean; math.Abs(got-want) > 1e-9 {
				t.Errorf("%s is %v, by hand %v, in\n%s", key, got, want, text)
			}
		}
	}
}
