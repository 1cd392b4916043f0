package sim_test

import (
	"fmt"

	"tuckline/sim"
)

// rigidCases: all stations stop when one does. One station with three causes is exactly that,
// whatever the laws.
func (l laws) rigidCases() []exactCase {
	causes := serial([]sim.Law{sec(1)})
	causes = failing(causes, 0, sim.RunningClock, l.exp(90), must(l.t)(sim.Lognormal(10e6, 0.8)))
	causes = failing(causes, 0, sim.RunningClock, must(l.t)(sim.Gamma(120e6, 0.5)), sec(5))
	causes = failing(causes, 0, sim.RunningClock, must(l.t)(sim.Weibull(60e6, 1.5)), must(l.t)(sim.UniformSpread(4e6, 0.3)))
	joined, allowance := l.joined()
	efficiency := func(f func(*sim.Record) float64, allowance float64) []exactFigure {
		return []exactFigure{{"line_efficiency", 0, f, allowance}}
	}
	inTenths := func(r *sim.Record) float64 { return perSecond(2)(r) * joinedCycle }
	return []exactCase{
		{"one station, three causes", "ZERO-ODF-2", causes, 1000 * s, 50_000 * s, 40, efficiency(running(0), 0)},
		{"three stations that stop together", "ZERO-ODF-2", joined, 1000 * s, 20_000 * s, 40, efficiency(inTenths, allowance)},
		{"ZERO-TDF-4", "", l.calendarStops([]float64{45, 200}, []float64{9, 20}), 1000 * s, 50_000 * s, 40, efficiency(running(0), 0)},
		{"ZERO-TDF-5", "", l.calendarStops([]float64{20, 50, 80, 35, 60}, []float64{1, 2, 5, 3, 2}), 1000 * s, 50_000 * s, 40, efficiency(running(0), 0)},
		{"INF-2", "", l.unlimited([]float64{90, 120, 60}, []float64{10, 5, 4}), 50_000 * s, 50_000 * s, 40, efficiency(perSecond(2), 0)},
		{"worst machine in the middle", "INF-2", l.unlimited([]float64{120, 90, 60}, []float64{5, 10, 4}), 50_000 * s, 50_000 * s, 40, efficiency(perSecond(2), 0)},
	}
}

// joinedCycle is short, in seconds: see joined.
const joinedCycle = 0.1

// joined is three stations in a row that stop together, with exponential stops by running
// time. In step they lose the length of each stop once. Two stops overlap only if
// both strike within the cycles that the others still finish: at most three cycles around the
// first. What such a pair saves is at most the shorter stop, so that the allowance is three
// times Σ cycle / (MTBF 1 × MTBF 2) × min(MTTR 1, MTTR 2) over the pairs. It vanishes with the cycle.
func (l laws) joined() (sim.Line, float64) {
	mtbf, mttr := []float64{90, 120, 60}, []float64{10, 5, 4}
	line := serial([]sim.Law{sec(joinedCycle), sec(joinedCycle), sec(joinedCycle)}, 0, 0)
	allowance := 0.0
	for i := range mtbf {
		line = failing(line, i, sim.RunningClock, l.exp(mtbf[i]), l.exp(mttr[i]))
		for j := range i {
			allowance += 3 * joinedCycle / (mtbf[i] * mtbf[j]) * min(mttr[i], mttr[j])
		}
	}
	line.Stations[1].StopsWith, line.Stations[2].StopsWith = "station 1", "station 2"
	return line, allowance
}

// calendarStops is one station whose stops come by the calendar and overlap: it runs when none
// is open, the product of the shares.
func (l laws) calendarStops(up, down []float64) sim.Line {
	line := serial([]sim.Law{sec(1)})
	for i := range up {
		line = failing(line, 0, sim.CalendarClock, l.exp(up[i]), l.exp(down[i]))
	}
	return line
}

// unlimited is stations of 1 s with unlimited buffers: the worst of them alone decides.
func (l laws) unlimited(mtbf, mttr []float64) sim.Line {
	line := serial([]sim.Law{sec(1), sec(1), sec(1)}, sim.Unlimited, sim.Unlimited)
	for i := range mtbf {
		line = failing(line, i, sim.RunningClock, l.exp(mtbf[i]), l.exp(mttr[i]))
	}
	return line
}

// unreliableCases: exponential cycles, stops by running time, and one or no repairer.
func (l laws) unreliableCases() []exactCase {
	with := func(line sim.Line, every, lasts float64, crew ...sim.Work) sim.Line {
		for i := range line.Stations {
			line = failing(line, i, sim.RunningClock, l.exp(every), l.exp(lasts), crew...)
		}
		if len(crew) > 0 {
			line.Crews = []sim.Crew{{Name: crew[0].Crew, People: 1}}
		}
		return line
	}
	repairer := sim.Work{Crew: "repairers", People: 1}
	rate := func(name string, line sim.Line) exactCase {
		last := len(line.Stations) - 1
		return exactCase{name, "", line, 2000 * s, 40_000 * s, 40, []exactFigure{{"throughput", 0, perSecond(last), 0}}}
	}
	return []exactCase{
		rate("EXPU-1", with(l.exponentials([]float64{1, 1}, 2), 20, 2)),
		rate("EXPU-7", with(l.exponentials([]float64{1, 1}, 3), 20, 10, repairer)),
		rate("EXPU-9", with(l.exponentials([]float64{1, 1, 1}, 2, 2), 20, 4, repairer)),
	}
}

// repairmen: n stations with short cycles, of which a few people repair those that are down.
func (l laws) repairmen() []exactCase {
	shop := func(n, people int, failRate, repairRate float64) sim.Line {
		line := sim.Line{Crews: []sim.Crew{{Name: "repairers", People: people}}}
		for i := range n {
			line.Stations = append(line.Stations, one(fmt.Sprintf("machine %d", i+1), "", 0.5))
			line = failing(line, i, sim.RunningClock, l.exp(1/failRate), l.exp(1/repairRate), sim.Work{Crew: "repairers"})
		}
		return line
	}
	available := func(r *sim.Record) float64 {
		sum := 0.0
		for i := range r.Stations {
			sum += running(i)(r) / float64(len(r.Stations))
		}
		return sum
	}
	downTime := func(r *sim.Record) float64 {
		var time sim.Micros
		count := int64(0)
		for i := range r.Stations {
			stop := &r.Stations[i].Stops[0]
			time, count = time+stop.Waiting+stop.Down, count+stop.Count
		}
		return float64(time) / float64(count) / 1e6
	}
	return []exactCase{
		{"REP-WINSTON", "", shop(5, 2, 1.0/30, 1.0/3), 1000 * s, 5000 * s, 40, []exactFigure{
			{"machine_availability", 0, available, 0},
		}},
		{"REP-6-1-0.02-0.2", "", shop(6, 1, 0.02, 0.2), 1000 * s, 70_000 * s, 40, []exactFigure{
			{"machine_availability", 0, available, 0}, {"mean_down_time", 0, downTime, 0},
		}},
	}
}

// mergeCases: several feeders of one buffer, or several that take from it.
func (l laws) mergeCases() []exactCase {
	merge := func(slots int64, consumer float64, rates ...float64) sim.Line {
		line := sim.Line{Buffers: []sim.Buffer{{Name: "shared", Holds: slots}}}
		for i, r := range rates {
			name := fmt.Sprintf("feeder %d", i+1)
			line.Stations = append(line.Stations, sim.Station{Name: name, Takes: 1, Gives: 1, Cycle: l.exp(1 / r)})
			line.Buffers[0].From = append(line.Buffers[0].From, name)
		}
		last := sim.Station{Name: "consumer", From: "shared", Takes: 1, Gives: 1, Cycle: l.exp(1 / consumer)}
		line.Stations = append(line.Stations, last)
		return line
	}
	split := l.exponentials([]float64{1, 1 / 0.6}, 1)
	split.Buffers[0].Holds = 0
	split.Stations = append(split.Stations, split.Stations[1])
	split.Stations[2].Name = "station 3"
	failed := merge(6, 1.2, 0.6, 0.7)
	for i, f := range [][2]float64{{0.05, 0.25}, {0.02, 0.1}, {0.04, 0.4}} {
		failed = failing(failed, i, sim.RunningClock, l.exp(1/f[0]), l.exp(1/f[1]))
	}
	both := func(r *sim.Record) float64 { return perSecond(1)(r) + perSecond(2)(r) }
	feeders := func(total exactFigure) []exactFigure {
		return []exactFigure{total, {"share_by_feeder", 0, perSecond(0), 0}, {"share_by_feeder", 1, perSecond(1), 0}}
	}
	total := exactFigure{"total_throughput", 0, perSecond(2), 0}
	return []exactCase{
		{"MRG-0.6-3", "", merge(3, 1, 0.6, 0.6), 2000 * s, 40_000 * s, 40, []exactFigure{
			total, {"mean_parts_in_buffer", 0, level(0), 0},
		}},
		{"MRG-U-2", "", merge(0, 1, 0.9, 0.5), 2000 * s, 20_000 * s, 40, feeders(total)},
		{"MRG-F-2", "", failed, 2000 * s, 50_000 * s, 40, feeders(total)},
		{"SPL-0.6-0", "", split, 2000 * s, 20_000 * s, 40, []exactFigure{
			{"total_throughput", 0, both, 0}, {"share_by_consumer", 0, perSecond(1), 0}, {"share_by_consumer", 1, perSecond(2), 0},
		}},
	}
}
