package keyfigure

import (
	"math"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// splicing is a station of 60 cycles a minute that draws 8 m/min from a web store, and may come to run at
// 72 cycles; splices last 40 ± 6 s.
func splicing(length float64) *scenario.Scenario {
	b := &build{}
	b.station(sim.Station{Name: "feeder", Takes: 1, Gives: 1}, scenario.Station{}, 60, 0)
	b.store("store", 100, "feeder")
	perCycle := 8e6 / 60
	b.station(sim.Station{
		Name: "machine", From: "store", Takes: 1, Gives: 1, Steps: []sim.SpeedStep{{From: 50, BackAt: 40, Cycle: sim.Micros(minutes(1) / 72)}},
		Materials: []sim.Material{{
			Name: "foil", Web: true, Amount: int64(8e6 * 139), Refill: int64(8e6 * 139), PerCycle: int64(perCycle),
			Lasts: law(sim.Normal(40e6, 0.15)), Store: sim.WebStore{On: true, Length: sim.Micrometres(length * 1e6), Refill: 1.3},
		}},
	}, scenario.Station{Materials: []scenario.Material{{Kind: "reel", Unit: "m"}}}, 60, 72)
	b.Answer.CountedAfter = []int{1}
	return &b.Scenario
}

// 8 m/min × 40 s = 5.3 m; 999 of 1,000 splices of 40 ± 6 s last 40 + 3.09 × 6 = 58.5 s and draw 7.8 m
// (hand computation, quantile 3.0902 of the normal law). A fifth faster they draw a fifth more, and 4.78 % last longer than 50 s.
// A store of 8 m fills again in 8/(0.3 × 8) min.
func TestWebStoreOfASplice(t *testing.T) {
	w := Derive(splicing(8)).Stations[1].Materials[0].Store
	for what, c := range map[string][2]float64{
		"mean": {w.Set.Mean, 5.333}, "999 of 1000": {w.Set.P999, 8.0 / 60 * 58.54},
		"faster": {w.Fastest.Mean, 6.4}, "999 of 1000 faster": {w.Fastest.P999, 9.6 / 60 * 58.54},
		"full again": {w.FullAgain, 3.333}, "between": {w.Between, 139},
	} {
		if math.Abs(c[0]-c[1]) > 1e-3*c[1] {
			t.Errorf("%s: got %v, want %v", what, c[0], c[1])
		}
	}
	if w.Enough() || w.Set.P999 > w.Length {
		t.Error("8 m are enough at set speed, not at the highest")
	}
	f := Derive(splicing(8))
	if text := strings.Join(f.Warnings, "\n"); !strings.Contains(text, "8 m, is too short for 4.78 % of the splices at 9.6 m/min") || !strings.Contains(text, "9.37 m would do for 999 of 1 000") {
		t.Error(text)
	}
	if f := Derive(splicing(10)); strings.Contains(strings.Join(f.Warnings, "\n"), "too short") {
		t.Errorf("10 m are enough: %q", f.Warnings)
	}
}

// A store of 4 m lasts 30 s: of fixed splices of 40 s each stops the station for 10 s.
func TestWebStoreThatIsTooShort(t *testing.T) {
	s := splicing(4)
	s.Line.Stations[1].Materials[0].Lasts = sim.Fixed(40e6)
	w := Derive(s).Stations[1].Materials[0].Store
	near(t, "share", w.Set.Longer, 1)
	if math.Abs(w.Set.Stop-10.0/60) > 1e-4 {
		t.Errorf("it stops for %v min, want 10 s", w.Set.Stop)
	}
}

// Refilling an empty magazine lasts 1.5 min, log-normal with CV 0.8, and 240 blisters a minute come: 692, 894
// and 1,443 free places for 90, 95 and 99 %, own calculation e^(μ + zσ) × 240 with σ² = ln(1 + 0.8²),
// μ = ln 1.5 - σ²/2, z = 1.2816, 1.6449, 2.3263. At 60 more a minute out they are free again in 11.5 to 24.1 min.
func TestFreePlacesForAnEmptyMagazine(t *testing.T) {
	b := &build{}
	b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 4}, scenario.Station{}, 60, 0)
	b.store("store", 720, "blister machine")
	b.station(sim.Station{Name: "cartoner", From: "store", Takes: 3, Gives: 1, Materials: []sim.Material{{
		Name: "blanks", Amount: 2000, Refill: 2000, PerCycle: 1, Lasts: law(sim.Lognormal(minutes(1.5), 0.8)),
	}}}, scenario.Station{}, 80, 100)
	b.Answer.CountedAfter = []int{1}
	covers := Derive(&b.Scenario).Places[0].Covers
	if len(covers) != 1 {
		t.Fatalf("%+v", covers)
	}
	c := covers[0]
	for _, one := range [][2]float64{{c.P90, 692}, {c.P95, 894}, {c.P99, 1443}} {
		if math.Abs(one[0]-one[1]) >= 1 {
			t.Errorf("got %v places, want %v", one[0], one[1])
		}
	}
	near(t, "free again", c.Frees95, c.P95/60)

	// With an alarm at 500 blanks, 6.25 min, only what lasts longer counts: by hand 1 % last longer than 6.02 min.
	b.Line.Stations[1].Materials[0].Alarm = sim.Level{On: true, Level: 500}
	b.Line.Stations[1].Materials[0].Refill = 1500
	f := Derive(&b.Scenario)
	near(t, "with an alarm", f.Places[0].Covers[0].P99, 0)
	m := f.Stations[1].Materials[0]
	near(t, "left at the alarm", m.AlarmMinutes, 6.25)
	if m.LateShare < 0.008 || m.LateShare > 0.01 {
		t.Errorf("%v of the refills are late", m.LateShare)
	}
}

// Side by side the other goes on: of 120 that come it takes 60, so that a stop of one minute needs 60 places.
func TestFreePlacesBesideAnother(t *testing.T) {
	b := &build{}
	b.station(sim.Station{Name: "feeder", Takes: 1, Gives: 2}, scenario.Station{}, 60, 0)
	b.store("store", 100, "feeder")
	for _, name := range []string{"a", "b"} {
		b.station(sim.Station{Name: name, From: "store", Takes: 1, Gives: 1}, scenario.Station{}, 60, 0)
	}
	b.Line.Stations[1].Stops = []sim.Stop{fixedStop("jam", sim.CycleClock, 600, 1)}
	b.Answer.CountedAfter = []int{1, 2}
	near(t, "places", Derive(&b.Scenario).Places[0].Covers[0].P90, 60)
	b.Line.Stations[2].StopsWith = "a"
	near(t, "both stop", Derive(&b.Scenario).Places[0].Covers[0].P90, 120)
}

// By hand, at 60 cycles a minute of which the stops leave 1/1.2: two people for 1 min every 10 min of running, one for 0.5 min
// in 300 cycles of a refill, 3 min for 10 of each 1,000 cartons; half a person is elsewhere.
func TestWorkAskedOfACrew(t *testing.T) {
	work := sim.Work{Crew: "operators", People: 1}
	stop := fixedStop("jam", sim.RunningClock, minutes(10), 2)
	stop.Crew = sim.Work{Crew: "operators", People: 2}
	one := sim.Station{
		Name: "a", Stops: []sim.Stop{stop},
		Materials: []sim.Material{{Name: "blanks", Amount: 400, Refill: 300, PerCycle: 1, Alarm: sim.Level{On: true, Level: 100}, Lasts: sim.Fixed(minutes(0.5)), Crew: work}},
		Checks:    []sim.Check{{Name: "leak", Clock: sim.PieceClock, Every: sim.Fixed(1000), Takes: 10, Lasts: sim.Fixed(minutes(3)), Crew: work}},
	}
	s := chain(one)
	s.Line.Crews = []sim.Crew{{Name: "operators", People: 1, ElsewhereShare: 0.5, ElsewhereSpell: 20 * sim.Minute}}
	f := Derive(s)
	near(t, "share", f.Crews[0].Share, 0.5+2*0.2/1.2+50*(0.5/300+3.0/1000))
	if text := strings.Join(f.Warnings, "\n"); !strings.Contains(text, "More work is asked of operators than 1 person can do") {
		t.Error(text)
	}
	s.Line.Crews[0].People = 2
	if text := strings.Join(Derive(s).Warnings, "\n"); strings.Contains(text, "More work") {
		t.Error(text)
	}
}

// A contract of 92 % beside 1/1.1 alone, and half of the time in a line whose other machine is half as fast.
func TestGuaranteedBesideAloneAndInTheLine(t *testing.T) {
	s := chain(sim.Station{Name: "a", Stops: []sim.Stop{fixedStop("s", sim.CycleClock, 600, 1)}}, sim.Station{Name: "b"})
	s.Stations[0].Guaranteed, s.Stations[1].SetCycle = 0.92, 2e6
	f := Derive(s)
	near(t, "in the line", f.Stations[0].InRigid, 0.5/1.05)
	if text := f.Stations[0].guaranteedText(); !strings.Contains(text, "92.0 % of the machine alone; by these stops it runs 90.9 % of the time alone, 1.1 points less, and works 47.6 %") {
		t.Error(text)
	}
}

// A belt of 10 m with 100 places and 20 s on the way, 120 pieces a minute: 40 on the way. At a sensor 7 m from
// the exit 70 stand; of the 30 places behind them 40 % have pieces under way. A delay of 2 s is 4 pieces. Hand computation.
func TestSensorOfABelt(t *testing.T) {
	b := &build{}
	b.station(sim.Station{Name: "a", Takes: 1, Gives: 1}, scenario.Station{}, 120, 0)
	b.belt("belt", "a", 10, 30, 100)
	b.station(sim.Station{Name: "b", From: "belt", Takes: 1, Gives: 1}, scenario.Station{}, 150, 0)
	b.Line.Buffers[0].Full = sim.Sensor{On: true, At: 70, Delay: 2 * sim.Second}
	b.Answer.CountedAfter = []int{1}
	f := Derive(&b.Scenario)
	s := f.Places[0].Sensor
	near(t, "left", s.Above, 18)
	near(t, "seconds", s.AboveSeconds, 9)
	near(t, "delay", s.DelayPieces, 4)
	if len(f.Warnings) != 0 {
		t.Error(f.Warnings)
	}
	b.Line.Buffers[0].Full.Delay = 10 * sim.Second
	if f := Derive(&b.Scenario); len(f.Warnings) != 1 || !strings.Contains(f.Warnings[0], "20 blisters come, but 18 places are left") {
		t.Error(f.Warnings)
	}
	b.Line.Buffers[0].Full.On, b.Line.Buffers[0].Stands = false, true
	near(t, "usable of one that does not accumulate", Derive(&b.Scenario).Places[0].Spare, 0)
}

// gated is a machine of 100 a minute, a store, a machine of 120.
func gated(store sim.Buffer) *scenario.Scenario {
	b := &build{}
	b.station(sim.Station{Name: "a", Takes: 1, Gives: 1, RejectShare: 0.1}, scenario.Station{}, 100, 0)
	store.Name, store.From, store.Holds = "store", []string{"a"}, 200
	b.Line.Buffers, b.Buffers = []sim.Buffer{store}, []scenario.Buffer{{Unit: "pieces"}}
	b.station(sim.Station{Name: "b", From: "store", Takes: 1, Gives: 1}, scenario.Station{}, 120, 0)
	b.Answer = scenario.Answer{Unit: "pieces", CountedAfter: []int{1}}
	return &b.Scenario
}

// A store that takes in one piece a second is the constraint of machines that make 90; the engine makes as
// much. Beside the line its rate holds nothing back.
func TestTheRateOfAStoreIsABound(t *testing.T) {
	for name, store := range map[string]sim.Buffer{"in": {In: sim.Second}, "out": {Out: sim.Second}} {
		s := gated(store)
		s.Line.Stations[0].RejectShare = 0 // a reject lets the store wait for the next
		f := Derive(s)
		near(t, name, f.Bounds.Unlimited, 60)
		if text := f.constraintText(); text != "The constraint is store, by its own rate." {
			t.Error(text)
		}
		if got := passed(t, s.Line); math.Abs(got-60) > 0.3 {
			t.Errorf("%s: the engine passes %v", name, got)
		}
	}
	near(t, "quicker", Derive(gated(sim.Buffer{In: sim.Second / 2})).Bounds.Unlimited, 90)
	near(t, "beside the line", Derive(gated(sim.Buffer{In: sim.Second, Kind: sim.BesideLine})).Bounds.Unlimited, 90)
}

// 200 places of which 20 stay: 180 at a surplus of 10 a minute are gone in 18 min. Hand computation.
func TestAStoreBesideTheLineIsDrainedByItsSurplus(t *testing.T) {
	f := Derive(gated(sim.Buffer{Kind: sim.BesideLine, Surplus: 6 * sim.Second, Keeps: 20}))
	near(t, "minutes", f.Places[0].DrainMinutes, 18)
	near(t, "usable", f.Places[0].Spare, 180)
}

// Blisters of rejected cartons come back: of 120 taken in 60 cycles half of the cartons are rejected and all their
// blisters come back, so that 60 from the machine before are enough for 60 cycles. Hand computation.
func TestBlistersThatComeBackRaiseTheBound(t *testing.T) {
	s := gated(sim.Buffer{Kind: sim.HandMagazine, Returns: sim.Returns{Share: 1}})
	s.Line.Stations[0].RejectShare = 0
	s.Stations[0].SetCycle = minutes(1) / 60
	s.Line.Stations[1].Takes, s.Line.Stations[1].RejectShare = 2, 0.5
	near(t, "bound", newBound(s), 30)
}

// newBound is the upper bound of a scenario.
func newBound(s *scenario.Scenario) float64 { return Derive(s).Bounds.Unlimited }

// Each sentence about what a line makes says with numbers that a speed is outside the qualified dwell.
func TestSentencesSayOutsideTheDwell(t *testing.T) {
	f := Derive(tarnHollow(42, 84))
	for _, text := range append(f.sentences()[:2], f.legend()) {
		if !strings.Contains(text, "blister machine at 42 cycles/min, outside the qualified dwell: 0.643 s, qualified 0.66 to 0.95 s") {
			t.Error(text)
		}
	}
	f = Derive(tarnHollow(36, 72))
	if text := strings.Join(append(f.sentences(), f.legend()), " "); strings.Contains(text, "outside") {
		t.Error(text)
	}
}

// Lanes that pass on 300 blisters a minute give no more than the 240 of their machine, and so does what
// it hands over to directly. Hand computation.
func TestFeedBehindLanesIsThatOfTheMachine(t *testing.T) {
	b := &build{}
	add := func(name, from string, gives int64, speed float64) {
		b.station(sim.Station{Name: name, From: from, Takes: 1, Gives: gives}, scenario.Station{}, speed, 0)
	}
	add("machine", "", 4, 60)
	b.store("machine to machine lanes", 8, "machine")
	add("machine lanes", "machine to machine lanes", 1, 300)
	add("check", "machine lanes", 1, 400)
	b.store("store", 720, "check")
	add("cartoner", "store", 1, 300)
	b.Answer.CountedAfter = []int{3}
	near(t, "feed", Derive(&b.Scenario).Places[1].Feed, 240)
	b.Line.Buffers[1].Stops = []sim.Stop{fixedStop("jam", sim.PieceClock, 1000, 1)}
	if f := Derive(&b.Scenario); f.leftOut() != "stops of stores" {
		t.Error(f.leftOut())
	}
}
