package sim_test

import (
	"errors"
	"strings"
	"testing"

	"tuckline/sim"
)

// What a store or belt cannot have is refused with its path and with what would be right.
func TestStoresRefuseNonsense(t *testing.T) {
	belt := sim.Buffer{Holds: 10, Transit: 2 * s, Conveyor: true}
	full := func(at int64, delay sim.Micros) sim.Sensor { return sim.Sensor{On: true, At: at, Delay: delay} }
	for name, c := range map[string]struct {
		change func(b *sim.Buffer, a, taker *sim.Station)
		belt   bool
		path   string
		text   string
	}{
		"stands without transit":        {func(b *sim.Buffer, _, _ *sim.Station) { b.Stands = true }, false, "store.accumulating", "only a conveyor"},
		"start level on a belt":         {func(b *sim.Buffer, _, _ *sim.Station) { b.Stands, b.Start = true, sim.Level{On: true, Level: 2} }, true, "store.levels.start downstream", "let the belt accumulate"},
		"sensor on a buffer":            {func(b *sim.Buffer, _, _ *sim.Station) { b.Full = full(2, 0) }, false, "store.sensors", "use levels"},
		"sensor on a belt that stands":  {func(b *sim.Buffer, _, _ *sim.Station) { b.Stands, b.Full = true, full(2, 0) }, true, "store.sensors", "accumulates"},
		"sensor beyond the belt":        {func(b *sim.Buffer, _, _ *sim.Station) { b.Full = full(11, 0) }, true, "store.sensors.full.at", "10 places"},
		"sensor at the exit":            {func(b *sim.Buffer, _, _ *sim.Station) { b.Full = full(0, 0) }, true, "store.sensors.full.at", "at least"},
		"clear alone":                   {func(b *sim.Buffer, _, _ *sim.Station) { b.Clear = full(2, 0) }, true, "store.sensors.clear", "write full too"},
		"travel longer than transit":    {func(b *sim.Buffer, _, _ *sim.Station) { b.Full = full(2, 0); b.Full.Travel = b.Transit + 1 }, true, "store.sensors.full.travel", "transit"},
		"negative delay":                {func(b *sim.Buffer, _, _ *sim.Station) { b.Full = full(2, -1) }, true, "store.sensors.full.delay", "0 or more"},
		"clear beyond full, at once":    {func(b *sim.Buffer, _, _ *sim.Station) { b.Full, b.Clear = full(2, 0), full(3, 0) }, true, "store.sensors.clear.delay", "nearer"},
		"clear that can lock":           {func(b *sim.Buffer, _, k *sim.Station) { b.Full, b.Clear, k.Takes = full(5, 0), full(2, 0), 3 }, true, "store.sensors.clear.at", "at least 3"},
		"full that can lock":            {func(b *sim.Buffer, _, k *sim.Station) { b.Full, k.Takes = full(2, 0), 3 }, true, "store.sensors.full.at", "at least 3"},
		"start level above the sensor":  {func(b *sim.Buffer, _, _ *sim.Station) { b.Full, b.Start = full(3, 0), sim.Level{On: true, Level: 4} }, true, "store.levels.start downstream", "at most 3"},
		"negative keeps":                {func(b *sim.Buffer, _, _ *sim.Station) { b.Keeps = -1 }, false, "store.keeps", "0 or more"},
		"keeps all in line":             {func(b *sim.Buffer, _, _ *sim.Station) { b.Keeps = 11 }, false, "store.holds", "at least 11"},
		"keeps all beside":              {func(b *sim.Buffer, _, _ *sim.Station) { b.Kind, b.Keeps = sim.BesideLine, 10 }, false, "store.keeps", "at most 9"},
		"keeps above stop upstream":     {func(b *sim.Buffer, _, _ *sim.Station) { b.Keeps, b.StopUpstream = 5, 5 }, false, "store.levels.stop upstream", "only with 6"},
		"keeps above restart":           {func(b *sim.Buffer, _, _ *sim.Station) { b.Keeps, b.Restart = 5, sim.Level{On: true, Level: 4} }, false, "store.levels.restart upstream", "at least 5"},
		"surplus in line":               {func(b *sim.Buffer, _, _ *sim.Station) { b.Surplus = s }, false, "store.surplus", "kind: beside the line"},
		"surplus faster than out":       {func(b *sim.Buffer, _, _ *sim.Station) { b.Kind, b.Surplus, b.Out = sim.BesideLine, s, 2*s }, false, "store.surplus", "slower"},
		"beside the line with transit":  {func(b *sim.Buffer, _, _ *sim.Station) { b.Kind = sim.BesideLine }, true, "store.kind", "entry of its own"},
		"beside the line without place": {func(b *sim.Buffer, _, _ *sim.Station) { b.Kind, b.Holds = sim.BesideLine, sim.Smallest }, false, "store.holds", "at least 1"},
		"more at start than it holds":   {func(b *sim.Buffer, _, _ *sim.Station) { b.Kind, b.AtStart = sim.BesideLine, 11 }, false, "run.at start.store", "10 places"},
		"no such kind":                  {func(b *sim.Buffer, _, _ *sim.Station) { b.Kind = 9 }, false, "store.kind", "hand magazine"},
		"negative rates":                {func(b *sim.Buffer, _, _ *sim.Station) { b.In = -1 }, false, "store.in at most", "more than nothing"},
		"speed steps behind a belt that stands": {func(b *sim.Buffer, _, k *sim.Station) {
			b.Stands, k.Takes, k.Steps = true, 2, []sim.SpeedStep{{From: 2, BackAt: 1, Cycle: s}}
		}, true, "C.speed steps", "put a buffer between"},
		"stop on a cycle clock": {func(b *sim.Buffer, _, _ *sim.Station) {
			b.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(3), Lasts: sec(1)}}
		}, false, "store.stops.jam.every", "pieces that go in"},
		"stop without a length": {func(b *sim.Buffer, _, _ *sim.Station) {
			b.Stops = []sim.Stop{{Name: "jam", Clock: sim.PieceClock, Every: sim.Fixed(3)}}
		}, false, "store.stops.jam.lasts", "how long"},
		"stop of an unknown crew": {func(b *sim.Buffer, _, _ *sim.Station) {
			b.Stops = []sim.Stop{{Name: "jam", Clock: sim.PieceClock, Every: sim.Fixed(3), Lasts: sec(1), Crew: sim.Work{Crew: "nobody"}}}
		}, false, "store.stops.jam.crew", "no crew"},
		"stop that scraps": {func(b *sim.Buffer, _, _ *sim.Station) {
			b.Stops = []sim.Stop{{Name: "jam", Clock: sim.PieceClock, Every: sim.Fixed(3), Lasts: sec(1), Scraps: true}}
		}, false, "store.stops.jam", "leave that out"},
	} {
		t.Run(name, func(t *testing.T) {
			b := sim.Buffer{Holds: 10}
			if c.belt {
				b = belt
			}
			b.Name, b.From = "store", []string{"A"}
			a, taker := one("A", "", 1), one("C", "store", 1)
			c.change(&b, &a, &taker)
			_, err := sim.Compile(sim.Line{Stations: []sim.Station{a, taker}, Buffers: []sim.Buffer{b}})
			var problems sim.Problems
			if !errors.As(err, &problems) {
				t.Fatalf("not refused: %v", err)
			}
			for _, p := range problems {
				if p.Path == c.path && strings.Contains(p.Text, c.text) {
					return
				}
			}
			t.Errorf("wanted %s: … %s …; got\n%v", c.path, c.text, err)
		})
	}
}

// Two stations cannot share a belt that does not accumulate if one of them takes several at once.
func TestABeltThatStandsHasOneTakerOfSeveral(t *testing.T) {
	b, c := one("B", "belt", 1), one("C", "belt", 1)
	b.Takes, c.Takes = 2, 2
	_, err := sim.Compile(sim.Line{
		Stations: []sim.Station{one("A", "", 1), b, c},
		Buffers:  []sim.Buffer{{Name: "belt", From: []string{"A"}, Holds: 4, Transit: s, Conveyor: true, Stands: true}},
	})
	if err == nil || !strings.Contains(err.Error(), "put a buffer behind it") {
		t.Errorf("got %v", err)
	}
}

// The places of a line with a store beside it: those of the direct way are told apart.
func TestPlacesOfAStoreBesideTheLine(t *testing.T) {
	b := one("B", "store", 1)
	b.Takes = 10
	p := compile(t, storeLine(one("A", "", 1), b, sim.Buffer{Kind: sim.BesideLine, Holds: 600})).Places()[0]
	if p.Capacity != 610 || p.Direct != 10 { // one that comes beside a rest of at most nine
		t.Errorf("%d places, %d of them direct; by hand 610 and 10", p.Capacity, p.Direct)
	}
}
