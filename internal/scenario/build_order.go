package scenario

import (
	"fmt"
	"slices"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// mostOrders is more than anybody plans; a file that asks for more means without end.
const mostOrders = 10_000

// planned is one batch of an order.
type planned struct {
	w       *orderWords
	product string
	// k counts the batches of the order from 0, of many.
	k, many int
}

// orders makes the work to be done.
func (b *resolver) orders() {
	before := len(b.complaints)
	list := b.plan()
	b.checkChangeovers()
	if !b.words.Orders.given() {
		return
	}
	orders := &Orders{WithoutEnd: b.withoutEnd()}
	u := b.orderUnit()
	if len(b.complaints) > before || b.wrongIn("orders") || b.wrongIn("changeover") || len(b.s.Answer.CountedAfter) == 0 {
		return
	}
	orders.Unit = u.unit
	made := sim.Orders{Again: orders.WithoutEnd}
	for _, i := range b.s.Answer.CountedAfter {
		made.CountedAfter = append(made.CountedAfter, b.s.Line.Stations[i].Name)
	}
	names := batchNames(list)
	for i := range list {
		order, batch := b.order(&list[i], u)
		order.Name, batch.Name = names[i], names[i]
		if i > 0 || made.Again {
			batch.Changeover = list[i].changeover(&list[(i+len(list)-1)%len(list)])
			order.Before = b.setUp(batch.Changeover)
		}
		made.List, orders.Batches = append(made.List, order), append(orders.Batches, batch)
	}
	b.s.Line.Orders, b.s.Orders = made, orders
	b.cyclesOf(u)
	b.lastParts()
	b.missingChangeovers()
}

// plan writes out campaigns and times.
func (b *resolver) plan() (list []planned) {
	again := b.withoutEnd()
	for i := range b.words.Orders.list {
		w := &b.words.Orders.list[i]
		b.checkOrder(w, again)
		many := max(1, int(w.Campaign.value)) * max(1, int(w.Times.value))
		if len(list)+many > mostOrders {
			b.complain(w.Times.or(w.at), "these are more than %d batches; write times: without end, which ends with the measured window", mostOrders)
			return nil
		}
		product := b.words.Product.Name.value
		if w.Product.value != "" {
			product = w.Product.value
		}
		for k := range many {
			list = append(list, planned{w, product, k, many})
		}
	}
	return list
}

// withoutEnd says that the list comes again and again.
func (b *resolver) withoutEnd() bool {
	return slices.ContainsFunc(b.words.Orders.list, func(w orderWords) bool { return w.Times.withoutEnd })
}

func (b *resolver) checkOrder(w *orderWords, again bool) {
	switch {
	case b.said(w.at):
	case w.Batch.given() && w.Good.given():
		b.complain(w.Good.at, "an order is a batch, with what comes of it, or good pieces, with what they need; write one of them")
	case !w.Batch.given() && !w.Good.given():
		b.complain(w.at, "an order says how much: batch: 252000 blisters, or good: 60000 cartons")
	}
	if again && !w.Times.withoutEnd {
		b.complain(w.Times.or(w.at), "without end means that the whole list comes again and again; write times: without end at every order, or at none")
	}
	switch {
	case !w.Due.given() || b.said(w.Due.at):
	case again:
		b.complain(w.Due.at, "orders without end are never finished; leave due out, or write how many times they come")
	case !b.words.Calendar.given():
		b.complain(w.Due.at, "%q needs a calendar; without one there are no days", "due")
	case b.s.Calendar != nil:
		if _, err := b.s.Calendar.at(w.Due); err != nil {
			b.complain(w.Due.at, "%v", err)
		}
	}
}

// batchNames tells the batches of a product apart.
func batchNames(list []planned) []string {
	of, nth := map[string]int{}, map[string]int{}
	for i := range list {
		of[list[i].product]++
	}
	names := make([]string, len(list))
	for i := range list {
		product := list[i].product
		nth[product]++
		names[i] = batchName(product, nth[product], of[product])
	}
	return names
}

func batchName(product string, nth, of int) string {
	switch {
	case of > 1 && product != "":
		return fmt.Sprintf("%s, batch %d of %d", product, nth, of)
	case of > 1:
		return fmt.Sprintf("batch %d of %d", nth, of)
	case product != "":
		return product
	}
	return "batch"
}

// order makes one batch in the units of the stations that begin the line.
func (b *resolver) order(p *planned, u orderUnit) (sim.Order, Batch) {
	w := p.w
	batch := Batch{Product: p.product}
	if w.Due.given() && p.k == p.many-1 {
		batch.Due, _ = b.s.Calendar.at(w.Due)
		batch.DueAt = w.Due.text()
	}
	if w.Good.given() {
		batch.Good = w.Good.pieces() * b.ratio(w.Good.unit, b.s.Answer.Unit)
		return sim.Order{Good: batch.Good}, batch
	}
	batch.Makes = b.makes(&w.Batch)
	return sim.Order{Batch: w.Batch.pieces() * b.ratio(w.Batch.unit, u.unit)}, batch
}

// lastParts says what becomes of an incomplete input at the end of an order: who takes cartons, bundles or cases
// closes a part bundle or case, if it makes one of them; a part stack of blisters is rejected.
func (b *resolver) lastParts() {
	for i := range b.s.Line.Stations {
		takes := b.s.Stations[i].TakesUnit
		if b.s.Line.Stations[i].Gives == 1 && slices.ContainsFunc([]string{"cartons", "bundles", "cases"}, func(unit string) bool { return quantity.SameUnit(unit, takes) }) {
			b.s.Line.Stations[i].LastPart = sim.PartClosed
		}
	}
}

// said says that something at a place of a list, or of a word of it that is not known, is wrong already.
func (b *resolver) said(where at) bool {
	return slices.ContainsFunc(b.complaints, func(c Complaint) bool {
		return c.Line == where.line() && c.Path == where.path && (c.Column == where.node.Column || where.node.Kind == tree.Map)
	})
}
