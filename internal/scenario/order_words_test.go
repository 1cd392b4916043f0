package scenario_test

import (
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// TestOrdersAreRead writes out campaigns and times. All numbers by hand: 12000 blisters x 10 tablets, 4000 cartons x 3
// x 10 and 30 cases x 10 x 10 cartons.
func TestOrdersAreRead(t *testing.T) {
	s := whole(t, "orders")
	type row struct {
		Name, Changeover string
		Batch, Good      int64
	}
	want := []row{
		{"ALDER-30, batch 1 of 6", "", 120_000, 0},
		{"ALDER-30, batch 2 of 6", "same product", 120_000, 0},
		{"ALDER-30, batch 3 of 6", "format", 120_000, 0}, // after a campaign
		{"ALDER-30, batch 4 of 6", "same product", 120_000, 0},
		{"ALDER-30, batch 5 of 6", "full clean", 120_000, 0}, // the order says so
		{"ALDER-30, batch 6 of 6", "same product", 120_000, 0},
		{"ALDER-60, batch 1 of 3", "format", 120_000, 0}, // another product
		{"ALDER-60, batch 2 of 3", "same product", 0, 3000},
		{"ALDER-60, batch 3 of 3", "same product", 0, 3000},
	}
	means := map[string]float64{"": 0, "same product": 45 * 60e6, "format": 90 * 60e6, "full clean": 240 * 60e6}
	var got []row
	for i, batch := range s.Orders.Batches {
		order := s.Line.Orders.List[i]
		got = append(got, row{order.Name, batch.Changeover, order.Batch, order.Good})
		if mean := order.Before.Lasts.Mean(); order.Before.Name != batch.Changeover || mean != means[batch.Changeover] {
			t.Errorf("before %s: %q of %v", order.Name, order.Before.Name, mean)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if s.Orders.Unit != "tablets" || s.Orders.WithoutEnd || s.Line.Orders.Again {
		t.Errorf("unit %q, without end %v", s.Orders.Unit, s.Orders.WithoutEnd)
	}
	makes := []scenario.Amount{{N: 120_000, Unit: "tablets"}, {N: 12_000, Unit: "blisters"}, {N: 4000, Unit: "cartons"}, {N: 40, Unit: "cases"}}
	if diff := cmp.Diff(makes, s.Orders.Batches[6].Makes); diff != "" {
		t.Error(diff)
	}
	// Due on Monday at 20:00, 14 h after the start at 06:00, is the last batch of that order.
	if a, b := s.Orders.Batches[2], s.Orders.Batches[3]; a.DueAt != "" || b.DueAt != "Mon 20:00" || b.Due != 14*sim.Hour {
		t.Errorf("due %+v and %+v", a, b)
	}
	if crew := s.Line.Orders.List[1].Before.Crew; crew != (sim.Work{Crew: "operators", People: 2, Priority: 5}) {
		t.Errorf("the changeover is done by %+v", crew)
	}
	var parts []sim.LastPart
	for _, station := range s.Line.Stations {
		parts = append(parts, station.LastPart)
	}
	if diff := cmp.Diff([]sim.LastPart{sim.PartRejected, sim.PartRejected, sim.PartClosed, sim.PartClosed}, parts); diff != "" {
		t.Error(diff)
	}
	if !s.Line.Buffers[0].TakenOut || whole(t, "orders", "store.levels.empty out at batch end=yes").Line.Buffers[0].TakenOut {
		t.Error("the store is not emptied as it is written")
	}
}

// TestBatchesPerCycle converts what a batch is counted in into cycles of the stations at the head. By hand.
func TestBatchesPerCycle(t *testing.T) {
	const free = `
line:
  - {station: former, cycle: 60/min, gives: 4 blisters}
  - {station: cartoner, cycle: 80/min, takes: 3 blisters, gives: 1 carton}
  - {station: bundler, cycle: 8/min, takes: 10 cartons, gives: 1 bundle}
orders:
  - {batch: `
	for _, c := range []struct {
		name, product, batch string
		unit                 string
		n, perCycle          int64
		makes                string
	}{
		{"tablets without hopper", "{blister: {tablets: 10}, carton: {blisters: 3}}", "2520000 tablets", "tablets", 2_520_000, 40, "2520000 tablets 252000 blisters 84000 cartons"},
		{"blisters in tablets", "{blister: {tablets: 10}}", "252000 blisters", "tablets", 2_520_000, 40, "2520000 tablets 252000 blisters"},
		{"blisters alone", "{name: A}", "252000 blisters", "blisters", 252_000, 4, "252000 blisters"},
		{"cartons in blisters", "{carton: {blisters: 3}}", "4000 cartons", "blisters", 12_000, 4, "12000 blisters 4000 cartons"},
		{"cases without bundles", "{carton: {blisters: 3}, case: {cartons: 100}}", "40 cases", "blisters", 12_000, 4, "12000 blisters 4000 cartons 40 cases"},
		{"capsules", "{capsule: {}, blister: {capsules: 14}}", "56 capsules", "capsules", 56, 56, "56 capsules 4 blisters"},
	} {
		text := "tuckline: 1\nproduct: " + c.product + free + c.batch + "}\n"
		s, err := scenario.Read(c.name, []byte(text), scenario.Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		order, first, second := s.Line.Orders.List[0], s.Line.Stations[0], s.Line.Stations[1]
		if s.Orders.Unit != c.unit || order.Batch != c.n || first.BatchPerCycle != c.perCycle || second.BatchPerCycle != 0 {
			t.Errorf("%s: %d %s, %d in a cycle of the first, %d of the second", c.name, order.Batch, s.Orders.Unit, first.BatchPerCycle, second.BatchPerCycle)
		}
		if got := amounts(s.Orders.Batches[0].Makes); got != c.makes {
			t.Errorf("%s makes %s, want %s", c.name, got, c.makes)
		}
	}
}

func amounts(all []scenario.Amount) (text string) {
	for i, a := range all {
		if i > 0 {
			text += " "
		}
		text += strconv.FormatInt(a.N, 10) + " " + a.Unit
	}
	return text
}

// TestSourcesOfAnOrder: machines of different width that merge draw from one batch, each as much as it uses; what is
// put in from the side draws nothing. By hand.
func TestSourcesOfAnOrder(t *testing.T) {
	s := whole(t, "orders-without-end")
	if wide, narrow := s.Line.Stations[0].BatchPerCycle, s.Line.Stations[1].BatchPerCycle; wide != 80 || narrow != 40 {
		t.Errorf("%d and %d capsules in a cycle", wide, narrow)
	}
	var before []string
	for _, batch := range s.Orders.Batches {
		before = append(before, batch.Changeover)
	}
	// The third batch is followed by the first of the next campaign.
	if diff := cmp.Diff([]string{"format", "same product", "same product"}, before); diff != "" || !s.Line.Orders.Again || !s.Orders.WithoutEnd {
		t.Error(diff, s.Line.Orders.Again)
	}
	side := `tuckline: 1
line:
  - {station: former, cycle: 60/min, gives: 4 blisters}
  - {buffer: store, holds: 60 blisters}
  - {station: folder, from: supply, cycle: 90/min, gives: 1 leaflet}
  - {buffer: leaflets, from: folder, holds: 20 leaflets}
  - {station: cartoner, cycle: 80/min, takes: {store: 3 blisters, leaflets: 1 leaflet}, gives: 1 carton}
orders: [{batch: 12000 blisters}]
`
	s, err := scenario.Read("side", []byte(side), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := s.Line.Stations[0].BatchPerCycle, s.Line.Stations[1].BatchPerCycle; a != 4 || b != 0 {
		t.Errorf("the former draws %d, the folder %d", a, b)
	}
}

// TestOrderWarnings: what takes no time, or stays, is said.
func TestOrderWarnings(t *testing.T) {
	read := func(orders string) []string {
		text := "tuckline: 1\nproduct: {name: A, blister: {tablets: 10}}\nline:\n  - {station: wide, cycle: 60/min, gives: 6 blisters}\n" +
			"  - {station: narrow, from: supply, cycle: 60/min, gives: 4 blisters}\n  - {buffer: b, from: [wide, narrow], holds: 50 blisters}\n" +
			"  - {station: packer, cycle: 600/min, takes: 1 blister}\n" + orders
		s, err := scenario.Read("warnings", []byte(text), scenario.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return s.Warnings
	}
	// 60 and 40 tablets have 20 in common: 20 may be left, with which neither can run.
	stays := "The stations at the head of the line use different numbers of tablets in a cycle: up to 20 of a batch may stay unused at its end."
	for orders, want := range map[string][]string{
		"orders: [{batch: 12000 blisters}]":           {stays},
		"orders: [{batch: 12000 blisters, times: 2}]": {stays, "No changeover is written: the next batch begins as soon as the line is empty."},
		"orders: [{batch: 12000 blisters, campaign: 2, times: 2}]\nchangeover: {format: {lasts: 1 h}}": {
			stays, `The changeover "same product" comes before A, batch 2 of 4 and is not written: it takes no time.`,
		},
	} {
		if diff := cmp.Diff(want, read(orders)); diff != "" {
			t.Errorf("%s: %s", orders, diff)
		}
	}
}
