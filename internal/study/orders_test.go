package study

import (
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/sim"
)

// Two orders of 7,200 pieces, one a second: 06:00 to 08:00, 30 min of changeover, 08:30 to 10:30 (by hand).
func TestOrdersByHand(t *testing.T) {
	const two = `{good: 7200 pieces}, {good: 7200 pieces, due: "Mon 10:00"}`
	run := func(run string, more ...string) *Outcome {
		s := oneOrder(t, run, two)
		s.Line.Orders.List[1].Before.Lasts, s.Line.Orders.List[1].Before.Name = fixedMinutes(30), "format"
		o, err := Run(t.Context(), s, Options{Workers: 1, Show: more})
		if err != nil {
			t.Fatal(err)
		}
		return o
	}
	o := run("", "finish time", "changeovers")
	r := o.Results.Orders
	if r == nil || !r.Until || r.Unfinished != 0 || r.Finish.P50.At != "Mon 10:30" || len(r.Each) != 2 {
		t.Fatalf("%+v", r)
	}
	first, second := r.Each[0], r.Each[1]
	if first.Begins.P50.At != "Mon 06:00" || first.Finishes.P95.At != "Mon 08:00" || first.Ended != 2 {
		t.Errorf("first %+v", first)
	}
	if second.Begins.P50.At != "Mon 08:30" || second.Finishes.P50.At != "Mon 10:30" || second.InTime.Mean != 0 || second.InTime.N != 2 {
		t.Errorf("second %+v", second)
	}
	if c := second.Changeover.Mean; c < 0.499 || c > 0.501 {
		t.Errorf("%v h of changeover", c)
	}
	if m := o.Results.Measures; len(m) != 4 || m[1].Of != "P50, Mon 10:30" || m[3].Value.Mean < 0.2 {
		t.Errorf("%+v", m) // a changeover in 4.5 h
	}
	// The window of such a run ends with its orders: 30 of 270 min are changeover.
	if share := o.Results.Stations[0].States.Changeover.Mean; share < 0.110 || share > 0.112 {
		t.Errorf("%v of the time is changeover", share)
	}
	if o.Results.Output.Total.Mean != 14400 || o.Results.Output.SpreadOf != singleWindows {
		t.Errorf("%+v", o.Results.Output)
	}
	// A window of 8 h is longer than the orders: that is said, and a window of 3 h ends before the second.
	said := strings.Join(run(", measure: 8 h").Results.Warnings, " ")
	if !strings.Contains(said, "2 of 2 runs all orders are finished before") {
		t.Error(said)
	}
	r = run(", measure: 3 h").Results.Orders
	if r.Unfinished != 2 || r.Finish.P50.Within || r.Each[1].Finishes.P50 != (result.ClockTime{}) || r.Each[1].Began != 2 {
		t.Errorf("%+v", r)
	}
}

func fixedMinutes(n float64) sim.Law { return sim.Fixed(n * float64(sim.Minute)) }
