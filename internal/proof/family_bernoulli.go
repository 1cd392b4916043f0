package proof

import (
	"fmt"

	"tuckline/sim"
)

// bernoulli: time in slots; in each slot a machine is up with probability p, whatever was before.
func bernoulli(e *entry) {
	p := e.numbers("p")
	line := serial(repeated(len(p), e.fixed(1)), e.places("N_li_meerkov")...)
	for i := range p {
		line.Stations[i].BlocksBefore = true
		stops(&line, i, sim.CalendarClock, e.steps(1/(1-p[i])), e.steps(1/p[i]))
	}
	words := fmt.Sprintf("%d stations, up in each slot with probability %s, places %s", len(p), e.given["p"], e.given["N_li_meerkov"])
	c := e.sim(words, "Blocking before the cycle, with all N places in the buffer. Slots that are up or down independently are runs of geometric length on the calendar.", line, e.settled(line))
	e.compare(c, "PR", e.rate(len(p)-1))
	e.compare(c, "PR_exact", e.rate(len(p)-1))
	// At the beginning of a slot a piece that is taken in it still counts.
	e.compare(c, "WIP", sumOf(level(0), share(1, sim.Running)))
	e.leave("PR_aggregation", approximated)
}
