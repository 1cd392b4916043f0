package sim_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/sim"
)

// withTasks is the reference line with refills, splices, preparations and checks that one fitter does.
func withTasks(t testing.TB) sim.Line {
	line := refLine(t, 600_000, 400_000, 3*sim.Second)
	work := sim.Work{Crew: "fitters"}
	line.Crews = []sim.Crew{{Name: "fitters", People: 1, ElsewhereShare: 0.3, ElsewhereSpell: 5 * sim.Minute}}
	line.Stations[0].Materials = []sim.Material{
		{
			Name: "foil", Web: true, Amount: 300e6, Refill: 300e6, PerCycle: 132_000, Lasts: sim.Fixed(float64(sim.Minute)), Crew: work,
			Store: sim.WebStore{On: true, Length: 12e6, Refill: 1.3}, SpliceScrap: 3, SpliceFails: 0.1,
		},
		{
			Name: "lidding", Web: true, Amount: 500e6, Refill: 500e6, PerCycle: 132_000, Lasts: sim.Fixed(float64(sim.Minute)), Crew: work,
			Prepare: sim.Prepare{On: true, Lasts: sim.Fixed(float64(4 * sim.Minute)), Crew: work}, PartUsed: true,
		},
	}
	line.Stations[1].Materials = []sim.Material{{
		Name: "blanks", Amount: 800, PerCycle: 1, Refill: 400, Lasts: sim.Fixed(float64(sim.Minute)), Crew: work,
		Alarm: sim.Level{On: true, Level: 300},
	}}
	line.Stations[0].Checks = []sim.Check{{
		Name: "leak test", Every: sim.Fixed(float64(45 * sim.Minute)), Clock: sim.CalendarClock, Takes: 12,
		Lasts: sim.Fixed(float64(3 * sim.Minute)), Crew: work,
	}}
	return line
}

// Tasks need no memory after set-up either.
func TestTasksAllocateNothing(t *testing.T) {
	e := compile(t, withTasks(t)).NewEngine()
	e.Run(sim.Options{Seed: 1, Measure: 100 * sim.Hour})
	allocated := func(measure sim.Micros) float64 {
		return testing.AllocsPerRun(3, func() { e.Run(sim.Options{Seed: 1, Measure: measure}) })
	}
	if short, long := allocated(sim.Hour), allocated(100*sim.Hour); long > short {
		t.Errorf("%.0f allocations in an hour, %.0f in a hundred", short, long)
	}
}

// Blanks, leaflets and film over days: all that tasks do happens, and nothing is lost.
func TestTasksConserve(t *testing.T) {
	line := withTasks(t)
	m := compile(t, line)
	o := sim.Options{Seed: 3, WarmUp: 7 * sim.Hour, Measure: 100 * sim.Hour}
	rec := m.NewEngine().Run(o)
	for _, fault := range faults(line, m, o, &rec, nil) {
		t.Error(fault)
	}
	foil, lidding, blanks := rec.Stations[0].Materials[0], rec.Stations[0].Materials[1], rec.Stations[1].Materials[0]
	if foil.FailedSplices == 0 || foil.Late == 0 || lidding.Tasks == 0 || blanks.Late == 0 || blanks.Late >= blanks.Tasks ||
		foil.Wasted == 0 || rec.Stations[0].Checks[0].Count < 100 {
		t.Errorf("foil %+v, lidding %+v, blanks %+v, %d tests", foil, lidding, blanks, rec.Stations[0].Checks[0].Count)
	}
}

// Refills that nobody has to be asked for and that take a moment change nothing: the line runs as with
// a stock that never ends.
func TestRefillsInTimeChangeNothing(t *testing.T) {
	stocked := func(m sim.Material) sim.Record {
		line := refLine(t, 600_000, 400_000, 3*sim.Second)
		m.Name, m.PerCycle = "blanks", 1
		line.Stations[1].Materials = []sim.Material{m}
		rec := compile(t, line).NewEngine().Run(sim.Options{Seed: 5, WarmUp: sim.Hour, Measure: 40 * sim.Hour})
		rec.Stations[1].Materials, rec.Events = nil, 0
		return rec
	}
	second := sim.Fixed(float64(sim.Second))
	endless := stocked(sim.Material{Amount: 1 << 40, Refill: 1, Lasts: second})
	in := stocked(sim.Material{Amount: 100, Refill: 50, Lasts: second, Alarm: sim.Level{On: true, Level: 50}})
	if d := cmp.Diff(endless, in); d != "" {
		t.Error(d)
	}
}

// Every task has a stream of its own: with checks and preparations added, stops come and last as
// before, by the clock of their station.
func TestTasksHaveStreamsOfTheirOwn(t *testing.T) {
	begins := func(line sim.Line) []sim.Micros {
		var trace sim.Trace
		compile(t, line).NewEngine().Run(sim.Options{Seed: 2, Measure: 60 * sim.Hour, Trace: &trace})
		var all []sim.Micros
		for _, c := range trace.Stops {
			if c.Station == 0 {
				all = append(all, c.Begin, c.Done)
			}
		}
		return all
	}
	plain := refLine(t, 600_000, 400_000, 3*sim.Second)
	plain.Stations, plain.Buffers = plain.Stations[:1], nil
	tasks := plain
	tasks.Stations = []sim.Station{plain.Stations[0]}
	exp := must(t)(sim.Exponential(float64(10 * sim.Minute)))
	tasks.Stations[0].Checks = []sim.Check{{Name: "leak test", Every: exp, Clock: sim.RunningClock, Takes: 5, Lasts: exp}}
	tasks.Stations[0].Materials = []sim.Material{{
		Name: "foil", Web: true, Amount: 300e6, Refill: 300e6, PerCycle: 132_000, Lasts: sim.Fixed(1),
		Store: sim.WebStore{On: true, Length: 12e6, Refill: 1.3}, SpliceFails: 0.1,
	}}
	if d := cmp.Diff(begins(plain), begins(tasks)); d != "" {
		t.Error(d)
	}
}
