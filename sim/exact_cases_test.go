package sim_test

import (
	"testing"

	"tuckline/sim"
)

// exactCases are all cases; what each is and where its values come from stands in
// testdata/exact/cases.json.
func exactCases(t *testing.T) []exactCase {
	l := laws{t}
	var all []exactCase
	all = append(all, l.queues()...)
	all = append(all, l.exponentialCases()...)
	all = append(all, l.rigidCases()...)
	all = append(all, l.geometricCases()...)
	all = append(all, l.unreliableCases()...)
	all = append(all, l.mergeCases()...)
	all = append(all, l.repairmen()...)
	all = append(all, l.walkers()...)
	all = append(all, l.scrapCases()...)
	all = append(all, l.splitCases()...)
	all = append(all, l.coupledCases()...)
	all = append(all, l.bernoulliCases()...)
	all = append(all, l.stoppedAnyTime()...)
	all = append(all, l.replaced()...)
	return all
}

// queue is a saturated station with exponential cycles, a Poisson stream, in front of unlimited
// room and a server of mean 1 s.
func (l laws) queue(rate float64, service sim.Law) sim.Line {
	return serial([]sim.Law{l.exp(1 / rate), service}, sim.Unlimited)
}

func (l laws) queues() []exactCase {
	uniform := must(l.t)(sim.Uniform(0, 2e6))
	broken := failing(l.queue(0.5, l.exp(1)), 1, sim.RunningClock, l.exp(20), l.exp(2))
	inSystem := func(r *sim.Record) float64 {
		return level(0)(r) + share(r, 1, sim.Running, sim.Down)
	}
	return []exactCase{
		{"MM1-1", "", l.queue(0.5, l.exp(1)), 1000 * s, 400_000 * s, 40, []exactFigure{
			{"Lq", 0, level(0), 0}, {"Wq", 0, wait(0), 0},
		}},
		{"MD1-1", "", l.queue(0.5, sec(1)), 1000 * s, 200_000 * s, 40, []exactFigure{{"Wq", 0, wait(0), 0}}},
		{"MD1-2", "", l.queue(0.8, sec(1)), 1000 * s, 400_000 * s, 40, []exactFigure{{"Wq", 0, wait(0), 0}}},
		{"MG1-2", "", l.queue(0.7, uniform), 1000 * s, 300_000 * s, 40, []exactFigure{{"Wq", 0, wait(0), 0}}},
		{"MG1-ODF-1", "", broken, 2000 * s, 300_000 * s, 40, []exactFigure{{"L", 0, inSystem, 0}}},
	}
}

func (l laws) exponentialCases() []exactCase {
	ones := func(n int) []float64 {
		means := make([]float64, n)
		for i := range means {
			means[i] = 1
		}
		return means
	}
	e2 := must(l.t)(sim.Erlang(1e6, 2))
	rate := func(name string, line sim.Line, more ...exactFigure) exactCase {
		last := len(line.Stations) - 1
		figures := append([]exactFigure{{"throughput", 0, perSecond(last), 0}}, more...)
		return exactCase{name, "", line, 2000 * s, 20_000 * s, 40, figures}
	}
	five := rate("TWO-5", l.exponentials(ones(2), 5), exactFigure{"mean_parts_in_buffers", 0, level(0), 0})
	five.measure = 100_000 * s
	erlang := rate("ERL-3-2-k2", serial([]sim.Law{e2, e2, e2}, 2, 2))
	erlang.measure = 4000 * s
	return []exactCase{
		rate("HUNT-2-0", l.exponentials(ones(2), 0)),
		rate("HUNT-3-0", l.exponentials(ones(3), 0, 0)),
		rate("TWO-1", l.exponentials(ones(2), 1)),
		rate("TWO-2", l.exponentials(ones(2), 2)),
		five,
		rate("TWO-7", l.exponentials(ones(2), 7)),
		rate("HB-4-0", l.exponentials(ones(4), 0, 0, 0)),
		rate("REV-A", l.exponentials([]float64{1, 2, 1.5, 0.8}, 1, 3, 0)),
		rate("REV-B", l.exponentials([]float64{0.8, 1.5, 2, 1}, 0, 3, 1)),
		erlang,
	}
}

// geometricCases: cycles of 1 s, stops after geometric numbers of cycles, repairs of geometric
// numbers of seconds; N of the source counts both machines.
func (l laws) geometricCases() []exactCase {
	pair := func(name string, slots int64, r1, p1, r2, p2 float64) exactCase {
		line := serial([]sim.Law{sec(1), sec(1)}, slots)
		line = failing(line, 0, sim.CycleClock, l.geometric(1/p1), l.geometricTime(1/r1))
		line = failing(line, 1, sim.CycleClock, l.geometric(1/p2), l.geometricTime(1/r2))
		rate := exactFigure{"production_rate_per_cycle", 0, perSecond(1), 0}
		return exactCase{name, "", line, 2000 * s, 30_000 * s, 40, []exactFigure{rate}}
	}
	// n of the source: what is stored, on the second machine, or held by the first.
	n := func(r *sim.Record) float64 {
		return level(0)(r) + 1 - share(r, 1, sim.Starved) + share(r, 0, sim.Blocked)
	}
	withLevel := func(c exactCase) exactCase {
		c.figures = append(c.figures, exactFigure{"mean_level_n", 0, n, 0})
		c.measure = 150_000 * s
		return c
	}
	general := func(name string, slots int64, p float64, one, two sim.Law) exactCase {
		line := serial([]sim.Law{sec(1), sec(1)}, slots)
		line = failing(line, 0, sim.CycleClock, l.geometric(1/p), one)
		line = failing(line, 1, sim.CycleClock, l.geometric(1/p), two)
		rate := exactFigure{"production_rate_per_cycle", 0, perSecond(1), 0}
		return exactCase{name, "", line, 2000 * s, 30_000 * s, 40, []exactFigure{rate}}
	}
	values := func(v ...sim.Weighted) sim.Law {
		for i := range v {
			v[i].Value *= 1e6
		}
		return must(l.t)(sim.Empirical(v))
	}
	long := serial([]sim.Law{sec(1), sec(1), sec(1)}, 4, 4)
	for i, p := range []float64{0.01, 0.02, 0.01} {
		long = failing(long, i, sim.CycleClock, l.geometric(1/p), l.geometricTime(10))
	}
	return []exactCase{
		withLevel(pair("GER2-1", 2, 0.1, 0.01, 0.1, 0.01)),
		pair("GER2-13", 8, 0.1, 0.01, 0.06, 0.01),
		pair("GER2-15", 1, 0.1, 0.01, 0.1, 0.01),
		pair("GER2-N2-1", 0, 0.1, 0.01, 0.1, 0.01),
		general("GENR-4", 20, 0.01, sec(10), sec(10)),
		general("GENR-7", 6, 0.02,
			values(sim.Weighted{Value: 6, Weight: 0.5}, sim.Weighted{Value: 8, Weight: 0.3}, sim.Weighted{Value: 1, Weight: 0.2}),
			values(sim.Weighted{Value: 3, Weight: 0.7}, sim.Weighted{Value: 25, Weight: 0.3})),
		{"LONG-3", "", long, 2000 * s, 30_000 * s, 40, []exactFigure{{"production_rate_exact", 0, perSecond(2), 0}}},
	}
}

// scrapCases: rejects at the first of two stations, and cycles scrapped after every stop.
func (l laws) scrapCases() []exactCase {
	rejecting := func(name string, share float64, slots int64) exactCase {
		line := l.exponentials([]float64{1, 1}, slots)
		line.Stations[0].RejectShare = share
		return exactCase{name, "", line, 2000 * s, 20_000 * s, 40, []exactFigure{{"good_throughput", 0, perSecond(1), 0}}}
	}
	yield := func(r *sim.Record) float64 {
		return float64(r.Stations[0].Given) / float64(r.Stations[0].Given+r.Stations[0].Scrapped)
	}
	restarting := func(name string, p float64, cycles int64) exactCase {
		line := failing(serial([]sim.Law{sec(1)}), 0, sim.CycleClock, l.geometric(1/p), sec(5))
		line.Stations[0].AfterStop = []sim.ScrapRule{{Cycles: cycles}}
		return exactCase{name, "", line, 2000 * s, 30_000 * s, 40, []exactFigure{{"yield_good_over_made", 0, yield, 0}}}
	}
	return []exactCase{
		rejecting("SCRAP-0.05-2", 0.05, 2), rejecting("SCRAP-0.2-4", 0.2, 4),
		restarting("SCRAPUP-GEO-2", 0.002, 30), restarting("SCRAPUP-GEO-3", 0.05, 3),
	}
}
