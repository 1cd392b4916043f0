package scenario_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// finished runs a scenario until its orders are finished, 1000 h at most.
func finished(t *testing.T, s *scenario.Scenario) sim.Record {
	t.Helper()
	model, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	return model.NewEngine().Run(sim.Options{Seed: 1, Measure: 1000 * sim.Hour, UntilOrders: !s.Line.Orders.Again})
}

// TestOrdersByTheClock: 2400 blisters of 4 a cycle at 60 cycles a minute are 10 min. By hand.
func TestOrdersByTheClock(t *testing.T) {
	const filler = "line: [{station: filler, cycle: 60/min, gives: 4 blisters}]\n"
	const lines = "lines: {line 1: [{station: filler, cycle: 60/min, gives: 4 blisters}], line 2: {like: line 1}}\n"
	const changeover = "changeover: {same product: {lasts: 5 min}, format: {lasts: 15 min}, full clean: {lasts: 60 min}}\n"
	for _, c := range []struct {
		what, text string
		ends       []sim.Micros // in minutes
	}{
		{"three of the same product", filler + changeover + "orders: [{batch: 2400 blisters, times: 3}]\n", []sim.Micros{10, 25, 40}},
		{"two campaigns of two", filler + changeover + "orders: [{batch: 2400 blisters, campaign: 2, times: 2}]\n", []sim.Micros{10, 25, 50, 65}},
		{"another product", filler + changeover + "orders: [{batch: 2400 blisters, product: A}, {batch: 1200 blisters, product: B}]\n", []sim.Micros{10, 30}},
		{"a full clean", filler + changeover + "orders: [{batch: 2400 blisters}, {batch: 1200 blisters, changeover: full clean}]\n", []sim.Micros{10, 75}},
		{"no changeover", filler + "orders: [{batch: 2400 blisters, times: 2}]\n", []sim.Micros{10, 20}},
		{"good pieces", filler + changeover + "orders: [{good: 2400 blisters, times: 2}]\n", []sim.Micros{10, 25}},
		{"two lines share three", lines + changeover + "orders: [{batch: 2400 blisters, times: 3}]\n", []sim.Micros{10, 10, 25}},
	} {
		s, err := scenario.Read(c.what, []byte("tuckline: 1\n"+c.text), scenario.Options{})
		if err != nil {
			t.Fatal(err)
		}
		r := finished(t, s)
		var ends []sim.Micros
		for _, order := range r.Orders {
			ends = append(ends, order.Finished/sim.Minute)
		}
		if diff := cmp.Diff(c.ends, ends); diff != "" || r.End != sim.OrdersFinished {
			t.Errorf("%s: %s, ends %v", c.what, diff, r.End)
		}
	}
}

// TestOrdersHaveEffects: a word without effect would be a wrong answer.
func TestOrdersHaveEffects(t *testing.T) {
	s := whole(t, "orders")
	r := finished(t, s)
	if len(r.Orders) != len(s.Orders.Batches) || r.End != sim.OrdersFinished {
		t.Fatalf("%d orders, ends %v", len(r.Orders), r.End)
	}
	for i, order := range r.Orders {
		switch planned := s.Line.Orders.List[i]; {
		case planned.Batch > 0 && (order.Input != planned.Batch || order.Good > s.Orders.Batches[i].Makes[2].N || order.Good == 0):
			t.Errorf("%s: %d in, %d good", planned.Name, order.Input, order.Good)
		case planned.Good > 0 && (order.Good < planned.Good || order.Good > planned.Good+planned.Good/100): // what is on its way comes too
			t.Errorf("%s: %d good", planned.Name, order.Good)
		}
	}
	if r.Buffers[0].Cleared == 0 {
		t.Error("nothing is taken out of the store by hand")
	}
	if out := finished(t, whole(t, "orders", "store.levels.empty out at batch end=yes")); out.Buffers[0].Cleared != 0 {
		t.Errorf("%d are taken out of a store that empties through the line", out.Buffers[0].Cleared)
	}
	// A part bundle and a part case are closed, since rejects leave no whole ones.
	if r.Stations[2].PartCycles == 0 || r.Stations[3].PartCycles == 0 || r.Stations[1].PartCycles != 0 {
		t.Errorf("part cycles %d, %d, %d", r.Stations[1].PartCycles, r.Stations[2].PartCycles, r.Stations[3].PartCycles)
	}
	for _, set := range []string{
		"changeover.same product.lasts=60 min", "changeover.format.lasts=2 h", "changeover.full clean.lasts=5 h",
	} {
		if other := finished(t, whole(t, "orders", set)); other.Orders[8].Finished == r.Orders[8].Finished {
			t.Errorf("nothing changes with %s", set)
		}
	}
}

// TestOrdersWithoutEnd: the list comes again, and each batch is shared by both machines.
func TestOrdersWithoutEnd(t *testing.T) {
	r := finished(t, whole(t, "orders-without-end"))
	if n := len(r.Orders); n < 1000 || r.Orders[n-1].Round < 300 {
		t.Fatalf("%d orders", n)
	}
	for i, order := range r.Orders[:999] {
		if order.Order != i%3 || order.Round != i/3 || order.Input != 120_000 {
			t.Fatalf("order %d: %+v", i, order)
		}
	}
}
