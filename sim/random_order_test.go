package sim_test

import (
	"fmt"
	"slices"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// randomOrders is a random line, or several, with orders by batch and by good pieces.
func randomOrders(t *rapid.T, unit sim.Micros) sim.Line {
	l := &liner{t: t, unit: unit}
	if l.chance("stores", 2) {
		l.line = randomStores(t, unit)
	} else {
		l.line = randomLine(t, unit)
	}
	l.orders(l.chance("by good pieces", 3))
	return l.line
}

// orders lets the lines make batches, or batches and good pieces.
func (l *liner) orders(good bool) {
	most := int64(1)
	for i := range l.line.Stations {
		st := &l.line.Stations[i]
		st.Supply = 0
		if st.From == "" {
			most = max(most, st.Takes)
			if l.chance("units of a batch", 3) {
				st.BatchPerCycle = l.pieces("a cycle", 1, 10)
				most = max(most, st.BatchPerCycle)
			}
		}
		if st.Gives == 1 && st.From != "" && l.count("closed", 0, 2) > 0 {
			st.LastPart = sim.PartClosed
		}
	}
	for i := range l.line.Buffers {
		l.line.Buffers[i].TakenOut = l.chance("taken out", 4)
	}
	o := &l.line.Orders
	o.CountedAfter = l.ends()
	for i := range l.count("orders", 1, 5) {
		order := sim.Order{Name: fmt.Sprintf("order %d", i), Batch: most * l.pieces("batch", 1, 20)}
		if good && l.chance("good", 2) {
			order.Batch, order.Good = 0, l.pieces("good pieces", 1, 40)
		}
		if l.chance("changeover", 2) {
			order.Before = sim.SetUp{Name: "format", Lasts: l.law("set-up", 50_000, 4*s), Crew: l.work()}
		}
		o.List = append(o.List, order)
	}
	o.Again = l.chance("again", 4)
}

// ends are the stations from which nothing is taken.
func (l *liner) ends() []string {
	var all []string
	for i := range l.line.Stations {
		name := l.line.Stations[i].Name
		taken := slices.ContainsFunc(l.line.Buffers, func(b sim.Buffer) bool { return slices.Contains(b.From, name) }) ||
			slices.ContainsFunc(l.line.Stations, func(st sim.Station) bool { return st.From == name })
		if !taken {
			all = append(all, name)
		}
	}
	return all
}
