package proof

import (
	"fmt"
	"math"

	"tuckline/sim"
)

func yield(r *sim.Record) (part, whole float64) {
	s := &r.Stations[0]
	return float64(s.Given), float64(s.Given + s.Scrapped)
}

// scrapCycles: a number of cycles scrapped after every stop.
func scrapCycles(e *entry) {
	line := e.alone(1)
	stops(&line, 0, sim.CycleClock, e.cycles(1/e.word("p")), e.fixed(5))
	line.Stations[0].AfterStop = []sim.ScrapRule{{Cycles: int64(e.word("s"))}}
	c := e.sim("One station; "+e.given["model"]+"; "+e.given["parameters"], "", line, 20/e.word("p"))
	e.shares(c, "yield_good_over_made", yield)
}

// scrapTime: all cycles within a time of running after every stop.
func scrapTime(e *entry) {
	mean, tau := e.word("m"), e.word("tau")
	cycle := tau / math.Ceil(8000*tau/mean)
	line := e.alone(cycle)
	stops(&line, 0, sim.RunningClock, e.exp(mean), e.fixed(mean/10))
	line.Stations[0].AfterStop = []sim.ScrapRule{{Lasts: e.micros(tau)}}
	c := e.sim("One station; "+e.given["model"]+"; "+e.given["parameters"],
		fmt.Sprintf("Cycles of %g instead of a flow: a cycle counts whole, so that the figure may differ by one cycle in a mean run, %.2g.", cycle, cycle/mean), line, 20*mean)
	e.shares(c, "yield", yield)
	for _, f := range c.figures {
		f.allowance = cycle / mean
	}
}

// stack: one piece a cycle, some rejected, and a station that takes k good ones at a time.
func stack(e *entry) {
	k, q, cycle := e.word("k"), e.word("q"), e.word("c")
	line := serial(repeated(2, e.fixed(cycle)), 0)
	line.Stations[0].RejectShare = q
	line.Stations[1].Takes = int64(k)
	c := e.sim(fmt.Sprintf("One piece a cycle of %.4g s, rejected with probability %g; a stack takes %g good ones", cycle, q, k), "Stacks are counted in a long window.", line, 20*k*cycle*10)
	e.compare(c, "mean_cycles_per_stack", func(r *sim.Record) (part, whole float64) {
		return float64(r.Stations[0].Cycles), float64(r.Stations[1].Cycles)
	})
	e.compare(c, "mean_seconds_per_stack", func(r *sim.Record) (part, whole float64) {
		return float64(r.Window) / e.unit, float64(r.Stations[1].Passed)
	})
	e.leave("variance_cycles", sumsOnly)
	e.leave("prob_no_reject_in_stack", sumsOnly)
}

const arithmeticOnly = "pure arithmetic that no command uses"

const sumsOnly = "the record keeps sums over a window, not each stack; the mean is compared"

// lanes: several pieces a cycle, each rejected or not.
func lanes(e *entry) {
	line := e.alone(1)
	line.Stations[0].Gives, line.Stations[0].RejectShare = int64(e.word("lanes")), e.word("q")
	c := e.sim("One station; "+e.given["model"]+"; "+e.given["parameters"], "", line, 20)
	e.compare(c, "mean_good_per_cycle", func(r *sim.Record) (part, whole float64) {
		return float64(r.Stations[0].Passed), float64(r.Stations[0].Cycles)
	})
	c = e.sim("One station; "+e.given["model"]+"; "+e.given["parameters"]+"; one cycle", "A window of one cycle of 1 s.", line, 20)
	c.Name, c.measure, c.least = e.name+", one cycle", e.micros(1), 1000
	passed := func(r *sim.Record) float64 { return float64(r.Stations[0].Passed) }
	e.figures(c, "sd_good_per_cycle", figure{kind: spread}, count(passed))
	e.shares(c, "prob_full_set", count(func(r *sim.Record) float64 {
		if r.Stations[0].Passed == line.Stations[0].Gives {
			return 1
		}
		return 0
	}))
}
