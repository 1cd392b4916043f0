package keyfigure

import (
	"math"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

func exponential(mean float64) sim.Law { return law(sim.Exponential(mean)) }

// web is a reel of 100 m with 0.1 m a cycle, changed in a minute.
func web() sim.Material {
	return sim.Material{Name: "foil", Amount: 100e6, Refill: 100e6, PerCycle: 100_000, Web: true, Lasts: sim.Fixed(minutes(1))}
}

// picked is a magazine of 1,000 blanks, one a cycle, changed in a minute.
func picked(m sim.MisPicks) sim.Material {
	return sim.Material{Name: "blanks", Amount: 1000, Refill: 1000, PerCycle: 1, Lasts: sim.Fixed(minutes(1)), MisPicks: m}
}

func jams(every, lasts float64) []sim.Stop {
	return []sim.Stop{{Name: "jam", Clock: sim.CycleClock, Every: exponential(every), Lasts: exponential(minutes(lasts))}}
}

// wholeStations are stations of 60 cycles a minute with what counts at a single one, and by hand
// the good pieces of each cycle and the minutes of it.
var wholeStations = map[string]struct {
	station     sim.Station
	good, takes float64
}{
	"heat recovery and ramp": {
		sim.Station{HeatRecovery: 20 * sim.Second, Ramp: 10 * sim.Second, Stops: []sim.Stop{{Name: "jam", Clock: sim.CycleClock, Every: exponential(300), Lasts: sim.Fixed(minutes(1))}}},
		1, (1 + (60.0+20+5)/300) / 60,
	},
	"stops shorter than a cycle need no restart": {
		sim.Station{HeatRecovery: 20 * sim.Second, Stops: []sim.Stop{{Name: "jam", Clock: sim.CycleClock, Every: exponential(300), Lasts: sim.Fixed(0.5e6)}}},
		1, (1 + 0.5/300) / 60,
	},
	// outside 1/0.002 = 500 cycles on average, inside 20: (0.01 × 500 + 0.5 × 20)/520
	"runs of rejects": {
		sim.Station{RejectShare: 0.01, Runs: sim.RejectRuns{Enter: 0.002, Share: 0.5, Length: 20}},
		1 - 15.0/520, 1.0 / 60,
	},
	// q = 0.1: 0.001 × 0.9/0.999 of the cycles end a row of three
	"rejects in a row": {
		sim.Station{RejectShare: 0.1, RejectStop: sim.RejectStop{After: 3, Lasts: sim.Fixed(minutes(1))}},
		0.9, (1 + 60*0.001*0.9/0.999) / 60,
	},
	"no-reads": {sim.Station{RejectShare: 0.1, NoReads: 0.05}, 0.9 * 0.95, 1.0 / 60},
	// a stop comes within four cycles: 1 - e^(-4/50)
	"packs lost at stops": {
		sim.Station{LostPerStop: 4, Stops: jams(50, 0.1)},
		math.Exp(-4.0 / 50), (1 + 6.0/50) / 60,
	},
	// (1 - 0.2³)/0.8 = 1.24 tries, 0.008 of the cycles lack a blank; 1,000 blanks last for 1,000/1.24 cycles
	"mis-picks": {
		sim.Station{Materials: []sim.Material{picked(sim.MisPicks{Share: 0.2, Retries: 2, Stops: true, Lasts: sim.Fixed(minutes(0.5))})}},
		0.992, (1.24 + 30*0.008 + 60*1.24/1000) / 60,
	},
	"samples": {
		sim.Station{Checks: []sim.Check{{Name: "leak", Clock: sim.CycleClock, Every: sim.Fixed(100), Takes: 5, Lasts: sim.Fixed(minutes(0.1))}}},
		0.95, 1.0 / 60,
	},
	"splices that fail, and their scrap": {
		sim.Station{Materials: []sim.Material{func() sim.Material { m := web(); m.SpliceFails, m.SpliceScrap = 0.25, 20; return m }()}},
		0.98, (1 + 60/0.75/1000) / 60,
	},
}

// By hand, and by the engine, which knows nothing of this arithmetic; 2,000 h of one station.
func TestWhatCountsAtAStation(t *testing.T) {
	for name, c := range wholeStations {
		t.Run(name, func(t *testing.T) {
			one := c.station
			one.Name = "a"
			s := chain(one)
			f := Derive(s)
			want := c.good / c.takes
			near(t, "good share", f.Stations[0].GoodShare, c.good)
			near(t, "effective", f.Stations[0].Effective.Answer, want)
			if got := passed(t, s.Line); math.Abs(got-want) > 0.005*want || got > f.Bounds.Unlimited*1.002 {
				t.Errorf("the engine passes %v a minute, arithmetic %v, the bound is %v", got, want, f.Bounds.Unlimited)
			}
			if f.Bounds.Unlimited > want*1.1 {
				t.Errorf("the bound, %v, is far from what the station makes, %v", f.Bounds.Unlimited, want)
			}
		})
	}
}

// Rows of rejects that come in runs: the chain of state and row against the engine.
func TestRowsOfRejectsInRuns(t *testing.T) {
	s := chain(sim.Station{
		Name: "a", Gives: 2, RejectShare: 0.01, Runs: sim.RejectRuns{Enter: 0.002, Share: 0.4, Length: 15},
		RejectStop: sim.RejectStop{After: 3, Lasts: sim.Fixed(minutes(2))},
	})
	want := Derive(s).Stations[0].Effective.Answer
	if got := passed(t, s.Line); math.Abs(got-want) > 0.005*want {
		t.Errorf("the engine passes %v a minute, arithmetic %v", got, want)
	}
}

// Where rejects leave later the camera looks at scrapped cycles too, so that they change nothing of how often a row
// stops the station: the chain against the engine, with 8 cycles of scrap after each stop. About 20 000 stops
// leave a standard error below 1 %.
func TestRowsOfRejectsThroughScrap(t *testing.T) {
	one := sim.Station{
		Name: "a", Gives: 2, RejectShare: 0.01, Runs: sim.RejectRuns{Enter: 0.002, Share: 0.4, Length: 15}, RejectsAfter: 8,
		RejectStop: sim.RejectStop{After: 3, Lasts: sim.Fixed(minutes(2))}, AfterStop: []sim.ScrapRule{{Cycles: 8}},
	}
	s := chain(one)
	model, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	engine, stops, cycles := model.NewEngine(), int64(0), int64(0)
	for r := range 20 {
		rec := engine.Run(sim.Options{Seed: 4711, Replication: r, WarmUp: sim.Hour, Measure: 200 * sim.Hour}).Stations[0]
		stops, cycles = stops+rec.Stops[0].Count, cycles+rec.Cycles
	}
	if got, want := float64(stops)/float64(cycles), rowStops(&one); math.Abs(got-want) > 0.03*want {
		t.Errorf("of %d cycles %v stop the engine, by the chain %v (%d stops)", cycles, got, want, stops)
	}
}

// A reject in each cycle stops the station every k cycles; none never. Hand computation.
func TestRowsAtTheEnds(t *testing.T) {
	for share, want := range map[float64]float64{0: 0, 1: 1.0 / 7} {
		got := rowStops(&sim.Station{RejectShare: share, RejectStop: sim.RejectStop{After: 7}})
		near(t, "share of cycles", got, want)
	}
}

// What is above a value: of an exponential law m·e^(-x/m), of a uniform one from 0 to 2 above 1
// a quarter (calculus).
func TestTailsOfLaws(t *testing.T) {
	if got, want := excess(exponential(3), 2), 3*math.Exp(-2.0/3); math.Abs(got-want) > 1e-3*want {
		t.Errorf("exponential: got %v, want %v", got, want)
	}
	near(t, "uniform", excess(law(sim.Uniform(0, 2)), 1), 0.25)
	near(t, "fixed", excess(sim.Fixed(5), 2), 3)
	near(t, "share", longer(exponential(3), 2), math.Exp(-2.0/3))
}

// What people see of it.
func TestTextOfWhatCountsAtAStation(t *testing.T) {
	one := wholeStations["mis-picks"].station
	one.Name, one.NoReads, one.HeatRecovery, one.LostPerStop = "a", 0.003, 20*sim.Second, 4
	one.EmptyPockets = sim.EmptyPockets{On: true, Most: 5}
	f := Derive(chain(one))
	var b strings.Builder
	if err := f.Text(&b); err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(b.String()), " ")
	for _, want := range []string{
		"missing blanks 0.8 % of its", "no-reads 0.3 % of its", "tries 1.24 cycle times for each cycle",
		"restart costs 20 s after a standstill of more than one cycle", "blanks mis-picked every 125 cycles",
		"This is arithmetic without restarts after other standstills, packs lost when others stop it and empty pockets",
		"losses taken off",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in\n%s", want, b.String())
		}
	}
}

// On one drive a stop of one restarts both, and takes their place from the packs of both; a further try of one is time of
// both. By hand, for each cycle: 1 + 0.2 tries of 1 s, 20 s of restart and 60 s of stop in 300 cycles;
// a stop comes within five cycles, the share 0.04 of the picks fails both times.
func TestWhatCountsOnOneDrive(t *testing.T) {
	b := &build{}
	b.station(sim.Station{
		Name: "cartoner", Takes: 1, Gives: 1, Coupled: "drive", HeatRecovery: 20 * sim.Second,
		Materials: []sim.Material{{
			Name: "blanks", Amount: 1e15, Refill: 1e15, PerCycle: 1, Lasts: sim.Fixed(1), MisPicks: sim.MisPicks{Share: 0.2, Retries: 1},
		}},
	}, scenario.Station{}, 60, 0)
	b.station(sim.Station{
		Name: "check", From: "cartoner", Takes: 1, Gives: 1, Coupled: "drive", LostPerStop: 5,
		Stops: []sim.Stop{{Name: "jam", Clock: sim.CycleClock, Every: exponential(300), Lasts: sim.Fixed(minutes(1))}},
	}, scenario.Station{}, 60, 0)
	b.Answer.CountedAfter = []int{1}
	f := Derive(&b.Scenario)
	want := 60 * 0.96 * math.Exp(-5.0/300) / (1.2 + 80.0/300)
	near(t, "effective", f.Stations[0].Effective.Answer, want)
	near(t, "tries of both", f.Stations[1].Tries, 1.2)
	if got := passed(t, b.Line); math.Abs(got-want) > 0.005*want || got > f.Bounds.Unlimited*1.002 {
		t.Errorf("the engine passes %v a minute, arithmetic %v, the bound is %v", got, want, f.Bounds.Unlimited)
	}
}
