package sim_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"tuckline/sim"
)

// tandem is a serial line of exponential stations, with stops or without; places are those of the
// buffers between.
func tandem(t *testing.T, means []float64, places []int64, stops bool) sim.Line {
	var line sim.Line
	for i, mean := range means {
		st := one(fmt.Sprintf("station %.2f", mean), "", 1)
		st.Cycle = must(t)(sim.Exponential(mean * 1e6))
		if stops {
			st.Stops = []sim.Stop{{
				Name: "stop", Clock: sim.RunningClock,
				Every: must(t)(sim.Exponential(60e6 * mean)), Lasts: must(t)(sim.Exponential(10e6)),
			}}
		}
		if i > 0 {
			st.From = fmt.Sprintf("buffer %d", i)
			line.Buffers = append(line.Buffers, sim.Buffer{Name: st.From, From: []string{line.Stations[i-1].Name}, Holds: places[i-1]})
		}
		line.Stations = append(line.Stations, st)
	}
	return line
}

// A serial line and its mirror image have the same throughput (Muth 1979, Management Science 25, 152;
// from memory): 99 % interval of the paired difference, both with the same random numbers.
func TestMirrorImageHasTheSameThroughput(t *testing.T) {
	means, places := []float64{1, 1.31, 0.82, 1.13}, []int64{2, 0, 5}
	for name, stops := range map[string]bool{"exponential": false, "with stops": true} {
		t.Run(name, func(t *testing.T) {
			forth := compile(t, tandem(t, means, places, stops)).NewEngine()
			m, p := slices.Clone(means), slices.Clone(places)
			slices.Reverse(m)
			slices.Reverse(p)
			back := compile(t, tandem(t, m, p, stops)).NewEngine()
			var differences []float64
			total := 0.0
			for r := range 24 {
				o := sim.Options{Seed: seedOf("mirror " + name), Replication: r, WarmUp: sim.Hour, Measure: 8 * sim.Hour}
				a, b := forth.Run(o), back.Run(o)
				total += float64(a.Stations[3].Passed) / 24
				differences = append(differences, float64(a.Stations[3].Passed-b.Stations[3].Passed))
			}
			mean, half := interval(differences)
			t.Logf("difference %.1f ± %.1f of %.0f pieces", mean, half, total)
			if math.Abs(mean) > half {
				t.Error("the mirror image makes another throughput")
			}
			if half > 0.005*total {
				t.Error("the interval is wider than 0.5 %: run longer")
			}
		})
	}
}
