package proof

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tuckline/internal/estimate"
	"tuckline/sim"
)

// orderReplications tell allocations apart whose throughput differs by about 1 in 300.
const orderReplications = 200

// order compares the named best allocations with all others of the same sum.
func (e *entry) order(best []string) {
	c := e.exactly(fmt.Sprintf("%s; all ways to deal out %s places, named best: %s", e.serialWords("mean_service_times", ""), e.given["total_slots"], strings.Join(best, " or ")),
		fmt.Sprintf("The figure is how many allocations beat the named one: %d replications of each with the same random numbers, 99 %% intervals of the differences that hold all together.", orderReplications))
	c.Name = e.name + ", order"
	i := slices.IndexFunc(e.values, func(v *value) bool { return v.quantity == "optimal_allocation" })
	v := e.values[i]
	e.use(v)
	places := len(e.numbers("mean_service_times")) - 1
	for _, one := range append(dealings(places, int(e.number("total_slots"))), best[0]) {
		line := e.dealtLine(one)
		all := e.sized(line)
		c.work += orderReplications * all.replicationWork()
	}
	c.figures = append(c.figures, &figure{
		quantity: "allocations above the best", source: v.source, known: v.known, kind: sure, says: noneAbove,
		compute: func() (float64, error) { return e.better(best[0], dealings(places, int(e.number("total_slots")))) },
	})
}

// better counts the allocations whose throughput lies above that of the named one.
func (e *entry) better(best string, all []string) (float64, error) {
	base, err := e.throughputs(best)
	var others [][]float64
	for _, one := range all {
		x, problem := e.throughputs(one)
		if problem != nil {
			err = problem
		}
		others = append(others, x)
	}
	above := 0
	for _, difference := range estimate.Simultaneous(base, others, confidence) {
		if difference.Low > 0 {
			above++
		}
	}
	return float64(above), err
}

// sized is a line with its warm-up and window.
func (e *entry) sized(line sim.Line) *Case {
	warmUp := e.micros(e.settled(line))
	return &Case{line: line, warmUp: warmUp, measure: 10 * warmUp}
}

// throughputs simulates one allocation with the random numbers of all of its case.
func (e *entry) throughputs(places string) ([]float64, error) {
	line := e.dealtLine(places)
	model, err := sim.Compile(line)
	if err != nil {
		return nil, err
	}
	engine, x := model.NewEngine(), make([]float64, orderReplications)
	c := e.sized(line)
	for r := range x {
		rec := engine.Run(sim.Options{Seed: seedOf(e.name + ", order"), Replication: r, WarmUp: c.warmUp, Measure: c.measure})
		part, whole := e.rate(len(line.Stations) - 1)(&rec)
		x[r] = part / whole
	}
	return x, nil
}

// dealings are all ways to deal out a number of places, as in 1-2-1.
func dealings(places, total int) []string {
	if places == 1 {
		return []string{strconv.Itoa(total)}
	}
	var all []string
	for first := range total + 1 {
		for _, rest := range dealings(places-1, total-first) {
			all = append(all, fmt.Sprintf("%d-%s", first, rest))
		}
	}
	return all
}
