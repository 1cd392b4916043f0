package keyfigure

import (
	"math"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// random makes the times of stops random with the same means.
func random(all []sim.Stop) (out []sim.Stop) {
	for _, s := range all {
		s.Every, s.Lasts = law(sim.Exponential(s.Every.Mean())), law(sim.Exponential(s.Lasts.Mean()))
		out = append(out, s)
	}
	return out
}

// merging is machines of given speeds that hand over to one packer, which can just take what
// they make together.
func merging(speeds []float64, stops [][]sim.Stop) *scenario.Scenario {
	b := &build{}
	var names []string
	sum := 0.0
	for i, speed := range speeds {
		names = append(names, string(rune('a'+i)))
		b.station(sim.Station{Name: names[i], Takes: 1, Gives: 1, Stops: random(stops[i])}, scenario.Station{}, speed, 0)
		sum += speed
	}
	b.Line.Buffers = []sim.Buffer{{Name: "meeting", From: names, Holds: int64(len(speeds))}}
	b.Buffers = []scenario.Buffer{{Unit: "cartons"}}
	b.station(sim.Station{Name: "packer", From: "meeting", Takes: 1, Gives: 1, Stops: random(stops[len(speeds)])}, scenario.Station{}, sum, 0)
	b.Answer.CountedAfter = []int{len(speeds)}
	return &b.Scenario
}

// The engine knows nothing of this arithmetic. At the meeting there is one place for each
// machine and no more, which is some hundredths of a minute of flow beside stops of a minute.
// Thousands of stops of each cause leave a relative standard error of 0.1 to 0.2 %.
//
// Stops of a machine and of the packer overlap now and then, since the packer goes on
// for the other machine; the arithmetic puts them one after the other, as in a chain, and comes out
// lower by the product of both shares: by hand, a Markov chain of four states, 55.4 and not 54.5
// a minute for half of a machine and all of the packer down per running minute. With stops as lines
// have them, of some hundredths, nothing is seen of it.
func TestRigidMergesAgreeWithTheEngine(t *testing.T) {
	none := []sim.Stop(nil)
	jam, seldom := []sim.Stop{fixedStop("s", sim.CycleClock, 120, 1)}, []sim.Stop{fixedStop("s", sim.CycleClock, 1200, 1)}
	for name, s := range map[string]*scenario.Scenario{
		"calendar":      merging([]float64{60, 60, 60}, [][]sim.Stop{calendarStop(0.3), calendarStop(0.3), calendarStop(0.3), none}),
		"unlike":        merging([]float64{60, 60}, [][]sim.Stop{calendarStop(0.3), jam, none}),
		"one jams":      merging([]float64{60, 60}, [][]sim.Stop{jam, none, none}),
		"unlike speeds": merging([]float64{30, 90}, [][]sim.Stop{calendarStop(0.3), calendarStop(0.1), none}),
		"with a packer": merging([]float64{60, 60}, [][]sim.Stop{calendarStop(0.08), seldom, calendarStop(0.05)}),
		"packer jams":   merging([]float64{60, 60}, [][]sim.Stop{seldom, none, seldom}),
	} {
		got, want := passed(t, s.Line), Derive(s).Bounds.Rigid
		if math.Abs(got-want) > 0.005*want {
			t.Errorf("%s: the engine passes %v a minute, arithmetic %v", name, got, want)
		}
	}
}
