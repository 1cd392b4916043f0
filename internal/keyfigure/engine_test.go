package keyfigure

import (
	"math"
	"testing"

	"tuckline/sim"
)

// passed is the mean number of pieces a minute that the last station passes in the engine.
func passed(t *testing.T, line sim.Line) float64 {
	t.Helper()
	model, err := sim.Compile(line)
	if err != nil {
		t.Fatal(err)
	}
	const replications, hours = 20, 100
	engine, sum := model.NewEngine(), int64(0)
	for r := range replications {
		record := engine.Run(sim.Options{Seed: 4711, Replication: r, WarmUp: sim.Hour, Measure: hours * sim.Hour})
		sum += record.Stations[len(record.Stations)-1].Passed
	}
	return float64(sum) / (replications * hours * 60)
}

// The engine knows nothing of this arithmetic. About 10,000 stops of each
// cause leave a relative standard error of 0.1 % in the mean.
func TestArithmeticAgreesWithTheEngine(t *testing.T) {
	exponential := func(every float64, clock sim.Clock, lasts float64) []sim.Stop {
		return []sim.Stop{{
			Name: "s", Clock: clock, Every: law(sim.Exponential(every)), Lasts: law(sim.Exponential(minutes(lasts))),
		}}
	}
	a := sim.Station{Name: "a", Stops: exponential(600, sim.CycleClock, 1)}
	b := sim.Station{Name: "b", Stops: exponential(minutes(5), sim.RunningClock, 1)}
	joined := b
	joined.StopsWith = "a"
	apart, together := chain(a, b), chain(a, joined)
	for name, test := range map[string]struct {
		got, want float64
	}{
		"rigid":  {passed(t, apart.Line), Derive(apart).Bounds.Rigid},
		"joined": {passed(t, together.Line), Derive(together).Stations[1].AtMost.Answer},
	} {
		if math.Abs(test.got-test.want) > 0.01*test.want {
			t.Errorf("%s: the engine passes %v a minute, arithmetic %v", name, test.got, test.want)
		}
	}
}
