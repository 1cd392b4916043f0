package sim_test

import (
	"strings"
	"testing"

	"tuckline/sim"
)

// handMagazine holds ten; somebody carries three at a time, at 0.5 s each.
func handMagazine() sim.Buffer {
	return sim.Buffer{Kind: sim.HandMagazine, Holds: 10, Hand: sim.Hand{PerPiece: s / 2, Load: 3}}
}

// While B is down one piece waits on the way past, and somebody carries into the magazine what comes then, three pieces or
// 1.5 s at a time. Nobody carries out while something waits for B.
func TestCourseOfAHandMagazine(t *testing.T) {
	b := one("B", "store", 0.8)
	b.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(2.5), Lasts: sec(5)}}
	rec := course{
		line:    storeLine(one("A", "", 1), b, handMagazine()),
		measure: 10 * s,
		want: `
			0    A running, B starved
			1    B running
			1.8  B starved
			2    B running
			2.5  B down (jam)           # 0.3 s of the cycle are left
			3    store 1                # waits on the way past
			4    store 2                # carried in from 4 to 5.5
			5    store 3
			6    store 4                # from 6 to 7.5
			7    store 5
			7.5  B running
			7.8  store 4                # B takes what waits since 3
			8    store 5                # waits on the way past
			8.6  store 4
			9    store 5
			9.4  store 4
		`,
	}.follow(t)
	if r := &rec.Buffers[0]; r.Kept != 4 || r.GivenBack != 0 || r.ByHand != 4 {
		t.Errorf("kept %d, given back %d, by hand %d; by hand computed 4, 0 and 4", r.Kept, r.GivenBack, r.ByHand)
	}
	// Twice in, each for a whole load of 1.5 s.
	if got := rec.Buffers[0].HandTime; got != 3*s {
		t.Errorf("somebody carried for %d µs, by hand computed 3 s", got)
	}
}

// Five are there at the start: a load of three is asked for when B has lacked pieces for one cycle of 0.8 s. It lies at hand
// and blocks nobody: B has of it only what it lacks, and what comes straight goes first.
func TestCourseOfALoadCarriedOut(t *testing.T) {
	store := handMagazine()
	store.AtStart = 5
	course{
		line:    storeLine(one("A", "", 1), one("B", "store", 0.8), store),
		measure: 6 * s,
		want: `
			0   A running, B starved, store 5  # a load is carried out from 0.8 to 2.3
			1   B running                      # straight
			1.8 B starved
			2   B running                      # straight
			2.8 store 4                        # the first of the three that lie ready from 2.3 on
			3   store 5                        # waits on the way past: B is at work
			3.6 store 4                        # straight
			4   store 5
			4.4 store 4                        # straight
			5   store 5
			5.2 store 4                        # straight
		`,
		counts: `store: kept 0, given back 3, by hand 3, in 5, out 6`, // in at 1 … 5; out at 1, 2, 2.8, 3.6, 4.4, 5.2
	}.follow(t)
}

// Three come every 1.5 s and B works 0.6 s for three, so that it lacks pieces for 0.9 s each time: somebody carries out 600
// pieces, 30 at a time in 30 s. A never waits: 2,399 × 3 come straight within the hour, and 600 of the magazine go
// on besides, well before its end: 20 loads of 30 s and less than 10 s until each is used up.
func TestALoadCarriedOutBlocksNobody(t *testing.T) {
	a, b := one("A", "", 1.5), one("B", "store", 0.6)
	a.Gives, b.Takes = 3, 3
	rec := compile(t, storeLine(a, b, sim.Buffer{
		Kind: sim.HandMagazine, Holds: 600, AtStart: 600, Hand: sim.Hand{PerPiece: s, Load: 30},
	})).NewEngine().Run(sim.Options{Measure: sim.Hour})
	if r := &rec.Buffers[0]; r.Out != 3*2399+600 || r.GivenBack != 600 || rec.Stations[0].States[sim.Blocked] != 0 {
		t.Errorf("out %d, given back %d, A blocked for %d; by hand 7,797, 600 and 0", r.Out, r.GivenBack, rec.Stations[0].States[sim.Blocked])
	}
}

// The one operator clears the jam of B first; then, from 7.5 to 9, carries in what A holds since 4.
func TestCourseOfAHandMagazineThatWaitsForItsCrew(t *testing.T) {
	b, store := one("B", "store", 0.8), handMagazine()
	operator := sim.Work{Crew: "operators"}
	b.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sec(2.5), Lasts: sec(5), Crew: operator}}
	store.Hand.Crew = operator
	line := storeLine(one("A", "", 1), b, store)
	line.Crews = []sim.Crew{{Name: "operators", People: 1}}
	course{
		line:    line,
		measure: 9*s + 3*s/5,
		want: `
			0   A running, B starved
			1   B running
			1.8 B starved
			2   B running
			2.5 B down (jam)
			3   store 1                      # waits on the way past
			4   A blocked                    # asks for the operator
			7.5 A running, B running, store 2
			7.8 store 1                      # B takes what waits since 3
			8.5 store 2
			8.6 store 1
			9.4 B starved
			9.5 B running                    # straight
		`,
		counts: `operators: busy 6.5 s, requests 2, waited 1, wait time 3.5 s  # 2.5-7.5, 7.5-9; waited 4-7.5`,
	}.follow(t)
}

// Every carton is rejected, and what it took comes back after 2 s.
func TestReturnsToAHandMagazine(t *testing.T) {
	b := one("B", "store", 1)
	b.Takes, b.RejectShare = 2, 1
	store := handMagazine()
	store.Returns = sim.Returns{Share: 1, Inspection: sec(2)}
	rec := compile(t, storeLine(one("A", "", 1), b, store)).NewEngine().Run(sim.Options{Measure: 6*s + s/2})
	// B works 2-3 and 4-5, both rejected: two pieces are back at 5, two more at 7. At 5 B lacks one of two, for no
	// longer than a cycle: at 6 the sixth of A is there, and nobody has to carry.
	r := &rec.Buffers[0]
	if r.Returned != 2 || r.GivenBack != 0 || r.Kept != 0 || r.Level[1] != 2 || r.In != 6 || r.Out != 6 {
		t.Errorf("returned %d, given back %d, kept %d, level %d, in %d, out %d; by hand 2, 0, 0, 2, 6 and 6", r.Returned, r.GivenBack, r.Kept, r.Level[1], r.In, r.Out)
	}
}

func TestHandMagazineRefusesNonsense(t *testing.T) {
	for name, c := range map[string]struct {
		change func(b *sim.Buffer, a, taker *sim.Station)
		path   string
		text   string
	}{
		"no rate":        {func(b *sim.Buffer, _, _ *sim.Station) { b.Hand.PerPiece = 0 }, "store.hand rate", "how fast"},
		"no load":        {func(b *sim.Buffer, _, _ *sim.Station) { b.Hand.Load = 0 }, "store.load", "at least 1"},
		"load too large": {func(b *sim.Buffer, _, _ *sim.Station) { b.Hand.Load = 11 }, "store.load", "fits into the 10"},
		"load too small": {func(b *sim.Buffer, a, _ *sim.Station) { a.Gives = 4 }, "store.load", "at least 4"},
		"rates":          {func(b *sim.Buffer, _, _ *sim.Station) { b.Out = s }, "store.kind", "hand rate"},
		"stops": {func(b *sim.Buffer, _, _ *sim.Station) {
			b.Stops = []sim.Stop{{Name: "jam", Clock: sim.PieceClock, Every: sim.Fixed(3), Lasts: sec(1)}}
		}, "store.stops", "leave them out"},
		"crew":       {func(b *sim.Buffer, _, _ *sim.Station) { b.Hand.Crew.Crew = "nobody" }, "store.crew", "no crew"},
		"share":      {func(b *sim.Buffer, _, _ *sim.Station) { b.Returns = sim.Returns{Share: 2, Inspection: sec(1)} }, "store.returns.share", "100 %"},
		"inspection": {func(b *sim.Buffer, _, _ *sim.Station) { b.Returns.Share = 0.5 }, "store.returns.inspection", "how long"},
		"part of a cycle": {func(b *sim.Buffer, _, k *sim.Station) {
			b.Returns, k.Gives = sim.Returns{Share: 1, Inspection: sec(1)}, 2
		}, "store.returns", "gives 1 a cycle"},
		"hand of a store":    {func(b *sim.Buffer, _, _ *sim.Station) { b.Kind = sim.BesideLine }, "store.hand rate", "kind: hand magazine"},
		"returns of a store": {func(b *sim.Buffer, _, _ *sim.Station) { b.Kind, b.Hand, b.Returns.Share = sim.InLine, sim.Hand{}, 0.5 }, "store.returns", "kind: hand magazine"},
	} {
		t.Run(name, func(t *testing.T) {
			b := handMagazine()
			b.Name, b.From = "store", []string{"A"}
			a, taker := one("A", "", 1), one("C", "store", 1)
			c.change(&b, &a, &taker)
			_, err := sim.Compile(sim.Line{Stations: []sim.Station{a, taker}, Buffers: []sim.Buffer{b}})
			if err == nil || !strings.Contains(err.Error(), c.path+": ") || !strings.Contains(err.Error(), c.text) {
				t.Errorf("wanted %s: … %s …; got\n%v", c.path, c.text, err)
			}
		})
	}
}
