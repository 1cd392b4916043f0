package proof

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

// renewal: single stations with stops of known laws, and what they make and reject. Every name of
// a case begins with the kind of its model.
func renewal(e *entry) {
	kind, _, _ := strings.Cut(e.name, "-")
	if strings.HasPrefix(e.name, "SCRAPUP-") {
		kind = strings.TrimRight(e.name, "-0123456789")
	}
	build := map[string]func(*entry){
		"DET": fixedTimes, "TRANS": fromTheStart, "CLT": uptimeVariance, "AGE": ageReplacement,
		"SCRAPUP-GEO": scrapCycles, "SCRAPUP-EXP": scrapTime, "SCRAPUP-DET": scrapFixed,
		"STACK": stack, "LANES": lanes, "REEL": reel, "REELAV": twoReels, "RESID": leftInRepair,
		"ACC": accumulator, "CONV": belt,
	}[kind]
	if build == nil {
		e.fail(fmt.Errorf("no line for this kind of case"))
		return
	}
	build(e)
}

// longCycle is a cycle of which only the interruptions count.
const longCycle = 1000

// alone is a station that only its stops interrupt.
func (e *entry) alone(cycle float64) sim.Line { return serial([]sim.Law{e.fixed(cycle)}) }

// running is the time of running, in units.
func (e *entry) running(r *sim.Record) float64 { return inStates(r, 0, sim.Running) / e.unit }

func fromTheStart(e *entry) {
	up, down, at := e.word("MTTF"), e.word("MTTR"), e.word("t")
	line := e.alone(longCycle)
	stops(&line, 0, sim.RunningClock, e.exp(up), e.exp(down))
	model := fmt.Sprintf("One station, up %g and down %g on average, exponential; new at the beginning", up, down)
	c := e.sim(model+fmt.Sprintf("; does it run at %g?", at), "A window of 1 µs.", line, at)
	c.Name, c.measure, c.least = e.name+", at an instant", 1, 1000
	e.shares(c, "point_availability", share(0, sim.Running))
	c = e.sim(model+fmt.Sprintf("; share of the first %g", at), "No warm-up.", line, at)
	c.Name, c.warmUp, c.measure, c.least = e.name+", over an interval", 0, e.micros(at), 1000
	e.shares(c, "interval_availability", share(0, sim.Running))
}

func uptimeVariance(e *entry) {
	text := e.given["parameters"]
	up, down := e.behind(text, "mean up "), e.behind(text, "mean down ")
	every := e.exp(up)
	if e.behind(text, "sd ") == 0 {
		every = e.fixed(up)
	}
	line := e.alone(longCycle)
	stops(&line, 0, sim.RunningClock, every, e.exp(down))
	c := e.sim("One station, "+text+"; growth of the variance of its running time", "The difference of the variances at 300 and 100 mean periods: what the start adds is in both.", line, 1)
	c.warmUp, c.measure, c.later, c.least = 0, e.micros(100*(up+down)), e.micros(300*(up+down)), 1000
	e.figures(c, "var_uptime_per_time", figure{kind: slope}, count(e.running))
}

func ageReplacement(e *entry) {
	text := e.given["parameters"]
	repair, planned := e.behind(text, "repair "), e.behind(text, "planned ")
	line := e.alone(longCycle)
	life := e.law(sim.WeibullShape(e.behind(text, "shape "), e.behind(text, "scale ")*e.unit))
	stops(&line, 0, sim.RunningClock, life, e.fixed(repair))
	stops(&line, 0, sim.RunningClock, e.fixed(e.word("T")), e.fixed(planned))
	both := line.Stations[0].Stops
	both[0].Name, both[1].Name = "breakdown", "planned"
	both[0].Renews, both[1].Renews = []string{"planned"}, []string{"breakdown"}
	c := e.sim("One station with a planned stop at an age of running; "+text, "Each of the two stops renews the clock of the other.", line, 20*max(repair+e.word("T"), life.Mean()/e.unit))
	all := func(r *sim.Record) float64 {
		return float64(r.Stations[0].Stops[0].Count + r.Stations[0].Stops[1].Count)
	}
	e.shares(c, "availability", share(0, sim.Running))
	e.compare(c, "mean_up_per_cycle", func(r *sim.Record) (float64, float64) { return e.running(r), all(r) })
	e.shares(c, "fraction_planned_stops", func(r *sim.Record) (float64, float64) {
		return float64(r.Stations[0].Stops[1].Count), all(r)
	})
}

func leftInRepair(e *entry) {
	e.leaveAll("pure arithmetic on a law: no command tells how much of a repair is left")
}
