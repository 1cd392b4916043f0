package scenario

import "tuckline/sim"

// Orders are the batches as people read them; Line.Orders says the same to the engine.
type Orders struct {
	// Batches are in the order of Line.Orders.List.
	Batches []Batch
	// WithoutEnd says that the first follows the last.
	WithoutEnd bool
	// Unit is the plural of the units of sim.Order.Batch and sim.Station.BatchPerCycle, such as "tablets"; empty
	// where all orders count good pieces.
	Unit string
}

// Batch is one order.
type Batch struct {
	// Name is unique but for repetitions of the list: "ALDER-30, batch 2 of 4".
	Name, Product string
	// Makes is what the format sheet makes of it at most, from tablets or capsules to cases, without units of
	// which nothing is known. Of an order of good pieces it is empty.
	Makes []Amount
	// Good is the number of good pieces, in the unit of the answer; 0 of a batch.
	Good int64
	// Changeover is the word of the one before it, unless it is the first of its line: "same product". It
	// takes no time where the file has no such changeover.
	Changeover string
	// Due is the engine time at which it is due, DueAt the clock as written; only if DueAt is not empty.
	Due   sim.Micros
	DueAt string
}

// Amount is a number of pieces with the plural of their unit.
type Amount struct {
	N    int64
	Unit string
}
