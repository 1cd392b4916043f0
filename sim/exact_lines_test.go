package sim_test

import (
	"fmt"
	"testing"

	"tuckline/sim"
)

// laws makes laws in seconds; a test fails on an impossible one.
type laws struct{ t testing.TB }

func (l laws) exp(mean float64) sim.Law { return must(l.t)(sim.Exponential(mean * 1e6)) }

// geometric is in steps of one cycle, for the cycle clock.
func (l laws) geometric(cycles float64) sim.Law { return must(l.t)(sim.Geometric(cycles, 1)) }

// geometricTime is in steps of one second.
func (l laws) geometricTime(mean float64) sim.Law { return must(l.t)(sim.Geometric(mean*1e6, 1e6)) }

// serial makes a line of stations of one piece; places are those between them, 0 is a hand-over.
func serial(cycles []sim.Law, places ...int64) sim.Line {
	var line sim.Line
	for i, cycle := range cycles {
		st := sim.Station{Name: fmt.Sprintf("station %d", i+1), Takes: 1, Gives: 1, Cycle: cycle}
		if i > 0 {
			before := line.Stations[i-1].Name
			st.From = before
			if n := places[i-1]; n != 0 {
				st.From = fmt.Sprintf("buffer %d", i)
				line.Buffers = append(line.Buffers, sim.Buffer{Name: st.From, From: []string{before}, Holds: n})
			}
		}
		line.Stations = append(line.Stations, st)
	}
	return line
}

// exponentials is serial with exponential cycles of these means.
func (l laws) exponentials(means []float64, places ...int64) sim.Line {
	var cycles []sim.Law
	for _, m := range means {
		cycles = append(cycles, l.exp(m))
	}
	return serial(cycles, places...)
}

// failing gives station i a stop.
func failing(line sim.Line, i int, clock sim.Clock, every, lasts sim.Law, crew ...sim.Work) sim.Line {
	st := &line.Stations[i]
	stop := sim.Stop{Name: fmt.Sprintf("fault %d", len(st.Stops)+1), Every: every, Clock: clock, Lasts: lasts}
	if len(crew) > 0 {
		stop.Crew = crew[0]
	}
	st.Stops = append(st.Stops, stop)
	return line
}

// perSecond counts good pieces of a station for every second of the window.
func perSecond(station int) func(*sim.Record) float64 {
	return func(r *sim.Record) float64 {
		return float64(r.Stations[station].Passed) / (float64(r.Window) / 1e6)
	}
}

// running is the share of time in which a station runs.
func running(station int) func(*sim.Record) float64 {
	return func(r *sim.Record) float64 {
		return float64(r.Stations[station].States[sim.Running]) / float64(r.Window)
	}
}

// level is the mean level of a place.
func level(place int) func(*sim.Record) float64 {
	return func(r *sim.Record) float64 { return float64(r.Buffers[place].LevelTime) / float64(r.Window) }
}

// wait is the mean time in a place by Little's law: level by flow, in seconds.
func wait(place int) func(*sim.Record) float64 {
	return func(r *sim.Record) float64 {
		return float64(r.Buffers[place].LevelTime) / float64(r.Buffers[place].Out) / 1e6
	}
}

func share(r *sim.Record, station int, states ...sim.State) float64 {
	sum := sim.Micros(0)
	for _, st := range states {
		sum += r.Stations[station].States[st]
	}
	return float64(sum) / float64(r.Window)
}
