package plan

// Orders are what the lines have to make.
type Orders struct {
	List []Order
	// Again says that the first follows the last.
	Again bool
	// Lines are by the name of their first station.
	Lines []OrderLine
}

// Order is one batch: a number of units of input, or of good pieces; the other is 0.
type Order struct {
	Batch, Good int64
	// SetUp is the changeover before it, by its place in OrderLine.SetUps, or None.
	SetUp int
}

// OrderLine is a line: stations that links connect. Stations are listed from the head of the line to its end.
type OrderLine struct {
	// First is the first of Heads by name, by its place among all stations as written.
	First    int
	Stations []int
	Links    []int
	// Heads draw from the order; Sides are the other stations without input.
	Heads []Head
	Sides []int
	// Flow are the stations to which what the heads give comes, they included; Fed are the links between them.
	Flow []FlowStation
	Fed  []int
	// Answers are the stations behind which good pieces are counted.
	Answers []int
	// Worth is that of a good piece that counts: all worths are in parts of it.
	Worth int64
	// SetUps are the tasks of its changeovers.
	SetUps []int
}

// Head is a station that draws from the order: in each cycle Uses of a batch, or as much as it gives is Worth.
type Head struct {
	Station     int
	Uses, Worth int64
}

// FlowStation is a station to which what the heads give comes. Worth is that of a piece that it gives, 0 behind the
// answer; Strays that of what it takes in a cycle and does not pass on towards the answer.
type FlowStation struct {
	Station       int
	Worth, Strays int64
	// Closes says that it works a cycle with what is there if its input is not complete at the end of an order.
	Closes bool
}
