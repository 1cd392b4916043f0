package plan

// Link is a place between stations.
type Link struct {
	Name string
	// Capacity is the number of places; NoLimit without limit.
	Capacity int64
	Transit  Micros
	AtStart  int64
	// Feeders are nodes in the order of names, Takers in the order in which they may take.
	Feeders, Takers []int
	// Alternate lets the feeders take turns; First is the one that goes before all others, or None.
	Alternate bool
	First     int
	// Watchers are nodes whose levels read this link.
	Watchers []int
	// Gives is what the first feeder gives at once, Takes the smallest take and what has to stay
	// beside it: for full and empty.
	Gives, Takes int64
	// LastIn says that of the pieces that lie there the last in goes out first.
	LastIn bool
	// TakenOut says that what it keeps, or what waits for a start level, is taken out by hand at the end of an order.
	TakenOut bool
	// Store is what it does beside holding pieces, or nil.
	Store *Store
}

// NoLimit is the capacity of a link without limit: large, and safe to add pieces to.
const NoLimit int64 = 1 << 60
