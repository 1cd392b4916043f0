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
	// Out is the link that it puts pieces into, or None for a sink.
	Out int
	// Stops and Restarts are the levels of all buffers up to the next station.
	Stops    []StopLevel
	Restarts []RestartLevel
}

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
	// Declared is its place in the line as written.
	Declared int
	Node     int
	// In is the link that it takes from, or None for supply from outside.
	In int
	// Supply is what the outside supplies, or -1 without limit.
	Supply       int64
	Takes, Gives int64
	BlocksBefore bool
	// Group is the group that stops together, or None.
	Group int

	Pace            Pace
	Stops           []Stop
	Stocks          []Stock
	RejectShare     float64
	AfterStop       []Scrap
	AfterStandstill []Scrap
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
	// Ramp is the time from standstill to set speed after a pause longer than RampAfter.
	Ramp, RampAfter Micros
}

// Step is a speed that a level switches on and off.
type Step struct {
	From, BackAt int64
	Cycle        Micros
}

// Scrap scraps the next Cycles cycles after a pause longer than LongerThan.
type Scrap struct {
	LongerThan Micros
	Cycles     int64
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
}

// Link is a place between stations.
type Link struct {
	Name string
	// Capacity is the number of places; NoLimit without limit.
	Capacity int64
	Transit  Micros
	AtStart  int64
	// Feeders and Takers are nodes, each list in the order of names.
	Feeders, Takers []int
	// Next is the link that it passes pieces on to, or None.
	Next int
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
