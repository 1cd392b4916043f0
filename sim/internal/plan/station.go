package plan

// Station is one station.
type Station struct {
	Name string
	Node int
	// Ins are the links that it takes from; none means supply from outside.
	Ins []In
	// Start is the level that a starved station waits for; None without one.
	StartLink int
	Start     int64
	// Loads: an empty station takes its input in any state, without room for its output too.
	Loads bool
	// Supply is what the outside supplies, or -1 without limit.
	Supply       int64
	Takes, Gives int64
	BlocksBefore bool
	// EmptyPockets is how many pockets in a row may run through empty; 0 is none.
	EmptyPockets int64
	// LosesPacks says that some of Rejects have packs that a stop loses.
	LosesPacks bool
	// Group is the group that stops together, or None.
	Group int

	// Streams is the name by which its streams of random numbers are found.
	Streams string
	Pace    Pace
	Stops   []Stop
	Stocks  []Stock
	Checks  []Check
	// Tasked says that some of Stocks are.
	Tasked          bool
	Rejects         []Reject
	Picks           []Pick
	AfterStop       []Scrap
	AfterStandstill []Scrap
	// Members are the stations as written: one, or those that are coupled to one unit.
	Members []Member
	// Causes says for every stop and stock, in this order, whose it is.
	Causes []Cause
}

// In is a link that a station takes from, and how many pieces at once.
type In struct {
	Link  int
	Takes int64
}

// Member is a station as written.
type Member struct {
	Name         string
	Declared     int
	Takes, Gives int64
}

// Cause is a stop or a stock in the terms of the line as written: the station, and its place
// among the causes of that station. Rank is the place of the station's name
// among all names.
type Cause struct {
	Declared, Index, Rank int
}
