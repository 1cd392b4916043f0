package study

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

const m = sim.Minute

// shiftOfTheWeb is a shift of 8 h of the web of the steady line, which gives 4 blisters a second, with a break of 30 min and a
// changeover. Of the reel change 10 min lie before the break and 5 in it; the jam was over after 4 min.
func shiftOfTheWeb(t *testing.T) (*scenario.Scenario, view) {
	t.Helper()
	s := steady()
	s.Run.WarmUp, s.Run.Measure = 0, 10*sim.Hour
	s.Line.Calendar.Spans = []sim.Span{
		{Lasts: 4 * sim.Hour},
		{Name: "break", Lasts: 30 * m, Line: sim.LineStands, Crews: sim.CrewsRest},
		{Lasts: 200 * m},
		{Name: "tidy", Lasts: 10 * m, Line: sim.LineStands},
		{Lasts: 16 * sim.Hour, Line: sim.LineOff, Crews: sim.CrewsAway, Shift: -1},
	}
	s.Line.Stations[0].Stops = []sim.Stop{
		{Name: "jam", Every: sim.Fixed(1e6), Lasts: sim.Fixed(1e6)},
		{Name: "reel", Every: sim.Fixed(1e6), Lasts: sim.Fixed(1e6), Class: sim.MaterialChange},
		{Name: "power cut", Every: sim.Fixed(1e6), Lasts: sim.Fixed(1e6), Class: sim.External},
	}
	s.KeyFigures.Counting = scenario.Counting{
		MinorUpTo: 5 * m, MinorIn: scenario.FromPerformance, MaterialIn: scenario.FromAvailability, NotBusy: []string{"breaks", "cleaning"},
	}
	model, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	web := sim.StationRecord{
		Cycles: 20000, ScrappedCycles: 100, Given: 79600, Scrapped: 400, Rejected: 800, Sampled: 40, Passed: 78760,
		Stops:     []sim.StopRecord{{Count: 1, Down: 4 * m}, {Count: 1, Waiting: 2 * m, Down: 6 * m}, {Count: 1, Down: 15 * m}},
		StoppedBy: []sim.StoppedBy{{Cause: 0, Down: 4 * m}, {Cause: 1, Waiting: 2 * m, Down: 6 * m}, {Cause: 2, Down: 10 * m}},
		Short:     []sim.Standstills{{Count: 7, Down: 4 * m, Blocked: 6 * m}},
	}
	web.States[sim.Running], web.States[sim.Down], web.States[sim.Waiting] = 340*m, 20*m, 2*m
	web.States[sim.Blocked], web.States[sim.Starved], web.States[sim.Changeover] = 30*m, 18*m, 30*m
	web.States[sim.PlannedStop], web.States[sim.OffShift] = 40*m, 120*m
	r := sim.Record{Replication: 1, Window: 600 * m, Scheduled: 480 * m, Stations: []sim.StationRecord{web, {Passed: 39000}}}
	return s, viewOf(s, model, []sim.Record{r})
}

func nearly(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// By hand, in minutes. Scheduled 480, without the break 450 are planned busy. Production 340 and the 10 of short
// standstills; set-up: the changeover and tidy, 40; delay: jam, power cut and reel, 22, less 4 short; down: 48 less 6 short.
func TestTimesByHand(t *testing.T) {
	s, v := shiftOfTheWeb(t)
	f := v.figuring()
	web := f.station(&v.records[0], 0, s.KeyFigures.Counting)
	if want := (keyfigure.ISOTimes{PlannedBusy: 450, Production: 350, Setup: 40, Delay: 18, Down: 42}); web.Times != want {
		t.Errorf("got %+v, want %+v", web.Times, want)
	}
	// 80,000 blisters made, 78,760 good; a blister is planned to take 0.25 s = 1/240 min.
	for key, want := range map[string]float64{
		"availability":             350.0 / 450,
		"performance":              80000.0 / 240 / 350,
		"quality":                  78760.0 / 80000,
		"oee":                      78760.0 / 240 / 450,
		"nee":                      390.0 / 450 * 80000 / 240 / 350 * 78760 / 80000,
		"allocation_efficiency":    408.0 / 450,
		"utilisation_efficiency":   350.0 / 408,
		"technical_efficiency_iso": 350.0 / 368,
		"setup_ratio":              40.0 / 390,
		// EN: operating time 480 − 40 planned − 30 changeover = 410; outside the machine 48 of waiting and 8 of the power cut.
		"en_quality": 78760.0 / 80000, "en_performance": 80000.0 / 410 / 240, "en_efficiency": 78760.0 / 410 / 240,
		"en_availability": 340.0 / 410, "en_quality_output": 78760.0 / 410,
		"technical_efficiency_en": 78760.0 / 354 / 240, "en_technical_availability": 340.0 / 354,
		"en_technical_quality_output": 78760.0 / 354,
		"good_per_scheduled_hour":     78760.0 / 8, "good_per_run_hour": 78760.0 / 340 * 60,
	} {
		nearly(t, key, f.valueOf(key, []keyfigure.Counted{web}).Mean, want)
	}
	// The line at its web: a blister is worth half a carton, 39,000 cartons were good; outside the line only the power cut.
	line := f.line(&v.records[0], s.KeyFigures.Counting)
	for key, want := range map[string]float64{
		"availability": 350.0 / 450, "performance": 80000.0 / 240 / 350, "quality": 39000.0 / 40000, "oee": 39000.0 / 120 / 450,
		"technical_efficiency_en": 39000.0 / (402 * 120), "en_technical_availability": 340.0 / 402,
		"good_per_scheduled_hour": 39000.0 / 8, "good_per_run_hour": 39000.0 / 340 * 60, "en_quality_output": 39000.0 / 410,
	} {
		nearly(t, "line "+key, f.valueOf(key, []keyfigure.Counted{line}).Mean, want)
	}
}

// Each choice by hand, on the same shift.
func TestChoicesByHand(t *testing.T) {
	s, v := shiftOfTheWeb(t)
	f := v.figuring()
	usual := s.KeyFigures.Counting
	for _, c := range []struct {
		what   string
		change func(*scenario.Counting)
		want   keyfigure.ISOTimes
	}{
		{"minor stops in availability", func(c *scenario.Counting) { c.MinorIn = scenario.FromAvailability }, keyfigure.ISOTimes{PlannedBusy: 450, Production: 340, Setup: 40, Delay: 22, Down: 48}},
		{"material in performance", func(c *scenario.Counting) { c.MaterialIn = scenario.FromPerformance }, keyfigure.ISOTimes{PlannedBusy: 450, Production: 360, Setup: 40, Delay: 8, Down: 42}},
		{"material planned", func(c *scenario.Counting) { c.MaterialIn = scenario.FromPlanned }, keyfigure.ISOTimes{PlannedBusy: 440, Production: 350, Setup: 40, Delay: 8, Down: 42}},
		{"breaks counted", func(c *scenario.Counting) { c.NotBusy = nil }, keyfigure.ISOTimes{PlannedBusy: 480, Production: 350, Setup: 40, Delay: 18, Down: 72}},
		{"tidy and changeover left out too", func(c *scenario.Counting) { c.NotBusy = []string{"breaks", "tidy", "changeover"} }, keyfigure.ISOTimes{PlannedBusy: 410, Production: 350, Delay: 18, Down: 42}},
	} {
		by := usual
		c.change(&by)
		if got := f.station(&v.records[0], 0, by).Times; got != c.want {
			t.Errorf("%s: got %+v, want %+v", c.what, got, c.want)
		}
	}
}

// A stop that goes on in a break: the reel change took 15 min, 5 of them in the break, which is left out. Counted twice it would take 15 min
// off the production and the break off the planned time; what is left would be less than the station ran.
func TestStopInABreakCountsOnce(t *testing.T) {
	s, v := shiftOfTheWeb(t)
	got := v.figuring().station(&v.records[0], 0, s.KeyFigures.Counting).Times
	var stops sim.Micros
	for _, stop := range v.records[0].Stations[0].Stops {
		stops += stopped(&stop)
	}
	if stops != 27*m {
		t.Fatalf("the stops of the record last %v", stops)
	}
	if sum := got.Production + got.Setup + got.Delay + got.Down; sum != got.PlannedBusy {
		t.Errorf("the elements sum to %v of %v", sum, got.PlannedBusy)
	}
}

// The calendar seen from any window: three windows one after the other have what one over all has.
func TestStandingInAnyWindow(t *testing.T) {
	s, _ := shiftOfTheWeb(t)
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.SliceOfN(rapid.Int64Range(0, int64(72*sim.Hour)), 2, 2).Draw(t, "cuts")
		var sum int64
		cuts := [4]int64{0, min(at[0], at[1]), max(at[0], at[1]), int64(72 * sim.Hour)}
		for i := range 3 {
			for _, lasts := range standing(&s.Line.Calendar, sim.Micros(cuts[i]), sim.Micros(cuts[i+1]-cuts[i])) {
				sum += int64(lasts)
			}
		}
		if want := int64(3 * 40 * m); sum != want {
			t.Fatalf("cut at %v: %d, want %d", cuts, sum, want)
		}
	})
}

// OEE × planned busy time ÷ planned run time = good pieces, for each station and replication, whatever the choices; the
// elements of time sum to the planned busy time (TRADE, invariant of key figures: OEE × PBT ÷ PRI = GQ).
func TestOEEGivesBackTheGoodPieces(t *testing.T) {
	s := stopping(t)
	s.Line.Stations[0].Stops[0].Class = sim.MaterialChange
	s.KeyFigures.Counting = scenario.Counting{MinorUpTo: m, MinorIn: scenario.FromPerformance, MaterialIn: scenario.FromAvailability}
	o := mustRun(t, s, Options{})
	f := viewOf(s, o.Model, o.Records).figuring()
	shorts := int64(0)
	rapid.Check(t, func(t *rapid.T) {
		by := s.KeyFigures.Counting
		by.AtTopSpeed = rapid.Bool().Draw(t, "top speed")
		by.MinorIn = rapid.SampledFrom([]scenario.Taken{scenario.FromAvailability, scenario.FromPerformance}).Draw(t, "minor")
		by.MaterialIn = rapid.SampledFrom([]scenario.Taken{scenario.FromAvailability, scenario.FromPerformance, scenario.FromPlanned}).Draw(t, "material")
		r := &o.Records[rapid.IntRange(0, len(o.Records)-1).Draw(t, "replication")]
		for i := range s.Line.Stations {
			c := f.station(r, i, by)
			shorts += r.Stations[i].Short[0].Count
			oee, ok := keyfigure.ISOOEE(c.Times, c.Counts)
			if !ok {
				t.Fatal("there is no OEE")
			}
			good := float64(r.Stations[i].Given - r.Stations[i].Rejected)
			if got := oee * c.Times.PlannedBusy / c.Counts.PlannedRunTime; math.Abs(got-good) > 1e-6 {
				t.Fatalf("station %d: %v good pieces, want %v", i, got, good)
			}
			if sum := c.Times.Production + c.Times.Setup + c.Times.Delay + c.Times.Down; math.Abs(sum-c.Times.PlannedBusy) > 1e-9 {
				t.Fatalf("station %d: the elements sum to %v of %v", i, sum, c.Times.PlannedBusy)
			}
		}
	})
	if shorts == 0 {
		t.Error("there was no short standstill at all")
	}
}

// By hand, on the shift above: from the way that takes the least away to that of the scenario and on to that which takes the
// most. 39,000 cartons are 325 min of the web. Planned busy at first: 480 less break 30, tidy 10, changeover 30, reel 10 = 400.
func TestStepsByHand(t *testing.T) {
	_, v := shiftOfTheWeb(t)
	v.records = append(v.records, v.records[0]) // a second one, without spread
	type row struct {
		choice, to, is string
		busy           float64
	}
	rows := []row{
		{"", "", "", 400},
		{"tidy", "counted", "", 410},
		{"changeover", "counted", "", 440},
		{"material counts as", "availability", "own", 450},
		{"breaks", "counted", "", 480},
	}
	steps := v.figuring().steps()
	if len(steps) != len(rows) {
		t.Fatalf("got %+v", steps)
	}
	sum := steps[0].OEE.Mean
	for i, want := range rows {
		got := steps[i]
		if got.Choice != want.choice || got.To != want.to || got.Is != want.is {
			t.Errorf("step %d is %s %s %s, want %+v", i, got.Choice, got.To, got.Is, want)
		}
		nearly(t, want.choice, got.OEE.Mean, 325/want.busy)
		nearly(t, want.choice+" parts", got.Availability.Mean*got.Performance.Mean*got.Quality.Mean, got.OEE.Mean)
		if i > 0 {
			sum += got.Points.Mean
			nearly(t, want.choice+" points", got.Points.Mean, 325/want.busy-325/rows[i-1].busy)
		}
	}
	nearly(t, "all steps", sum, steps[len(steps)-1].OEE.Mean)
}

// To another report: its top speed is 300 blisters/min against 240, minor stops are shorter than 1 min there and count in
// availability. By hand: 325 min of 450 = 72.2 %, at top speed 39,000/150 = 260 min, 57.8 %; it shows 55 %.
func TestStepsToAnotherReport(t *testing.T) {
	s, v := shiftOfTheWeb(t)
	s.Stations[0].TopCycle = 0.8e6
	theirs := s.KeyFigures.Counting
	theirs.AtTopSpeed, theirs.MinorUpTo, theirs.MinorIn = true, m, scenario.FromAvailability
	s.KeyFigures.Reported = &scenario.Reported{Counting: theirs, OEE: 0.55}
	v.records[0].Stations[0].Short = append(v.records[0].Stations[0].Short, sim.Standstills{Count: 2, Down: 1 * m})
	v = viewOf(s, v.model, []sim.Record{v.records[0], v.records[0]})
	steps := v.figuring().steps()
	want := []result.KeyFigureStep{
		{Is: "own", OEE: result.Estimate{Mean: 325.0 / 450}, Availability: result.Estimate{Mean: 350.0 / 450}},
		{Choice: "planned run time from", To: "top speed", OEE: result.Estimate{Mean: 260.0 / 450}, Availability: result.Estimate{Mean: 350.0 / 450}},
		{Choice: "minor stop shorter than", To: "1 min", OEE: result.Estimate{Mean: 260.0 / 450}, Availability: result.Estimate{Mean: 341.0 / 450}},
		{Choice: "minor stops count as", To: "availability", Is: "reported", OEE: result.Estimate{Mean: 260.0 / 450}, Availability: result.Estimate{Mean: 340.0 / 450}},
		{Choice: "data", To: "as reported", OEE: result.Estimate{Mean: 0.55}},
	}
	if len(steps) != len(want) {
		t.Fatalf("got %d steps: %+v", len(steps), steps)
	}
	for i, w := range want {
		if g := steps[i]; g.Choice != w.Choice || g.To != w.To || g.Is != w.Is {
			t.Errorf("step %d: got %s %s %s", i, g.Choice, g.To, g.Is)
		}
		nearly(t, w.Choice, steps[i].OEE.Mean, w.OEE.Mean)
		nearly(t, w.Choice+" availability", steps[i].Availability.Mean, w.Availability.Mean)
	}
	nearly(t, "what counting does not explain", steps[4].Points.Mean, 0.55-260.0/450)
}

// Mean times by hand: two windows with 1 and 3 jams, 100 and 200 min of running, 4 and 12 min of work.
func TestStopTimesByHand(t *testing.T) {
	_, v := shiftOfTheWeb(t)
	record := func(n int64, running, down, waiting sim.Micros) sim.Record {
		web := sim.StationRecord{Stops: []sim.StopRecord{{Count: n, Down: down, Waiting: waiting}, {}, {}}}
		web.States[sim.Running] = running
		return sim.Record{Window: 480 * m, Stations: []sim.StationRecord{web, {}}}
	}
	v.records = nil
	for range 5 {
		v.records = append(v.records, record(1, 100*m, 4*m, 0), record(3, 200*m, 12*m, 2*m))
	}
	times := v.stopTimes(0)
	if len(times) != 4 || times[0].Name != result.AllStops || times[1].Name != "jam" {
		t.Fatalf("got %+v", times)
	}
	for _, one := range times[:2] {
		nearly(t, one.Name+" between", one.BetweenMinutes.Mean, 75)
		nearly(t, one.Name+" to repair", one.RepairMinutes.Mean, 4)
		nearly(t, one.Name+" stopped", one.StoppedMinutes.Mean, 4.5)
	}
	if times[2].BetweenMinutes.N != 0 {
		t.Errorf("a cause that never came has a mean: %+v", times[2])
	}
}
