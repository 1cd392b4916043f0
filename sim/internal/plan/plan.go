// Package plan has the compiled line: arrays of numbers, every name resolved
// to an index, every unit to microseconds, pieces, micrometres or millionths of
// a cycle. It is read-only once made and shared by all engines.
package plan

// Cycle is the unit of cycle clocks: millionths of a cycle.
const Cycle = 1_000_000

// None stands where an index names nothing.
const None = -1

// Plan is a compiled line.
type Plan struct {
	// Stations are in the order of moves: longest way to a sink last, ties by name.
	Stations []Station
	Links    []Link
	// Nodes are all that moves pieces, in the order of moves: the last of the line first.
	Nodes  []Node
	Groups []Group
	Crews  []Crew
	// Calendar is the working time, again and again; none is always.
	Calendar []Span
	// Orders are what the lines have to make; nil is without end.
	Orders *Orders
	// Tasks are in any order: requests go by their names.
	Tasks []Task
}

// Node is a station, or a link that passes its pieces on to another link.
type Node struct {
	// Station or Link is None.
	Station, Link int
	// Rank is the place of its name among all names, bytewise.
	Rank int
	// Outs are the links that it puts pieces into: none for a sink, usually one.
	Outs []Out
	// Rule is how it chooses among several.
	Rule Rule
}

// Out is a link that a node puts pieces into. Stops and Restarts are the levels of all
// buffers on that way up to the next station.
type Out struct {
	Link     int
	Stops    []StopLevel
	Restarts []RestartLevel
	// Sensors are the links on that way whose sensors stop the station.
	Sensors []int
}

// Rule is how a station chooses among several links.
type Rule uint8

// The rules.
const (
	InTurn Rule = iota
	FirstWithRoom
	FewestPieces
)

// StopLevel stops a feeding station while Link holds at least Level pieces.
type StopLevel struct {
	Link  int
	Level int64
}

// RestartLevel lets a station that has been blocked start again when Links
// hold at most Level pieces together.
type RestartLevel struct {
	Links []int
	Level int64
}

// Group is a set of stations that stop together.
type Group struct {
	Members []int // stations
}
