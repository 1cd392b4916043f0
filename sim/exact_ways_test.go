package sim_test

import "tuckline/sim"

// splitCases: a station chooses between two buffers, each with a consumer of its own.
func (l laws) splitCases() []exactCase {
	split := func(name string, rule sim.SendRule, rate float64, consumers [2]float64, slots [2]int64) exactCase {
		feeder := sim.Station{Name: "feeder", Takes: 1, Gives: 1, Cycle: l.exp(1 / rate)}
		feeder.Sends = sim.Sends{To: []string{"buffer a", "buffer b"}, Rule: rule}
		line := sim.Line{Stations: []sim.Station{feeder}}
		for i, branch := range []string{"a", "b"} {
			buffer := "buffer " + branch
			line.Buffers = append(line.Buffers, sim.Buffer{Name: buffer, From: []string{"feeder"}, Holds: slots[i]})
			line.Stations = append(line.Stations, sim.Station{
				Name: "branch " + branch, From: buffer, Takes: 1, Gives: 1, Cycle: l.exp(1 / consumers[i]),
			})
		}
		both := func(r *sim.Record) float64 { return perSecond(1)(r) + perSecond(2)(r) }
		return exactCase{name, "", line, 2000 * s, 20_000 * s, 40, []exactFigure{
			{"total_throughput", 0, both, 0}, {"share_by_consumer", 0, perSecond(1), 0}, {"share_by_consumer", 1, perSecond(2), 0},
		}}
	}
	return []exactCase{
		split("SPLSEP-1-alternate", sim.InTurn, 1, [2]float64{0.6, 0.6}, [2]int64{1, 1}),
		split("SPLSEP-2-alternate", sim.InTurn, 1, [2]float64{0.6, 0.5}, [2]int64{2, 2}),
		split("SPLSEP-1-priority", sim.FirstWithRoom, 1, [2]float64{0.6, 0.6}, [2]int64{1, 1}),
		split("SPLSEP-3-shortest", sim.FewestPieces, 1.2, [2]float64{0.7, 0.7}, [2]int64{3, 1}),
	}
}

// coupledCases: stations on one drive stop together, whatever their clocks.
func (l laws) coupledCases() []exactCase {
	drive := func(clock sim.Clock, up, down []float64) sim.Line {
		var cycles []sim.Law
		for i := range up {
			cycles = append(cycles, sec(1-0.1*float64(i))) // the longest is the unit's
		}
		line := serial(cycles, make([]int64, len(up)-1)...)
		for i := range up {
			line.Stations[i].Coupled = "drive"
			line = failing(line, i, clock, l.exp(up[i]), l.exp(down[i]))
		}
		return line
	}
	odf := drive(sim.RunningClock, []float64{90, 120, 60}, []float64{10, 5, 4})
	tdf := drive(sim.CalendarClock, []float64{20, 50, 80, 35, 60}, []float64{1, 2, 5, 3, 2})
	efficiency := func(station int) []exactFigure {
		return []exactFigure{{"line_efficiency", 0, running(station), 0}, {"line_efficiency", 0, perSecond(station), 0}}
	}
	return []exactCase{
		{"coupled, by running time", "ZERO-ODF-2", odf, 1000 * s, 50_000 * s, 40, efficiency(2)},
		{"coupled, by the calendar", "ZERO-TDF-5", tdf, 1000 * s, 50_000 * s, 40, efficiency(4)},
	}
}

// bernoulliCases: in every slot of 1 s a machine is up with probability p, independently: runs of
// geometric lengths by the calendar. Room is needed before the cycle.
func (l laws) bernoulliCases() []exactCase {
	slots := func(name, quantity string, p []float64, n ...int64) exactCase {
		var cycles []sim.Law
		for range p {
			cycles = append(cycles, sec(1))
		}
		line := serial(cycles, n...)
		for i := range p {
			line.Stations[i].BlocksBefore = true
			line = failing(line, i, sim.CalendarClock, l.geometricTime(1/(1-p[i])), l.geometricTime(1/p[i]))
		}
		figure := exactFigure{quantity, 0, perSecond(len(p) - 1), 0}
		return exactCase{name, "", line, 1000 * s, 10_000 * s, 40, []exactFigure{figure}}
	}
	return []exactCase{
		slots("BER2-1", "PR", []float64{0.9, 0.9}, 1),
		slots("BER2-4", "PR", []float64{0.8, 0.9}, 2),
		slots("BERM-5", "PR_exact", []float64{0.9, 0.7, 0.9}, 2, 3),
	}
}

// stoppedAnyTime: stops by the calendar strike idle and blocked stations too; an empty station takes
// its input all the same.
func (l laws) stoppedAnyTime() []exactCase {
	blocked := func(r *sim.Record) float64 { return float64(r.Stations[0].Holding) / float64(r.Window) }
	pair := func(name string, slots int64, rates, fails, repairs [2]float64) exactCase {
		line := l.exponentials([]float64{1 / rates[0], 1 / rates[1]}, slots)
		for i := range 2 {
			line.Stations[i].LoadsWhileStopped = true
			line = failing(line, i, sim.CalendarClock, l.exp(1/fails[i]), l.exp(1/repairs[i]))
		}
		return exactCase{name, "", line, 2000 * s, 40_000 * s, 40, []exactFigure{{"throughput", 0, perSecond(1), 0}}}
	}
	three := pair("EXPU-3", 2, [2]float64{1, 1}, [2]float64{0.05, 0.05}, [2]float64{0.5, 0.5})
	three.figures = append(three.figures, exactFigure{"blocked_prob_by_station", 0, blocked, 0})
	return []exactCase{three, pair("EXPU-5", 4, [2]float64{1, 1.5}, [2]float64{0.02, 0.1}, [2]float64{0.2, 0.4})}
}

// replaced: a planned stop at a fixed age of running renews the breakdown, and the other way round;
// and product of the first seconds after every restart is scrap.
func (l laws) replaced() []exactCase {
	age := func(name string, shape, scale, at, repair, planned float64, more ...exactFigure) exactCase {
		st := one("machine", "", 1)
		st.Stops = []sim.Stop{
			{
				Name: "breakdown", Every: must(l.t)(sim.WeibullShape(shape, scale*1e6)), Clock: sim.RunningClock,
				Lasts: l.exp(repair), Renews: []string{"planned"},
			},
			{Name: "planned", Every: sec(at), Clock: sim.RunningClock, Lasts: l.exp(planned), Renews: []string{"breakdown"}},
		}
		figures := append([]exactFigure{{"availability", 0, running(0), 0}}, more...)
		return exactCase{name, "", sim.Line{Stations: []sim.Station{st}}, 1000 * s, 40_000 * s, 40, figures}
	}
	plannedShare := func(r *sim.Record) float64 {
		stops := r.Stations[0].Stops // by name: breakdown, planned
		return float64(stops[1].Count) / float64(stops[0].Count+stops[1].Count)
	}
	yield := func(r *sim.Record) float64 {
		return float64(r.Stations[0].Given) / float64(r.Stations[0].Given+r.Stations[0].Scrapped)
	}
	// The cycle that is on its way when the time is over is scrap too: at most one cycle a run.
	scrapped := func(name string, mean, tau float64) exactCase {
		const cycle = 0.01
		line := failing(serial([]sim.Law{sec(cycle)}), 0, sim.RunningClock, l.exp(mean), sec(5))
		line.Stations[0].AfterStop = []sim.ScrapRule{{Lasts: sim.Micros(tau * 1e6)}}
		return exactCase{name, "", line, 1000 * s, 4000 * s, 40, []exactFigure{{"yield", 0, yield, cycle / mean}}}
	}
	return []exactCase{
		age("AGE-2", 3, 60, 40, 6, 1, exactFigure{"fraction_planned_stops", 0, plannedShare, 0}),
		age("AGE-3", 1.5, 200, 150, 20, 4),
		scrapped("SCRAPUP-EXP-1", 60, 0.5), scrapped("SCRAPUP-EXP-2", 10, 1),
	}
}
