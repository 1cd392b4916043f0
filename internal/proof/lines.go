package proof

import (
	"fmt"

	"tuckline/sim"
)

// law keeps the fault of an impossible law.
func (e *entry) law(l sim.Law, err error) sim.Law {
	e.fail(err)
	return l
}

func (e *entry) fixed(t float64) sim.Law { return sim.Fixed(t * e.unit) }

func (e *entry) exp(mean float64) sim.Law { return e.law(sim.Exponential(mean * e.unit)) }

// cycles is geometric in whole cycles, for the clock of cycles.
func (e *entry) cycles(mean float64) sim.Law { return e.law(sim.Geometric(mean, 1)) }

// steps is geometric in whole units of time.
func (e *entry) steps(mean float64) sim.Law { return e.law(sim.Geometric(mean*e.unit, e.unit)) }

// station is a station of one piece.
func station(name, from string, cycle sim.Law) sim.Station {
	return sim.Station{Name: name, From: from, Takes: 1, Gives: 1, Cycle: cycle}
}

// serial is a line of stations of one piece. Places are those between them; 0 is a hand-over.
func serial(cycles []sim.Law, places ...int64) sim.Line {
	var line sim.Line
	before := ""
	for i, cycle := range cycles {
		from := before
		if i > 0 && places[i-1] != 0 {
			from = fmt.Sprintf("buffer %d", i)
			line.Buffers = append(line.Buffers, sim.Buffer{Name: from, From: []string{before}, Holds: places[i-1]})
		}
		before = fmt.Sprintf("station %d", i+1)
		line.Stations = append(line.Stations, station(before, from, cycle))
	}
	return line
}

// stops gives station i a cause on the clock.
func stops(line *sim.Line, i int, clock sim.Clock, every, lasts sim.Law) *sim.Stop {
	st := &line.Stations[i]
	st.Stops = append(st.Stops, sim.Stop{
		Name: fmt.Sprintf("fault %d", len(st.Stops)+1), Every: every, Clock: clock, Lasts: lasts,
	})
	return &st.Stops[len(st.Stops)-1]
}

// fails gives every station its exponential stop by rates; a rate of 0 never stops.
func (e *entry) fails(line *sim.Line, clock sim.Clock, fail, repair []float64) {
	for i, rate := range fail {
		if rate > 0 {
			stops(line, i, clock, e.exp(1/rate), e.exp(1/repair[i]))
		}
	}
}

// repeated is n times the same.
func repeated[T any](n int, one T) []T {
	all := make([]T, n)
	for i := range all {
		all[i] = one
	}
	return all
}

// each makes one of every number.
func each[F, T any](numbers []F, one func(F) T) []T {
	all := make([]T, len(numbers))
	for i, x := range numbers {
		all[i] = one(x)
	}
	return all
}

// inverse are the means of rates.
func inverse(rates []float64) []float64 {
	return each(rates, func(r float64) float64 { return 1 / r })
}

// every makes one measure of each station.
func every(n int, one func(station int) measure) []measure {
	var all []measure
	for i := range n {
		all = append(all, one(i))
	}
	return all
}
