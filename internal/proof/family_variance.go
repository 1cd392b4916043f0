package proof

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

// variance: mean and standard deviation of the output of a new and empty line up to a horizon, and
// the rate at which the variance grows. One row of the file is a horizon.
func variance(e *entry) {
	rates := e.numbers("service_rates")
	for _, horizon := range []string{"20", "100", "500", "inf"} {
		line := serial(each(inverse(rates), e.exp), e.places("slots_between")...)
		mode := e.given["failure_mode"]
		e.unreliableStops(&line)
		if strings.Contains(mode, "one repairer") {
			e.repairers(&line, "1")
		}
		words := fmt.Sprintf("%d stations, rates %s, places %s, failures %s, repairs %s, %s", len(rates), e.given["service_rates"], e.given["slots_between"], e.given["fail_rates"], e.given["repair_rates"], mode)
		e.horizon(line, words, horizon)
	}
}

func (e *entry) horizon(line sim.Line, words, horizon string) {
	last := len(line.Stations) - 1
	passed := count(func(r *sim.Record) float64 { return float64(r.Stations[last].Passed) })
	if horizon == "inf" {
		c := e.sim(words+"; in the long run", "Blocking after the cycle.", line, e.settled(line))
		c.Name += ", long run"
		e.at(horizon, func() { e.compare(c, "throughput", e.rate(last)) })
		c = e.sim(words+"; growth of the variance of the output", "The difference of the variances at 500 and 100 units of time: what the start adds is in both.", line, 1)
		c.Name += ", variance rate"
		c.warmUp, c.measure, c.later, c.least = 0, e.micros(100), e.micros(500), 1000
		e.at(horizon, func() { e.figures(c, "variance_rate", figure{kind: slope}, passed) })
		return
	}
	c := e.sim(words+"; in the first "+horizon+" units of time", "New and empty at the beginning, no warm-up.", line, 1)
	c.Name += ", first " + horizon
	c.warmUp, c.measure, c.least = 0, e.micros(e.parse("horizon", horizon)), 1000
	e.at(horizon, func() {
		e.compare(c, "mean_parts", passed)
		e.figures(c, "sd_parts", figure{kind: spread}, passed)
	})
}

// at lets only the rows of one horizon be seen.
func (e *entry) at(horizon string, do func()) {
	all := e.values
	e.values = nil
	for _, v := range all {
		if v.given["horizon_T"] == horizon {
			e.values = append(e.values, v)
		}
	}
	do()
	e.values = all
}
