package scenario_test

import (
	"slices"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// week runs a scenario once, for 100 h, and gives what happened with the names of its causes.
func week(t *testing.T, s *scenario.Scenario) (sim.Record, *sim.Model) {
	t.Helper()
	model, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	return model.NewEngine().Run(sim.Options{Seed: 1, Measure: 100 * sim.Hour}), model
}

// asWritten runs every file of the whole line once.
func asWritten(t *testing.T) map[string]sim.Record {
	t.Helper()
	all := map[string]sim.Record{}
	for _, name := range []string{"reels", "rejects", "cartoner", "lanes", "standing-belt", "sensors", "store-in-line", "store-beside", "hand-magazine"} {
		all[name], _ = week(t, whole(t, name))
	}
	return all
}

// stopsOf counts the stops of a cause of a station.
func stopsOf(t *testing.T, s *scenario.Scenario, station int, cause string) int64 {
	t.Helper()
	record, model := week(t, s)
	i := slices.Index(model.StopNames(station), cause)
	if i < 0 {
		t.Fatalf("there is no cause %q, only %q", cause, model.StopNames(station))
	}
	return record.Stations[station].Stops[i].Count
}

// TestWordsHaveEffects: a word without effect would be a wrong answer. Each of these counts is
// 0 without the word, and not with it.
func TestWordsHaveEffects(t *testing.T) {
	as := asWritten(t)
	for _, c := range []struct {
		file, without string
		count         func(r *sim.Record) int64
	}{
		{"reels", "blister machine.consumes.forming foil.splice fails=0 %", func(r *sim.Record) int64 { return r.Stations[0].Materials[0].FailedSplices }},
		{"reels", "blister machine.consumes.forming foil={reel: {holds: 40000 lengths}, per cycle: 1 length, change: 40 s}", func(r *sim.Record) int64 { return r.Stations[0].Materials[0].Tasks }},
		{"reels", "blister machine.consumes.forming foil.splice scrap=0 cycles", func(r *sim.Record) int64 { return r.Stations[0].ScrappedCycles }},
		{"reels", "blister machine.consumes.lidding foil={reel: {holds: 40000 lengths}, per cycle: 1 length, change: 40 s}", func(r *sim.Record) int64 { return r.Stations[0].Materials[1].Tasks }},
		{"reels", "cartoner.consumes.blanks.mis-picks.per 1000=0", func(r *sim.Record) int64 { return r.Stations[1].Materials[0].FailedPicks }},
		{"rejects", "blister machine.reject runs.enter=0 per 1000 cycles", func(r *sim.Record) int64 { return r.Stations[0].InRuns }},
		{"rejects", "blister machine.checks={weight: {every: 1000000 cycles, takes: 1 blister, lasts: 1 min}}", func(r *sim.Record) int64 { return r.Stations[0].Sampled }},
		{"rejects", "print-and-check.no-reads=0 %", func(r *sim.Record) int64 { return r.Stations[2].NoReads }},
		{"rejects", "print-and-check.lost per stop=0 cartons", func(r *sim.Record) int64 { return r.Stations[2].LostPacks }},
		{"cartoner", "cartoner.incomplete stack=wait", func(r *sim.Record) int64 { return r.Stations[1].EmptyPockets }},
		{"cartoner", "cartoner.closing.heat-up=none", func(r *sim.Record) int64 { return int64(r.Stations[1].States[sim.PlannedStop]) }},
		{"sensors", "belt.accumulating=no", func(r *sim.Record) int64 { return r.Buffers[0].SensorStops }},
		{"store-in-line", "store.stops.jam.every=900000000 blisters", func(r *sim.Record) int64 { return r.Buffers[0].Stops[1].Count }},
		{"store-beside", "store.holds=0", func(r *sim.Record) int64 { return r.Buffers[0].Kept }},
		{"hand-magazine", "magazine.returns.share=0 %", func(r *sim.Record) int64 { return r.Buffers[0].Returned }},
	} {
		with := as[c.file]
		if c.count(&with) == 0 {
			t.Errorf("%s: nothing is counted with the word that %q takes away", c.file, c.without)
		}
		if c.file == "sensors" || c.file == "store-beside" {
			continue // without it there is nothing that counts
		}
		without, _ := week(t, whole(t, c.file, c.without))
		if n := c.count(&without); n != 0 {
			t.Errorf("%s: %d are counted with %s", c.file, n, c.without)
		}
	}
	if stopsOf(t, whole(t, "rejects"), 0, sim.RejectStopName) == 0 {
		t.Error("rejects in a row never stop the machine")
	}
	if stopsOf(t, whole(t, "lanes"), 1, "jam") == 0 {
		t.Error("lanes never jam")
	}
}

// TestWordsChangeTheRun: what leaves no count of its own changes the course of the line.
func TestWordsChangeTheRun(t *testing.T) {
	all := asWritten(t)
	for _, c := range [][2]string{
		{"rejects", "blister machine.inspection.rejects after=0 cycles"},
		{"cartoner", "blister machine.heat recovery=0 s"},
		{"cartoner", "cartoner.speed steps=[{from level: 50 %, back at: 30 %, run at: top speed}]"},
		{"reels", "cartoner.consumes.blanks.mis-picks.retries=0"},
		{"reels", "blister machine.consumes.forming foil.web store.length=2 m"},
		{"reels", "blister machine.consumes.lidding foil.prepare.lasts=5 h"},
		{"lanes", "blister machine.lanes.rate=180/min"},
		{"standing-belt", "belt.accumulating=yes"},
		{"sensors", "belt.sensors.full.delay=20 s"},
		{"sensors", "belt.sensors.clear.at=3 m"},
		{"store-in-line", "store.in at most=200/min"},
		{"store-in-line", "store.out at most=200/min"},
		{"store-in-line", "store.keeps=0 blisters"},
		{"store-beside", "store.surplus=20/min"},
		{"hand-magazine", "magazine.hand rate=60/min"},
		{"hand-magazine", "magazine.load=15 blisters"},
		{"hand-magazine", "magazine.crew=2 operators"},
		{"hand-magazine", "magazine.stock=0 blisters"},
	} {
		as := all[c[0]]
		changed, _ := week(t, whole(t, c[0], c[1]))
		if as.Events == changed.Events && as.Stations[1].States == changed.Stations[1].States && as.Stations[0].Rejected == changed.Stations[0].Rejected {
			t.Errorf("%s: nothing changes with %s", c[0], c[1])
		}
	}
	// A first piece that leaves last changes nothing but ages.
	fifo, _ := week(t, whole(t, "store-beside", "store.leaves=first in first out"))
	if lifo := all["store-beside"]; lifo.Stations[1].Passed != fifo.Stations[1].Passed {
		t.Errorf("last in first out gives %d, first in first out %d", lifo.Stations[1].Passed, fifo.Stations[1].Passed)
	}
}
