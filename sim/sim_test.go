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
