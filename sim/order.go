package sim

// Orders are what the lines have to make. A line that is free takes the next of the list, lines that become free
// together by the name of their first station. Between two orders of a line lie its run-out, in which
// everything in it leaves, and the changeover: never two orders in one buffer.
type Orders struct {
	List []Order
	// Again says that the first follows the last, without end.
	Again bool
	// CountedAfter names the stations behind which good pieces are counted.
	CountedAfter []string
}

// Order is one batch: a number of units of input, or of good pieces.
type Order struct {
	// Name is for people.
	Name string
	// Batch is the number of units of input (Station.BatchPerCycle), Good that of good pieces; one of
	// the two is 0. By Batch the stations at the head of the line get that much and the order is over when the line is
	// empty. By Good they stop when what they gave, less what was lost since, covers the order, and start again if later
	// losses open a gap; the order is over when the count is reached, and the next begins when the line is empty.
	//
	// What is in the line when the count is reached goes through, so that it may be passed: by less than one cycle of the
	// first station makes; and, where what lay about made no piece, so that one more such cycle was let in at a time, by less
	// than that cycle makes together with what may lie before the other stations, one piece less than each takes. What lies
	// below a start level adds to that where buffers are taken out by hand, since the level does not lapse; a part that is
	// closed counts as one piece. Where pieces may go several ways, they are reckoned on that on which they make the fewest.
	Batch, Good int64
	// Before is the changeover before it, unless it is the first of its line.
	Before SetUp
}

// SetUp is the changeover between two orders of a line; stations are in the state changeover from the request for
// its crew to its end. Without Lasts there is none.
type SetUp struct {
	// Name is for people: same product, format, full clean.
	Name  string
	Lasts Law
	Crew  Work
}

// LastPart is what becomes of an input that is not complete at the end of an order.
type LastPart uint8

// The last parts.
const (
	// PartRejected: it is taken out and rejected, such as a part stack.
	PartRejected LastPart = iota
	// PartClosed: the station works one cycle with what is there, such as a part bundle or case.
	PartClosed
)
