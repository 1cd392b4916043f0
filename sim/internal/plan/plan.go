// Package plan has the compiled line: arrays of numbers, every name resolved
// to an index, every unit to microseconds, pieces, micrometres or millionths of
// a cycle. It is read-only once made and shared by all engines.
package plan

import "tuckline/sim/internal/draw"

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

// Station is one station.
type Station struct {
	Name string
	Node int
	// Ins are the links that it takes from; none means supply from outside.
	Ins []In
	// Start is the level that a starved station waits for; None without one.
	StartLink int
	Start     int64
	// Loads: an empty station takes its input in any state.
	Loads bool
	// Supply is what the outside supplies, or -1 without limit.
	Supply       int64
	Takes, Gives int64
	BlocksBefore bool
	// Group is the group that stops together, or None.
	Group int

	// Streams is the name by which its streams of random numbers are found.
	Streams         string
	Pace            Pace
	Stops           []Stop
	Stocks          []Stock
	Rejects         []Reject
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

// Reject rejects a share of the pieces that a member gives.
type Reject struct {
	Share   float64
	Gives   int64
	Streams string
	// Member is its place in Members.
	Member int
}

// Pace is how long a cycle lasts.
type Pace struct {
	// Fixed is the cycle time if it is the same for every cycle, else 0.
	Fixed Micros
	Law   draw.Law
	Steps []Step
	// Every n-th cycle takes Adds longer; Every 0 is never.
	Every int64
	Adds  Micros
	// Ramp is the time from standstill to set speed after a pause longer than RampAfter, one cycle
	// at set speed: from there on a pause counts as a standstill and its end as a restart.
	Ramp, RampAfter Micros
}

// Step is a speed that a level switches on and off.
type Step struct {
	From, BackAt int64
	Cycle        Micros
}

// Scrap scraps the next Cycles cycles, or all that start or go on within Lasts of
// running, after a pause longer than LongerThan.
type Scrap struct {
	LongerThan Micros
	Cycles     int64
	Lasts      Micros
}

// Clock is what ages a stop.
type Clock uint8

// The clocks.
const (
	CycleClock    Clock = iota // millionths of a cycle
	RunningClock               // microseconds of running
	CalendarClock              // microseconds, always
)

// Stop is one cause.
type Stop struct {
	Name  string
	Clock Clock
	Every draw.Law // in the unit of the clock
	Work  Work
	Class uint8
	// Scraps: the cycle under way is lost. Renews are the stops whose clocks start anew too.
	Scraps bool
	Renews []int
	// Streams is the name by which its streams are found.
	Streams string
}

// Work is what ends a stop.
type Work struct {
	Lasts draw.Law // microseconds
	// Crew is None where nobody is needed.
	Crew, People, Priority int
}

// Stock is a material that cycles use up.
type Stock struct {
	Name                   string
	Full, PerCycle, Refill int64
	Work                   Work
	PartUsed               bool
	Streams                string
}

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
	// Gives is what the first feeder gives at once, Takes the smallest take: for full and empty.
	Gives, Takes int64
}

// NoLimit is the capacity of a link without limit: large, and safe to add pieces to.
const NoLimit int64 = 1 << 60

// Group is a set of stations that stop together.
type Group struct {
	Members []int // stations
}

// Crew is a number of people.
type Crew struct {
	Name   string
	People int
	// Share of each person's time that other work asks for, in spells of mean Spell.
	Share float64
	Spell Micros
}

// Gap is the mean time between two spells of other work.
func (c *Crew) Gap() Micros { return Micros(float64(c.Spell) * (1 - c.Share) / c.Share) }
