package sim_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// A row of machines without losses lets in as many cycles as are needed for the good pieces, and not one more: reckoned
// here from the numbers that each takes and gives, without time.
func TestOrdersByGoodLetInWhatIsNeeded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := &liner{t: t, unit: coarseGrid}
		var line sim.Line
		for i := range l.count("stations", 1, 4) {
			st := one(fmt.Sprint("station ", i), "", 1)
			st.Cycle = l.law("cycle", 50_000, 2*s)
			st.Takes, st.Gives = l.pieces("takes", 1, 6), l.pieces("gives", 1, 6)
			if i > 0 {
				st.From = line.Stations[i-1].Name
			}
			line.Stations = append(line.Stations, st)
		}
		made := func(cycles int64) int64 {
			pieces := cycles * line.Stations[0].Gives
			for _, st := range line.Stations[1:] {
				pieces = pieces / st.Takes * st.Gives
			}
			return pieces
		}
		line.Orders.CountedAfter = []string{line.Stations[len(line.Stations)-1].Name}
		for range l.count("orders", 1, 3) {
			line.Orders.List = append(line.Orders.List, sim.Order{Good: l.pieces("good", 1, 50)})
		}
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		rec := m.NewEngine().Run(sim.Options{Measure: 1_000_000 * s})
		if len(rec.Orders) != len(line.Orders.List) {
			t.Fatalf("%d orders begun of %d", len(rec.Orders), len(line.Orders.List))
		}
		for i, o := range rec.Orders {
			cycles := int64(1)
			for made(cycles) < line.Orders.List[i].Good {
				cycles++
			}
			if o.Finished == never || o.Good != made(cycles) || o.Input != cycles*line.Stations[0].Takes {
				t.Errorf("for %d good pieces %d units came in and made %d; %d cycles are needed and make %d",
					line.Orders.List[i].Good, o.Input, o.Good, cycles, made(cycles))
			}
		}
	})
}
