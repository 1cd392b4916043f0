package study

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// agreed is one machine of 60 pieces/min that stops every 12 min of running for 2 min (CV 1.5), with an agreed run.
func agreed(t *testing.T) *scenario.Scenario {
	s, must := steady(), law(t)
	s.Line.Stations = s.Line.Stations[:1]
	s.Stations, s.Answer.CountedAfter, s.Answer.Unit = s.Stations[:1], []int{0}, "blisters"
	s.Line.Stations[0].Gives = 1
	minute := float64(sim.Minute)
	s.Line.Stations[0].Stops = []sim.Stop{{
		Name: "stop", Every: must(sim.Exponential(12 * minute)), Clock: sim.RunningClock, Lasts: must(sim.Lognormal(2*minute, 1.5)),
	}}
	s.Agreement = scenario.Agreement{Efficiency: 0.85, Run: 8 * sim.Hour, From: sim.Hour}
	return s
}

func accepted(t *testing.T, s *scenario.Scenario, o AcceptanceOptions) result.Acceptance {
	t.Helper()
	outcome, err := Accept(t.Context(), s, o)
	if err != nil {
		t.Fatal(err)
	}
	return outcome.Results
}

func holds(e result.Estimate, value float64) bool { return e.Low <= value && value <= e.High }

// MTBF 12 min, MTTR 2 min, CV of repair 1.5, 8 h: the standard deviation is 3.8 points, and a line that truly runs 85.7 % passes a
// limit of 85 % about 58 % of the time (own calculation of the trade notes, by the renewal central limit theorem).
func TestAgreedRunOfOneMachine(t *testing.T) {
	s := agreed(t)
	s.Run.Confidence = 0.99
	a := accepted(t, s, AcceptanceOptions{Runs: 1000, Truly: []float64{0.8, 0.9}})
	e := a.AsEntered
	figures := keyfigure.Derive(s)
	byFormula, ok := keyfigure.RenewalOf(&s.Line.Stations[0], &figures.Stations[0], 1).Passing(12.0/14, 0.85, 480)
	if !ok || math.Abs(e.Formula.SD-0.038) > 0.0005 || math.Abs(byFormula-0.58) > 0.01 {
		t.Errorf("the formula says %v, and %+v", byFormula, e.Formula)
	}
	if !holds(e.True, 12.0/14) || !holds(e.Shown, 12.0/14) {
		t.Errorf("the machine runs %+v in the long run and %+v in 8 h, not 85.7 %%", e.True, e.Shown)
	}
	if !holds(e.Passing, 0.58) || math.Abs(e.Shown.SD-0.038) > 0.002 {
		t.Errorf("it passes %+v with a standard deviation of %v", e.Passing, e.Shown.SD)
	}
	// 1/e = 1 + factor × 2/12: 80 % are 1.5 times as many stops, 90 % two thirds.
	if len(a.Curve) != 2 || math.Abs(a.Curve[0].Factor-1.5) > 0.08 || math.Abs(a.Curve[1].Factor-2.0/3) > 0.05 {
		t.Fatalf("the factors are off: %+v", a.Curve)
	}
	if !(a.Curve[0].Passing.High < e.Passing.Low && e.Passing.High < a.Curve[1].Passing.Low) {
		t.Errorf("a better line does not pass more often: %+v", a)
	}
	// By the formula a line of 90 % has a sd of √(0.475/T): 90 % power needs (1.2816 × 0.675/0.05)² = 5 h; so the simulated length is
	// near it.
	l := a.RunLength
	if l.Entered || !l.Asked || l.True.Mean != 0.9 || l.Power != 0.9 || len(l.Lengths) != 16 || l.Lengths[0].Hours != 4 {
		t.Fatalf("run length: %+v", l)
	}
	if l.Hours == 0 || l.FormulaHours < 4 || l.FormulaHours > 8 || math.Abs(l.Hours-l.FormulaHours) > 4 {
		t.Errorf("%v h by simulation, %v h by the formula", l.Hours, l.FormulaHours)
	}
}

// Without a stop nothing can be scaled: the line as entered makes all that it can and always passes. Asked against its top speed, which is a
// quarter higher, it never does.
func TestAgreedRunWithoutStops(t *testing.T) {
	s := agreed(t)
	s.Line.Stations[0].Stops = nil
	a := accepted(t, s, AcceptanceOptions{Runs: 20})
	if len(a.Curve) != 0 || a.AsEntered.Passing.Mean != 1 || a.AsEntered.Shown.Mean != 1 || a.AsEntered.Formula.Applies || len(a.Warnings) != 1 {
		t.Errorf("got %+v", a)
	}
	s.Agreement.OfTopSpeed, s.Stations[0].TopCycle = true, 0.8e6
	a = accepted(t, s, AcceptanceOptions{Runs: 20})
	if a.AsEntered.Passing.Mean != 0 || math.Abs(a.AsEntered.Shown.Mean-0.8) > 1e-9 || a.Agreement.FullPerHour != 4500 || a.RunLength.Asked {
		t.Errorf("of top speed: got %+v", a)
	}
}

// The number of workers does not matter, and what is out of reach is said.
func TestAcceptanceRepeats(t *testing.T) {
	s := agreed(t)
	s.Line.Stations[0].RejectShare = 0.1
	s.Agreement.Run = sim.Hour
	s.Agreement.Efficiency = 0.7
	o := AcceptanceOptions{Runs: 30, Workers: 1, Truly: []float64{0.7, 0.95}}
	one := accepted(t, s, o)
	o.Workers = 4
	four := accepted(t, s, o)
	if one.AsEntered != four.AsEntered || len(one.Curve) != 1 || one.Curve[0] != four.Curve[0] {
		t.Errorf("the workers matter: %+v, %+v", one, four)
	}
	if len(one.Warnings) != 1 || !strings.Contains(one.Warnings[0], "95 % is out of reach") {
		t.Errorf("got %q", one.Warnings)
	}
}

func TestAcceptanceRefuses(t *testing.T) {
	for what, c := range map[string]struct {
		change func(*scenario.Scenario)
		o      AcceptanceOptions
	}{
		"no agreement":    {func(s *scenario.Scenario) { s.Agreement = scenario.Agreement{} }, AcceptanceOptions{}},
		"power of a half": {func(*scenario.Scenario) {}, AcceptanceOptions{Power: 0.5}},
		"all in a break": {func(s *scenario.Scenario) {
			s.Line.Calendar.Spans = []sim.Span{{Lasts: sim.Hour}, {Name: "break", Lasts: 10 * sim.Hour, Line: sim.LineStands}}
		}, AcceptanceOptions{}},
		"more than all": {func(*scenario.Scenario) {}, AcceptanceOptions{Truly: []float64{1.2}}},
		"one run":       {func(*scenario.Scenario) {}, AcceptanceOptions{Runs: 1}},
	} {
		s := agreed(t)
		c.change(s)
		var input *InputError
		if _, err := Accept(t.Context(), s, c.o); !errors.As(err, &input) {
			t.Errorf("%s: got %v", what, err)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := Accept(ctx, agreed(t), AcceptanceOptions{}); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: got %v", err)
	}
}
