package study

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// steady is a line without chance: the web gives 4 blisters a second, the
// cartoner makes a carton of 2 in 0.25 s.
func steady() *scenario.Scenario {
	return &scenario.Scenario{
		Title:  "steady",
		Source: []byte("steady"),
		Answer: scenario.Answer{Unit: "cartons", CountedAfter: []int{1}, Per: "hour"},
		Run:    scenario.Run{WarmUp: sim.Minute, Measure: sim.Hour, Replications: 3, Confidence: 0.95, Seed: 1},
		Line: sim.Line{Stations: []sim.Station{
			{Name: "web", Takes: 1, Gives: 4, Cycle: sim.Fixed(1e6)},
			{Name: "cartoner", From: "web", Takes: 2, Gives: 1, Cycle: sim.Fixed(0.25e6)},
		}},
		Stations: []scenario.Station{
			{TakesUnit: "pieces", GivesUnit: "blisters", SetCycle: 1e6, TopCycle: 1e6},
			{TakesUnit: "blisters", GivesUnit: "cartons", SetCycle: 0.25e6, TopCycle: 0.25e6},
		},
	}
}

func law(t *testing.T) func(sim.Law, error) sim.Law {
	return func(l sim.Law, err error) sim.Law {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
}

// stopping is the same line with a buffer, stops, rejects, a crew, for an hour.
func stopping(t *testing.T) *scenario.Scenario {
	s, must := steady(), law(t)
	s.Run.Replications = 7
	minute := float64(sim.Minute)
	web := &s.Line.Stations[0]
	web.RejectShare = 0.01
	web.Stops = []sim.Stop{{
		Name: "jam", Every: must(sim.Exponential(300)), Clock: sim.CycleClock,
		Lasts: must(sim.Lognormal(minute, 0.9)), Crew: sim.Work{Crew: "operators", People: 1},
	}}
	s.Line.Stations[1].From = "store"
	s.Line.Stations[1].Stops = []sim.Stop{{
		Name: "jam", Every: must(sim.Exponential(10 * minute)), Clock: sim.RunningClock,
		Lasts: must(sim.Lognormal(minute, 0.9)), Crew: sim.Work{Crew: "operators", People: 1},
	}}
	s.Line.Buffers = []sim.Buffer{{Name: "store", From: []string{"web"}, Holds: 120}}
	s.Line.Crews = []sim.Crew{{Name: "operators", People: 1}}
	s.Buffers = []scenario.Buffer{{Unit: "blisters"}}
	return s
}

func mustRun(t *testing.T, s *scenario.Scenario, o Options) *Outcome {
	t.Helper()
	outcome, err := Run(t.Context(), s, o)
	if err != nil {
		t.Fatal(err)
	}
	return outcome
}

func asJSON(t *testing.T, r result.Results) string {
	t.Helper()
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// By hand: 3,600 web cycles an hour make 14,400 blisters and 7,200 cartons. The
// cartoner works two cycles of 0.25 s a second and is starved for the rest.
func TestSteadyLineByHand(t *testing.T) {
	o := mustRun(t, steady(), Options{Show: []string{"good output", "cartoner starved", "yield", "line efficiency", "stops of web"}})
	r := o.Results
	exact := func(what string, got result.Estimate, want float64) {
		t.Helper()
		if got.Mean != want || got.Low != want || got.High != want || got.SD != 0 || got.N != 3 {
			t.Errorf("%s: got %+v, want %v without spread", what, got, want)
		}
	}
	exact("output", r.Output.PerHour, 7200)
	exact("total", r.Output.Total, 7200)
	exact("web cycles", r.Stations[0].CyclesPerHour, 3600)
	exact("blisters", r.Stations[0].GivenPerHour, 14400)
	exact("web running", r.Stations[0].States.Running, 1)
	exact("cartoner running", r.Stations[1].States.Running, 0.5)
	exact("cartoner starved", r.Stations[1].States.Starved, 0.5)
	for i, want := range []float64{7200, 0.5, 1, 1, 0} {
		exact(r.Measures[i].Name, r.Measures[i].Value, want)
	}
	if r.Output.ShiftP10 != 7200 || r.Ends["horizon"] != 3 || o.Span.Buffered || o.Constraint != "web" || len(o.Causes) != 0 {
		t.Errorf("got %+v, ends %v, span %+v, constraint %s, causes %v", r.Output, r.Ends, o.Span, o.Constraint, o.Causes)
	}
}

// Any number of workers gives the same bytes, with and without what is looked at beside.
func TestWorkersDoNotMatter(t *testing.T) {
	one := mustRun(t, stopping(t), Options{Workers: 1, Bounds: true, Trace: true})
	want := asJSON(t, one.Results)
	for _, o := range []Options{{Workers: 2}, {Workers: 5, Bounds: true}, {Workers: 50, Trace: true}} {
		if got := asJSON(t, mustRun(t, stopping(t), o).Results); got != want {
			t.Errorf("%+v: the results differ", o)
		}
	}
}

// Two parts, written and joined, give the bytes of one run.
func TestPartsGiveTheBytesOfOneRun(t *testing.T) {
	s := stopping(t)
	whole := mustRun(t, s, Options{})
	for cut := 2; cut <= 5; cut++ {
		var parts []result.Part
		for _, span := range [][2]int{{1, cut}, {cut + 1, 7}} {
			o := mustRun(t, s, Options{From: span[0], To: span[1], Workers: cut})
			parts = append(parts, throughFile(t, result.NewPart(s.Hash(), s.Run.Seed, o.Records)))
		}
		records, err := result.Join(parts[1], parts[0])
		if err != nil {
			t.Fatal(err)
		}
		if asJSON(t, Summarise(s, whole.Model, records, nil)) != asJSON(t, whole.Results) {
			t.Errorf("cut after %d: the results differ", cut)
		}
	}
}

func throughFile(t *testing.T, p result.Part) result.Part {
	t.Helper()
	var file bytes.Buffer
	if err := p.Write(&file); err != nil {
		t.Fatal(err)
	}
	back, err := result.ReadPart(&file)
	if err != nil {
		t.Fatal(err)
	}
	return back
}

// The ends of the span enclose the line, and the store recovers a part of what it could.
func TestSpan(t *testing.T) {
	s := stopping(t)
	s.Run.Replications = 40
	span := mustRun(t, s, Options{Bounds: true}).Span
	if !span.Buffered || !(span.None.Mean < span.Now.Mean && span.Now.Mean < span.Unlimited.Mean) {
		t.Fatalf("the span does not enclose the line: %+v", span)
	}
	want := (span.Now.Mean - span.None.Mean) / (span.Unlimited.Mean - span.None.Mean)
	if r := span.Recovered; r.N != 40 || r.Mean < want-1e-9 || r.Mean > want+1e-9 || r.Low > r.Mean || r.High < r.Mean {
		t.Errorf("recovered: got %+v, want %v", r, want)
	}
}

// The causes are the whole time that was no good output: their minutes and those of the good output of the loss tree add up to the window.
func TestCausesCloseTheWindow(t *testing.T) {
	s := stopping(t)
	o := mustRun(t, s, Options{})
	sum := 0.0
	for _, b := range o.Results.LossTrees[0].Branches {
		if b.Kind == result.LossGood {
			sum = 60 * b.Share.Mean
		}
	}
	for i, cause := range o.Causes {
		sum += cause.Minutes.Mean
		if i > 0 && cause.Pieces.Mean > o.Causes[i-1].Pieces.Mean {
			t.Errorf("cause %d is worse than the one before", i)
		}
	}
	if sum < 60-1e-9 || sum > 60+1e-9 {
		t.Errorf("good output and causes of %s sum to %v of 60 minutes", o.Constraint, sum)
	}
}

// Interrupted: the finished replications give the results that a study of them alone gives.
func TestInterruptKeepsWhatIsFinished(t *testing.T) {
	s := stopping(t)
	ctx, cancel := context.WithCancel(t.Context())
	o, err := Run(ctx, s, Options{Workers: 1, Progress: func(done, _ int) {
		if done == 4 {
			cancel()
		}
	}})
	if err != nil || !o.Interrupted || len(o.Records) != 4 {
		t.Fatalf("got %+v, %v, want 4 records", o, err)
	}
	if asJSON(t, o.Results) != asJSON(t, mustRun(t, s, Options{To: 4}).Results) {
		t.Error("the results differ from those of 4 replications")
	}
	if _, err := Run(ctx, s, Options{}); !errors.Is(err, ErrNothingKept) {
		t.Errorf("nothing was finished, got %v", err)
	}
}

func TestOneReplicationIsRefused(t *testing.T) {
	var input *InputError
	if _, err := Run(t.Context(), steady(), Options{From: 3, To: 3}); !errors.As(err, &input) {
		t.Errorf("got %v", err)
	}
}
