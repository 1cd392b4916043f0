package proof

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

// exponential: serial lines with exponential or Erlang cycles and a few places.
func exponential(e *entry) {
	line := e.erlangs(e.numbers("mean_service_times"), int(e.number("erlang_k")), e.places("slots_between"))
	last := len(line.Stations) - 1
	if strings.HasPrefix(e.name, "SCRAP-") {
		line.Stations[0].RejectShare = e.parse("share", strings.Split(e.name, "-")[1])
	}
	c := e.sim(e.serialWords("mean_service_times", "slots_between"), "Blocking after the cycle; no place between two stations is a hand-over.", line, e.settled(line))
	e.compare(c, "throughput", e.rate(last))
	e.compare(c, "throughput_at_optimum", e.rate(last))
	for _, v := range e.values {
		if strings.HasPrefix(v.quantity, "good_throughput") {
			e.compare(c, v.quantity, e.rate(last))
		}
	}
	e.serialFigures(c)
	e.leave("gain_over_balanced_percent", "a difference of half a per cent between two lines, to 0.3 % of itself, takes some tens of thousands of times the replications of each; the throughput of both lines is compared")
}

// serialFigures are the states and levels of a serial line.
func (e *entry) serialFigures(c *Case) {
	n := len(c.line.Stations)
	e.shares(c, "blocked_prob_by_station", every(n, in(sim.Blocked))...)
	e.shares(c, "starved_prob_by_station", every(n, in(sim.Starved))...)
	e.compare(c, "mean_parts_in_buffers", every(n-1, level)...)
}

// erlangs is a serial line with Erlang cycles of k stages.
func (e *entry) erlangs(means []float64, k int, places []int64) sim.Line {
	if k == 1 {
		return serial(each(means, e.exp), places...)
	}
	return serial(each(means, func(mean float64) sim.Law { return e.law(sim.Erlang(mean*e.unit, k)) }), places...)
}

func (e *entry) serialWords(times, places string) string {
	words := fmt.Sprintf("%d stations in a row, mean cycles %s", len(e.numbers(times)), e.given[times])
	if k := e.given["erlang_k"]; k != "" && k != "1" {
		words += ", Erlang of " + k + " stages"
	} else {
		words += ", exponential"
	}
	if slots := e.given[places]; slots != "" {
		words += "; places between them " + slots
	}
	if strings.HasPrefix(e.name, "SCRAP-") {
		words += "; the first rejects a share of " + strings.Split(e.name, "-")[1]
	}
	return words
}

// settled is the warm-up of a line with limited places: 20 times the longest of the repairs, of the
// times between stops, and of the time in which its slowest station empties all places. Where
// cycles are equal and fixed, a level moves at stops only, so that these count too.
func (e *entry) settled(line sim.Line) float64 {
	pieces, slowest, longest := int64(len(line.Stations)), 0.0, 0.0
	for _, b := range line.Buffers {
		pieces += max(b.Holds, 0)
	}
	for i := range line.Stations {
		s := &line.Stations[i]
		slowest = max(slowest, s.Cycle.Mean())
		for k := range s.Stops {
			longest = max(longest, s.Stops[k].Lasts.Mean(), apart(&s.Stops[k], s))
		}
	}
	return 20 * max(float64(pieces)*slowest, longest) / e.unit
}

// apart is the mean time between stops, in microseconds.
func apart(stop *sim.Stop, s *sim.Station) float64 {
	if stop.Clock == sim.CycleClock {
		return stop.Every.Mean() * s.Cycle.Mean()
	}
	return stop.Every.Mean()
}
