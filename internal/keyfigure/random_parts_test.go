package keyfigure

import (
	"pgregory.net/rapid"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// withParts gives stations that are on no drive random parts of the whole line.
func withParts(t *rapid.T, s *scenario.Scenario) {
	for i := range s.Line.Stations {
		if one := &s.Line.Stations[i]; one.Coupled == "" {
			rejectParts(t, one)
			restartParts(t, one)
			materialParts(t, one)
			s.Stations[i].Materials = make([]scenario.Material, len(one.Materials))
		}
	}
}

// storeParts gives stores random rates, stops and ways to lie in the line.
func storeParts(t *rapid.T, s *scenario.Scenario) {
	for j := range s.Line.Buffers {
		b := &s.Line.Buffers[j]
		if chance(t, "in at most") {
			b.In = sim.Micros(rapid.IntRange(200_000, 2_000_000).Draw(t, "interval"))
		}
		if chance(t, "out at most") {
			b.Out = sim.Micros(rapid.IntRange(200_000, 2_000_000).Draw(t, "interval"))
		}
		if chance(t, "keeps") {
			b.Keeps = rapid.Int64Range(1, 20).Draw(t, "pieces")
		}
		if chance(t, "store stops") {
			b.Stops = []sim.Stop{fixedStop("store stop", sim.PieceClock, float64(rapid.IntRange(200, 2000).Draw(t, "every")), 1)}
		}
		if chance(t, "beside") {
			b.Kind = sim.BesideLine
		}
	}
}

func chance(t *rapid.T, what string) bool { return rapid.IntRange(0, 3).Draw(t, what) == 0 }

func rejectParts(t *rapid.T, s *sim.Station) {
	if chance(t, "runs") {
		s.Runs = sim.RejectRuns{Enter: rapid.Float64Range(0.001, 0.1).Draw(t, "enter"), Share: rapid.Float64Range(0.2, 1).Draw(t, "share"), Length: rapid.Float64Range(2, 30).Draw(t, "length")}
	}
	if chance(t, "stop after") {
		s.RejectStop = sim.RejectStop{After: rapid.Int64Range(2, 5).Draw(t, "row"), Lasts: sim.Fixed(minutes(rapid.Float64Range(0.1, 2).Draw(t, "reset")))}
	}
	if chance(t, "register") {
		s.RejectsAfter = rapid.Int64Range(1, 9).Draw(t, "rejects after")
	}
	if chance(t, "no-reads") {
		s.NoReads = rapid.Float64Range(0, 0.1).Draw(t, "share")
	}
	if chance(t, "lost") {
		s.LostPerStop = rapid.Int64Range(1, 9).Draw(t, "packs")
	}
	if chance(t, "check") {
		s.Checks = []sim.Check{{
			Name: "test", Clock: rapid.SampledFrom([]sim.Clock{sim.CycleClock, sim.PieceClock}).Draw(t, "clock"), Every: sim.Fixed(rapid.Float64Range(30, 300).Draw(t, "every")),
			Takes: rapid.Int64Range(1, 9).Draw(t, "takes"), Lasts: sim.Fixed(minutes(rapid.Float64Range(0.1, 9).Draw(t, "lasts"))),
		}}
		if rapid.Bool().Draw(t, "calendar") {
			s.Checks[0].Clock, s.Checks[0].Every = sim.CalendarClock, sim.Fixed(minutes(s.Checks[0].Every.Mean()/60))
		}
	}
}

func restartParts(t *rapid.T, s *sim.Station) {
	if chance(t, "heat recovery") {
		s.HeatRecovery = sim.Micros(rapid.IntRange(1, 60).Draw(t, "seconds")) * sim.Second
	}
	if chance(t, "ramp") {
		s.Ramp = sim.Micros(rapid.IntRange(1, 60).Draw(t, "seconds")) * sim.Second
	}
	if chance(t, "group") {
		s.Group = sim.Group{Every: rapid.Int64Range(1, 20).Draw(t, "every"), Adds: 3 * sim.Second}
	}
	if chance(t, "scrap") {
		s.AfterStop = []sim.ScrapRule{{LongerThan: 30 * sim.Second, Cycles: rapid.Int64Range(1, 9).Draw(t, "cycles")}}
	}
}

func materialParts(t *rapid.T, s *sim.Station) {
	add := func(m sim.Material) {
		m.Refill, m.Lasts = m.Amount, sim.Fixed(minutes(rapid.Float64Range(0.1, 3).Draw(t, "change")))
		s.Materials = append(s.Materials, m)
	}
	if chance(t, "blanks") {
		m := sim.Material{Name: "blanks", Amount: rapid.Int64Range(50, 500).Draw(t, "holds"), PerCycle: 1}
		if rapid.Bool().Draw(t, "mis-picks") {
			m.MisPicks = sim.MisPicks{Share: rapid.Float64Range(0.001, 0.3).Draw(t, "share"), Retries: rapid.Int64Range(0, 3).Draw(t, "retries"), Stops: true, Lasts: sim.Fixed(minutes(0.3))}
		}
		add(m)
	}
	if chance(t, "foil") {
		m := sim.Material{Name: "foil", Web: true, Amount: 1e6 * rapid.Int64Range(10, 100).Draw(t, "metres"), PerCycle: 100_000}
		if rapid.Bool().Draw(t, "splices") {
			m.SpliceScrap, m.SpliceFails = rapid.Int64Range(0, 30).Draw(t, "scrap"), rapid.Float64Range(0, 0.5).Draw(t, "fails")
		}
		if rapid.Bool().Draw(t, "store") {
			m.Store = sim.WebStore{On: true, Length: 2_000_000, Refill: 1.3}
		}
		add(m)
	}
}
