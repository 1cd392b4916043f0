package proof

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

// merge: several feeders of one buffer, several consumers of one, or a branch of its own for each.
func merge(e *entry) {
	feeders, consumers := e.numbers("feeder_rates"), e.numbers("consumer_rates")
	shared := !strings.HasPrefix(e.name, "SPLSEP-")
	line := sim.Line{}
	if shared {
		line.Buffers = []sim.Buffer{{Name: "shared", Holds: int64(e.number("slots"))}}
	}
	for i, rate := range feeders {
		name := fmt.Sprintf("feeder %d", i+1)
		line.Stations = append(line.Stations, station(name, "", e.exp(1/rate)))
		if shared {
			line.Buffers[0].From = append(line.Buffers[0].From, name)
		}
	}
	if !shared {
		e.branches(&line)
	}
	for i, rate := range consumers {
		from := "shared"
		if !shared {
			from = line.Buffers[i].Name
		}
		line.Stations = append(line.Stations, station(fmt.Sprintf("takes %d", i+1), from, e.exp(1/rate)))
	}
	e.mergeStops(&line)
	words := fmt.Sprintf("%s; rates %s into %s, places %s; %s", e.given["topology"], e.given["feeder_rates"], e.given["consumer_rates"], e.given["slots"], e.given["policy"])
	c := e.sim(words, "Blocking after the cycle. Names are in the order of the source, since ties go by name.", line, e.settled(line))
	e.mergeFigures(c, len(feeders), len(consumers))
}

// branches gives the feeder a place for each consumer and the rule of the policy.
func (e *entry) branches(line *sim.Line) {
	feeder := &line.Stations[0]
	for i, places := range e.places("slots") {
		name := fmt.Sprintf("branch %d", i+1)
		line.Buffers = append(line.Buffers, sim.Buffer{Name: name, From: []string{feeder.Name}, Holds: places})
		feeder.Sends.To = append(feeder.Sends.To, name)
	}
	switch {
	case strings.HasSuffix(e.name, "priority"):
		feeder.Sends.Rule = sim.FirstWithRoom
	case strings.HasSuffix(e.name, "shortest"):
		feeder.Sends.Rule = sim.FewestPieces
	default:
		feeder.Sends.Rule = sim.InTurn
	}
}

// mergeStops reads rates of failure and repair as in 0.05:0.25/0.02:0.1.
func (e *entry) mergeStops(line *sim.Line) {
	var fail, repair []float64
	for _, key := range []string{"feeder_fail_repair", "consumer_fail_repair"} {
		for _, pair := range strings.FieldsFunc(e.given[key], func(r rune) bool { return r == '/' }) {
			f, r, _ := strings.Cut(pair, ":")
			fail, repair = append(fail, e.parse(key, f)), append(repair, e.parse(key, r))
		}
	}
	e.fails(line, sim.RunningClock, fail, repair)
}

func (e *entry) mergeFigures(c *Case, feeders, consumers int) {
	behind := func(one func(int) measure) func(int) measure {
		return func(i int) measure { return one(feeders + i) }
	}
	rate := func(i int) measure { return e.rate(i) }
	var all []int
	for i := range consumers {
		all = append(all, feeders+i)
	}
	e.compare(c, "total_throughput", e.rate(all...))
	e.compare(c, "share_by_feeder", every(feeders, rate)...)
	e.compare(c, "share_by_consumer", every(consumers, behind(rate))...)
	e.compare(c, "mean_parts_in_buffer", level(0))
	e.shares(c, "feeder_blocked_prob", every(feeders, in(sim.Blocked))...)
	e.shares(c, "consumer_idle_prob", every(consumers, behind(in(sim.Starved)))...)
}
