package proof

import (
	"fmt"
	"slices"
	"strings"

	"tuckline/sim"
)

// allocation: a number of places dealt out between stations. The best allocation, the best of the
// others and the worst are cases of their own.
func allocation(e *entry) {
	best := e.text("optimal_allocation")
	for _, one := range strings.Split(best, " or ") {
		c := e.dealt(one, "best")
		e.again(c, "throughput_at_optimum", "")
	}
	for _, which := range []string{"best_non_optimal", "worst"} {
		places, throughput, found := strings.Cut(e.text(which), " ")
		if !found || slices.Contains(strings.Split(best, " or "), places) {
			e.leave(which, "all allocations are alike; see the best")
			continue
		}
		e.again(e.dealt(places, strings.ReplaceAll(which, "_", " ")), which, throughput)
	}
	e.order(strings.Split(best, " or "))
}

func (e *entry) text(quantity string) string {
	for _, v := range e.values {
		if v.quantity == quantity {
			return v.text
		}
	}
	return ""
}

// dealt is the line with places as in "1-2-1".
func (e *entry) dealt(places, which string) *Case {
	line := e.dealtLine(places)
	words := fmt.Sprintf("%s; of %s places, %s: %s", e.serialWords("mean_service_times", ""), e.given["total_slots"], places, which)
	if e.given["fail_rates"] != "-" {
		words += fmt.Sprintf("; failures %s, repairs %s by running time", e.given["fail_rates"], e.given["repair_rates"])
	}
	c := e.sim(words, "Blocking after the cycle; no place between two stations is a hand-over.", line, e.settled(line))
	c.Name = fmt.Sprintf("%s %s, %s", e.name, which, places)
	return c
}

func (e *entry) dealtLine(places string) sim.Line {
	slots := each(strings.Split(places, "-"), func(s string) int64 { return int64(e.parse("places", s)) })
	line := e.erlangs(e.numbers("mean_service_times"), int(e.number("erlang_k")), slots)
	e.fails(&line, sim.RunningClock, e.numbers("fail_rates"), e.numbers("repair_rates"))
	return line
}

// again compares the throughput of a case with a value that several cases share.
func (e *entry) again(c *Case, quantity, text string) {
	for _, v := range e.values {
		if v.quantity != quantity {
			continue
		}
		if text == "" {
			text = v.text
		}
		e.use(v)
		c.figures = append(c.figures, &figure{
			quantity: "throughput", source: v.source, known: v.known, exact: e.parse(quantity, text), of: e.rate(len(c.line.Stations) - 1),
		})
	}
}
