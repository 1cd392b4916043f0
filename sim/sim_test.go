package sim_test

import (
	"testing"

	"tuckline/sim"
)

// ref is the reference line of the benchmarks; packer is the cycle of its last
// station in ms, case what every 12th cycle of it takes more, web the cycle of the first.
func refLine(t testing.TB, web, packer, more sim.Micros) sim.Line {
	exp := func(mean sim.Micros) sim.Law { return must(t)(sim.Exponential(float64(mean))) }
	logn := func(mean sim.Micros, cv float64) sim.Law { return must(t)(sim.Lognormal(float64(mean), cv)) }
	return sim.Line{
		Stations: []sim.Station{
			{
				Name: "web", Takes: 1, Gives: 4, Cycle: sim.Fixed(float64(web)), RejectShare: 0.004,
				AfterStop: []sim.ScrapRule{{Cycles: 6}},
				Stops: []sim.Stop{
					{Name: "minor stop", Every: exp(20 * sim.Minute), Clock: sim.RunningClock, Lasts: logn(90*sim.Second, 0.8)},
					{Name: "breakdown", Every: exp(90 * sim.Minute), Clock: sim.RunningClock, Lasts: logn(6*sim.Minute, 1)},
					{Name: "reel", Every: sim.Fixed(float64(45 * sim.Minute)), Clock: sim.RunningClock, Lasts: sim.Fixed(float64(120 * sim.Second))},
				},
			},
			{
				Name: "cartoner", From: "buffer 1", Takes: 2, Gives: 1, Cycle: sim.Fixed(480_000), RejectShare: 0.003,
				Stops: []sim.Stop{
					{Name: "minor stop", Every: exp(12 * sim.Minute), Clock: sim.RunningClock, Lasts: logn(45*sim.Second, 0.7)},
				},
				Materials: []sim.Material{{Name: "blanks", Amount: 3000, PerCycle: 1, Refill: 3000, Lasts: sim.Fixed(float64(20 * sim.Second))}},
			},
			{
				Name: "packer", From: "buffer 2", Takes: 1, Gives: 1, Cycle: sim.Fixed(float64(packer)),
				Group: sim.Group{Every: 12, Adds: more},
				Stops: []sim.Stop{
					{Name: "minor stop", Every: exp(60 * sim.Minute), Clock: sim.RunningClock, Lasts: logn(4*sim.Minute, 1)},
				},
			},
		},
		Buffers: []sim.Buffer{
			{Name: "buffer 1", From: []string{"web"}, Holds: 400},
			{Name: "buffer 2", From: []string{"cartoner"}, Holds: 30},
		},
	}
}

func must(t testing.TB) func(l sim.Law, err error) sim.Law {
	return func(l sim.Law, err error) sim.Law {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
}

func compile(t testing.TB, l sim.Line) *sim.Model {
	t.Helper()
	m, err := sim.Compile(l)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func BenchmarkREF(b *testing.B)  { benchmarkLine(b, refLine(b, 600_000, 400_000, 3*sim.Second)) }
func BenchmarkREFW(b *testing.B) { benchmarkLine(b, refLine(b, 900_000, 200_000, sim.Second)) }

// benchmarkLine runs replications of 9 h; one op is one of them.
func benchmarkLine(b *testing.B, line sim.Line) {
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

func TestREFRuns(t *testing.T) {
	m := compile(t, refLine(t, 600_000, 400_000, 3*sim.Second))
	rec := m.NewEngine().Run(sim.Options{Seed: 1, Replication: 1, WarmUp: sim.Hour, Measure: 8 * sim.Hour})
	t.Logf("%+v", rec)
}
