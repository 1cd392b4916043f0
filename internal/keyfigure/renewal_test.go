package keyfigure

import (
	"math"
	"slices"
	"testing"

	"tuckline/sim"
)

// about holds a figure to one part in a thousand: laws stand for themselves in 4096 parts.
func about(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-3*math.Abs(want) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// replaced is a station of 60 cycles a minute that breaks down and is replaced in time; either makes both as new.
func replaced(breaks, replace sim.Law) []sim.Stop {
	return []sim.Stop{
		{Name: "breakdown", Every: breaks, Clock: sim.RunningClock, Lasts: sim.Fixed(minutes(20)), Renews: []string{"replacement"}},
		{Name: "replacement", Every: replace, Clock: sim.RunningClock, Lasts: sim.Fixed(minutes(5)), Renews: []string{"breakdown"}},
	}
}

// Age replacement. Source: Barlow and Proschan 1965 (from memory), from the integral of the survival
// function: with a Weibull law of shape 2 and scale 60 min, replaced after 45, a life lasts
// 60 × √π/2 × erf(0.75) min on average and ends by a breakdown with probability 1 − exp(−0.5625).
func TestAgeReplacement(t *testing.T) {
	s := chain(sim.Station{Name: "a", Stops: replaced(law(sim.WeibullShape(2, minutes(60))), sim.Fixed(minutes(45)))})
	f := Derive(s)
	life, breaks := 60*math.Sqrt(math.Pi)/2*math.Erf(0.75), 1-math.Exp(-0.5625)
	a := f.Stations[0]
	about(t, "minutes between breakdowns", a.Stops[0].Minutes, life/breaks)
	about(t, "minutes between replacements", a.Stops[1].Minutes, life/(1-breaks))
	about(t, "alone", a.Alone, life/(life+20*breaks+5*(1-breaks)))
}

// Two exponential laws have no memory: renewing changes nothing. A replacement
// before the shortest life lets no breakdown happen. Hand computation.
func TestRenewalsAtTheirEnds(t *testing.T) {
	exponential := func(m float64) sim.Law { return law(sim.Exponential(minutes(m))) }
	near(t, "without memory", Derive(chain(sim.Station{Name: "a", Stops: replaced(exponential(60), exponential(45))})).Stations[0].Alone, 1/(1+20.0/60+5.0/45))
	f := Derive(chain(sim.Station{Name: "a", Stops: replaced(law(sim.Uniform(minutes(50), minutes(70))), sim.Fixed(minutes(45)))}))
	near(t, "always in time", f.Stations[0].Alone, 1/(1+5.0/45))
	if stop := f.Stations[0].Stops[0]; !stop.Never || stop.DownShare != 0 {
		t.Errorf("%+v", stop)
	}
	// Of two fixed laws of the same length the first by name comes, always.
	f = Derive(chain(sim.Station{Name: "a", Stops: replaced(sim.Fixed(minutes(45)), sim.Fixed(minutes(45)))}))
	near(t, "due together", f.Stations[0].Alone, 1/(1+20.0/45))
}

// An exponential breakdown that is without memory renews the replacement: a life of at
// most 45 min lasts 60 × (1 − exp(−0.75)) min on average. Hand computation.
func TestRenewedByAStopWithoutMemory(t *testing.T) {
	f := Derive(chain(sim.Station{Name: "a", Stops: replaced(law(sim.Exponential(minutes(60))), sim.Fixed(minutes(45)))}))
	life, replace := 60*(1-math.Exp(-0.75)), math.Exp(-0.75)
	about(t, "minutes between replacements", f.Stations[0].Stops[1].Minutes, life/replace)
	about(t, "minutes between breakdowns", f.Stations[0].Stops[0].Minutes, 60)
}

// What is renewed from one side only is left out, so that the bound stays a bound, and said.
func TestRenewedFromOneSideIsLeftOut(t *testing.T) {
	stops := replaced(law(sim.WeibullShape(2, minutes(60))), sim.Fixed(minutes(45)))
	stops[0].Renews = nil
	f := Derive(chain(sim.Station{Name: "a", Stops: stops}))
	near(t, "alone", f.Stations[0].Alone, 1/(1+5.0/45))
	if a := f.Stations[0]; !a.Stops[0].Aside || !slices.Contains(a.LeftOut, "breakdown with its renewed clock") {
		t.Errorf("%+v", a)
	}
}

// The engine knows nothing of this arithmetic: cycles and pieces, three stops.
func TestRenewalsAgreeWithTheEngine(t *testing.T) {
	all := func(name string, clock sim.Clock, every sim.Law, lasts float64) sim.Stop {
		stop := sim.Stop{Name: name, Clock: clock, Every: every, Lasts: sim.Fixed(minutes(lasts))}
		for _, other := range []string{"a", "b", "c"} {
			if other != name {
				stop.Renews = append(stop.Renews, other)
			}
		}
		return stop
	}
	s := chain(sim.Station{Name: "one", Takes: 2, Gives: 2, Stops: []sim.Stop{
		all("a", sim.CycleClock, law(sim.Lognormal(600, 0.5)), 4),
		all("b", sim.PieceClock, law(sim.Gamma(1400, 0.7)), 6),
		all("c", sim.CycleClock, sim.Fixed(800), 2),
	}})
	got, want := passed(t, s.Line), Derive(s).Bounds.Unlimited
	if math.Abs(got-want) > 0.005*want {
		t.Errorf("the engine passes %v a minute, arithmetic %v", got, want)
	}
}
