package keyfigure

import (
	"math"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

func closeTo(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// Sources: the renewal central limit theorem (Takács 1957, Ross), evaluated by hand for 50 min up and 5 min down: both exponential, and
// the time up fixed. The width of an acceptance run: U = 12, D = 2 min, CV of D 1.5: ±7.4 points in 8 h, ±4.3 in 24 h, ±1 needs
// 437 h; a line that truly runs 85.7 % passes a limit of 85 % about 58 % of the time (own calculation of the trade notes).
func TestRenewalWidth(t *testing.T) {
	closeTo(t, "both exponential", Renewal{50, 2500, 5, 25}.VariancePerMinute(), 0.7513148009015778, 1e-12)
	closeTo(t, "fixed time up", Renewal{50, 0, 5, 25}.VariancePerMinute(), 0.3756574004507889, 1e-12)
	r := Renewal{12, 144, 2, 9}
	e := r.Availability()
	for hours, points := range map[float64]float64{8: 7.4, 24: 4.3, 437: 1} {
		sd, ok := r.Spread(e, 60*hours)
		if !ok {
			t.Fatal("there is no spread")
		}
		closeTo(t, "width", 100*1.96*sd, points, 0.05)
	}
	sd, _ := r.Spread(e, 480)
	closeTo(t, "standard deviation in points", 100*sd, 3.8, 0.05)
	p, _ := r.Passing(e, 0.85, 480)
	closeTo(t, "passes", p, 0.58, 0.01)
	// A run as long as is said for 90 % passes with 90 %; at its limit no length helps.
	length, ok := r.MinutesFor(e, 0.85, 0.9)
	if p, _ := r.Passing(e, 0.85, length); !ok || math.Abs(p-0.9) > 1e-9 {
		t.Errorf("a run of %v min passes with %v", length, p)
	}
	if _, ok := r.MinutesFor(0.85, 0.85, 0.9); ok {
		t.Error("a line at the limit passes with 90 %")
	}
	if _, ok := (Renewal{}).Passing(e, 0.85, 480); ok {
		t.Error("a machine that never stops has a spread")
	}
}

// By hand: a station of 60 cycles/min with jams each 600 cycles of 1 min (CV 2) and breakdowns each 90 min of 4 min, fixed: rates
// 1/10 and 1/90, together 1/9; down (0.1 + 4/90) × 9 = 1.3; squares (0.1 × 5 + 16/90) × 9 = 6.1, less 1.69.
func TestRenewalOfStation(t *testing.T) {
	law := func(l sim.Law, err error) sim.Law {
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	line := sim.Station{Name: "web", Takes: 1, Gives: 1, Cycle: sim.Fixed(1e6), Stops: []sim.Stop{
		{Name: "jam", Every: law(sim.Exponential(600)), Lasts: law(sim.Lognormal(60e6, 2))},
		{Name: "breakdown", Every: law(sim.Gamma(90*60e6, 0.5)), Clock: sim.RunningClock, Lasts: sim.Fixed(4 * 60e6)},
	}}
	s := scenario.Scenario{
		Answer: scenario.Answer{Unit: "blisters", CountedAfter: []int{0}, Per: "hour"}, Line: sim.Line{Stations: []sim.Station{line}},
		Stations: []scenario.Station{{TakesUnit: "pieces", GivesUnit: "blisters", SetCycle: 1e6, TopCycle: 0.8e6}},
	}
	f := Derive(&s)
	got := RenewalOf(&line, &f.Stations[0], 1)
	closeTo(t, "up", got.Up, 9, 1e-9)
	closeTo(t, "variance up", got.UpVariance, 81, 1e-9)
	closeTo(t, "down", got.Down, 1.3, 1e-9)
	closeTo(t, "variance down", got.DownVariance, 6.1-1.69, 1e-9)
	closeTo(t, "twice as often", RenewalOf(&line, &f.Stations[0], 2).Up, 4.5, 1e-9)
	line.Stops = line.Stops[1:]
	closeTo(t, "one cause keeps its law", RenewalOf(&line, &f.Stations[0], 1).UpVariance, 90*90*0.25, 1e-6)
	closeTo(t, "at set speed", f.Bounds.AtSet, 60, 1e-9)
	closeTo(t, "at top speed", AtTop(&s), 75, 1e-9)
}
