package proof

import (
	"fmt"
	"strconv"
	"strings"

	"tuckline/sim"
)

const geometricWords = "N of the source counts both machines: places + 2. A stop strikes before a cycle, after a geometric number of cycles. The level n of the source is what is stored, on the second machine, or finished and held by the first."

// geometric: two stations of one cycle a unit of time, geometric stops and repairs.
func geometric(e *entry) {
	line := serial(repeated(2, e.fixed(1)), int64(e.number("slots_BAS")))
	for i, k := range []string{"1", "2"} {
		stops(&line, i, sim.CycleClock, e.cycles(1/e.number("p"+k)), e.steps(1/e.number("r"+k)))
	}
	words := fmt.Sprintf("Two stations, p = %s and %s, r = %s and %s a cycle, %s places", e.given["p1"], e.given["p2"], e.given["r1"], e.given["r2"], e.given["slots_BAS"])
	e.pairFigures(e.sim(words, geometricWords, line, e.settled(line)))
}

// pairFigures are the figures of two stations in cycles.
func (e *entry) pairFigures(c *Case) {
	e.compare(c, "production_rate_per_cycle", e.rate(1))
	e.compare(c, "mean_level_n", between(0))
	e.shares(c, "prob_M2_starved_(0,0,1)", share(1, sim.Starved))
	e.shares(c, "prob_M1_blocked_(N,1,0)", share(0, sim.Blocked))
}

// between is the level of the source between station i and the next.
func between(i int) measure {
	return func(r *sim.Record) (part, whole float64) {
		part, whole = level(i)(r)
		return part + whole - inStates(r, i+1, sim.Starved) + inStates(r, i, sim.Blocked), whole
	}
}

const longWords = "The source's machine waits for room before it starts, with its next piece loaded, and its N counts that piece: N - 1 places, blocking before the cycle, input taken while stopped. A stop strikes before a cycle. The level n of the source is what is stored or on the next machine."

const longAfterWords = "The same machines with blocking after the cycle and N - 2 places; the source has no values for it. With three and more machines that is another model: a machine that holds a finished piece has no room for the next one."

const approximated = "an approximation that no command uses; the exact value is compared"

// long: three or four such stations, as the source has them, and once more with blocking after the cycle.
func long(e *entry) {
	all := e.longCase(1, longWords, func(s *sim.Station) { s.BlocksBefore, s.LoadsWhileStopped = true, true })
	n := len(all.line.Stations)
	e.compare(all, "production_rate_exact", e.rate(n-1))
	e.compare(all, "mean_levels_exact", every(n-1, loadedBetween)...)
	after := e.longCase(2, longAfterWords, func(*sim.Station) {})
	after.Name += ", blocking after"
	e.compare(after, "production_rate_blocking_after", e.rate(n-1))
	e.compare(after, "mean_levels_blocking_after", every(n-1, between)...)
	e.leave("production_rate_DDX_decomposition", approximated)
}

// longCase has so many places fewer than the N of the source.
func (e *entry) longCase(fewer int64, mapping string, as func(*sim.Station)) *Case {
	p, r := e.numbers("p"), e.numbers("r")
	places := each(e.places("N_gershwin"), func(n int64) int64 { return n - fewer })
	line := serial(repeated(len(p), e.fixed(1)), places...)
	for i := range p {
		as(&line.Stations[i])
		stops(&line, i, sim.CycleClock, e.cycles(1/p[i]), e.steps(1/r[i]))
	}
	words := fmt.Sprintf("%d stations, p = %s, r = %s a cycle, N = %s", len(p), e.given["p"], e.given["r"], e.given["N_gershwin"])
	return e.sim(words, mapping, line, e.settled(line))
}

// loadedBetween is the level of the source where the next station takes its input in any state.
func loadedBetween(i int) measure {
	return func(r *sim.Record) (part, whole float64) {
		part, whole = level(i)(r)
		return part + whole - inStates(r, i+1, sim.Starved), whole
	}
}

// general: two such stations whose repairs have a given law.
func general(e *entry) {
	line := serial(repeated(2, e.fixed(1)), int64(e.number("slots_BAS")))
	for i, k := range []string{"1", "2"} {
		stops(&line, i, sim.CycleClock, e.cycles(1/e.number("p"+k)), e.listed("repair"+k))
	}
	words := fmt.Sprintf("Two stations, p = %s and %s a cycle, repairs in cycles with their shares %s and %s, %s places", e.given["p1"], e.given["p2"], e.given["repair1"], e.given["repair2"], e.given["slots_BAS"])
	e.pairFigures(e.sim(words, geometricWords, line, e.settled(line)))
}

// listed is a law written as VALUE:SHARE VALUE:SHARE.
func (e *entry) listed(key string) sim.Law {
	var all []sim.Weighted
	for _, one := range strings.Fields(e.given[key]) {
		x, weight, _ := strings.Cut(one, ":")
		v, errV := strconv.ParseFloat(x, 64)
		w, errW := strconv.ParseFloat(weight, 64)
		e.fail(errV)
		e.fail(errW)
		all = append(all, sim.Weighted{Value: v * e.unit, Weight: w})
	}
	return e.law(sim.Empirical(all))
}
