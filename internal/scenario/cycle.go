package scenario

import (
	"fmt"
	"math"
	"reflect"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
)

// shortestCycle and longestCycle are the range of cycle times, in microseconds:
// below it rounding to whole microseconds would show, above it a station makes
// nothing in the windows that are simulated.
const (
	shortestCycle = 1e3
	longestCycle  = 24 * 3600e6
)

// rangeOfCycles says it to people.
const rangeOfCycles = "a cycle lasts from 1 ms to 1 day; write it as 60/min, or as 1 s"

func outsideCycles(micros float64) bool { return micros < shortestCycle || micros > longestCycle }

// cycleLaw is the time of a cycle in microseconds; a rate is allowed.
type cycleLaw struct{ law }

func (c *cycleLaw) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	parse := cycleTime
	if hasKey(n, "dist") {
		parse = quantity.Duration
	} else if hasKey(n, "mixture") {
		parse = anyCycleTime
	}
	c.law.law, c.canon = r.readLaw(c.at, n, tag, func(at) parser { return parse })
	if mean := c.law.law.Mean(); !c.law.law.IsZero() && !c.law.law.IsFixed() && outsideCycles(mean) {
		r.complain(c.at, "the mean of this law is %s; %s", quantity.FormatDuration(math.Round(mean)), rangeOfCycles)
	}
}

// cycleTime reads 60/min or 1 s as the microseconds of one cycle.
func cycleTime(text string) (float64, error) {
	micros, err := anyCycleTime(text)
	if err == nil && outsideCycles(micros) {
		err = fmt.Errorf("%q is out of range; %s", text, rangeOfCycles)
	}
	return micros, err
}

func anyCycleTime(text string) (float64, error) {
	if !quantity.IsRate(text) {
		micros, err := quantity.Duration(text)
		if err != nil && !quantity.HasUnit(text) {
			return 0, fmt.Errorf("%q has no unit; write %[1]s/min, or the time of one cycle as 1 s", text)
		}
		return micros, err
	}
	rate, err := quantity.ParseRate(text)
	if err == nil && rate.Of != "" && rate.Of != "cycles" {
		err = fmt.Errorf("%q counts %s, and a speed is in cycles; write it as 60/min", text, rate.Of)
	}
	if err != nil {
		return 0, err
	}
	return rate.Period(), nil
}
