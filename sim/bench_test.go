package sim_test

import (
	"fmt"
	"strconv"
	"testing"

	"tuckline/sim"
)

func BenchmarkREF(b *testing.B)  { benchmarkLine(b, refLine(b, 600_000, 400_000, 3*sim.Second)) }
func BenchmarkREFW(b *testing.B) { benchmarkLine(b, refLine(b, 900_000, 200_000, sim.Second)) }

// benchmarkLine runs replications of 9 h; one op is one of them.
func benchmarkLine(b *testing.B, line sim.Line) {
	b.Helper()
	b.Run("plain", func(b *testing.B) {
		e := compile(b, line).NewEngine()
		var cycles, events int64
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			rec := e.Run(sim.Options{Seed: 1, Replication: i, Measure: 9 * sim.Hour})
			events += rec.Events
			for _, s := range rec.Stations {
				cycles += s.Cycles
			}
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(cycles), "ns/cycle")
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(events), "ns/event")
	})
}

func BenchmarkChain(b *testing.B) {
	for _, n := range []int{3, 10, 30, 100, 300} {
		b.Run(strconv.Itoa(n), func(b *testing.B) { benchmarkLine(b, chain(b, n)) })
	}
}

// chain is a line of n equal stations, 20 places between neighbours.
func chain(t testing.TB, n int) sim.Line {
	var line sim.Line
	for i := range n {
		s := sim.Station{
			Name: fmt.Sprintf("station %03d", i), Takes: 1, Gives: 1, Cycle: sim.Fixed(1e6),
			Stops: []sim.Stop{{
				Name: "stop", Clock: sim.RunningClock,
				Every: must(t)(sim.Exponential(float64(20 * sim.Minute))),
				Lasts: must(t)(sim.Lognormal(float64(sim.Minute), 0.8)),
			}},
		}
		if i > 0 {
			before, store := line.Stations[i-1].Name, fmt.Sprintf("store %03d", i)
			line.Buffers = append(line.Buffers, sim.Buffer{Name: store, From: []string{before}, Holds: 20})
			s.From = store
		}
		line.Stations = append(line.Stations, s)
	}
	return line
}
