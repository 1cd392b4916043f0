package sim

// Line describes a line: what stands in it and how pieces move through it. It
// is plain data in engine units (microseconds, pieces, micrometres); reading
// units and percentages is the business of whoever fills it in.
type Line struct {
	Stations []Station
	Buffers  []Buffer // buffers and conveyors
	Crews    []Crew
}

// Station is a machine that takes pieces, works for a cycle and gives pieces.
type Station struct {
	Name string
	// From names the buffer, conveyor or station (a hand-over) that feeds it.
	// Empty means supply from outside.
	From string
	// Supply is the number of pieces that the outside supplies; 0 is without limit.
	Supply int64
	// Takes and Gives are pieces per cycle, at least 1; Takes is of From.
	Takes, Gives int64
	// Also are further inputs of a station that assembles: a cycle needs all of them.
	Also []Input
	// Sends says how a station with several places to put its pieces chooses.
	Sends Sends
	// Priority among stations that take from the same place: smaller goes first,
	// ties by name.
	Priority int
	// Coupled names the drive: neighbours on the same drive are one unit with one cycle,
	// the longest, and nothing between them.
	Coupled string
	// RandomAs names a station whose streams of random numbers it shares, usually
	// of another line; empty means its own.
	RandomAs string
	// LoadsWhileStopped lets an empty station take its input in any state.
	LoadsWhileStopped bool
	// Cycle is the duration of one cycle at set speed, in microseconds.
	Cycle Law
	// Steps change the speed with the level of the buffer before the station.
	Steps []SpeedStep
	// Group makes every n-th cycle longer.
	Group Group
	// Ramp is the time from standstill to set speed; during it the speed rises
	// in a straight line, so that half of it is lost.
	Ramp Micros
	// BlocksBefore makes the station wait for room before a cycle, not after it.
	BlocksBefore bool
	// StopsWith names a station of the same group: a stop of either stops both.
	StopsWith string
	Stops     []Stop
	// RejectShare is the share of the pieces given that is rejected, 0 to 1.
	RejectShare float64
	// AfterStop scraps cycles after an own stop, AfterStandstill after any
	// standstill. The line with the longest limit passed applies.
	AfterStop, AfterStandstill []ScrapRule
	Materials                  []Material
}

// Input is what a cycle takes from one of several places.
type Input struct {
	From  string
	Takes int64
}

// Sends are the places, by name of the buffer or of the station behind a
// hand-over, among which a station chooses at the end of a cycle, or when the first
// place becomes free.
type Sends struct {
	To   []string
	Rule SendRule
}

// SendRule is how a station chooses where its pieces go.
type SendRule uint8

// The rules.
const (
	// InTurn goes through the list and waits for the one whose turn it is.
	InTurn SendRule = iota
	// FirstWithRoom takes the first of the list that has room.
	FirstWithRoom
	// FewestPieces takes the one with room that has the fewest pieces, those on the machine behind it
	// included; ties by the list.
	FewestPieces
)

// SpeedStep is a cycle time that applies from a level of the buffer before the
// station until the level has fallen back. Of several active steps the last
// in the list applies.
type SpeedStep struct {
	// From switches the step on when the level is at least From pieces just before
	// the start of a cycle, BackAt switches it off when it is at most BackAt.
	From, BackAt int64
	Cycle        Micros
}

// Group makes every Every-th cycle longer by Adds, for example by the change
// of a case. Every 0 means no group.
type Group struct {
	Every int64
	Adds  Micros
}

// ScrapRule scraps the next Cycles cycles, or all that start or go on within Lasts of running, after a
// pause longer than LongerThan.
type ScrapRule struct {
	LongerThan Micros
	Cycles     int64
	Lasts      Micros
}

// Clock says what ages a stop.
type Clock uint8

// The clocks of a stop.
const (
	// CycleClock: Every is in cycles of the station.
	CycleClock Clock = iota
	// PieceClock: Every is in pieces given, before rejects.
	PieceClock
	// RunningClock: Every is in microseconds of running.
	RunningClock
	// CalendarClock: Every is in microseconds; it runs always, except during the stop itself.
	CalendarClock
)

// Class is the class of a stop.
type Class uint8

// The classes of stops.
const (
	Minor Class = iota
	Breakdown
	MaterialChange
	Quality
	External
)

var classWords = [...]string{"minor", "breakdown", "material", "quality", "external"}

// String is the word of the scenario format.
func (c Class) String() string { return classWords[c] }

// Stop is one cause for which a station stops.
type Stop struct {
	Name string
	// Every is the law of the age at which it strikes, in the unit of Clock.
	Every Law
	Clock Clock
	// Lasts is the law of the work, in microseconds.
	Lasts Law
	Class Class
	// Crew does the work; empty means that it needs nobody.
	Crew Work
	// RateFactor multiplies how often the stop comes; 0 means 1.
	RateFactor float64
	// Scraps: the cycle that it strikes is lost, and its input is scrap.
	Scraps bool
	// Renews names other stops of the station whose clocks it starts anew.
	Renews []string
}

// Work says who is asked.
type Work struct {
	// Crew is the name of the crew; empty means nobody.
	Crew string
	// People is how many of them, at least 1.
	People int
	// Priority: smaller goes first.
	Priority int
}

// Material is a reel, a magazine or a hopper: a stock that every cycle draws on.
type Material struct {
	Name string
	// Amount is what a full stock holds, PerCycle what one cycle uses, Refill
	// what a change adds: micrometres of web or pieces.
	Amount, PerCycle, Refill int64
	// Lasts is the law of the change, in microseconds.
	Lasts Law
	Crew  Work
	// FilledInTime: somebody refills it before it is empty, so it never stops
	// the station.
	FilledInTime bool
	// PartUsed draws the first stock uniformly instead of starting full.
	PartUsed bool
}

// Buffer is a place between stations: a store, or a conveyor with a transit time.
type Buffer struct {
	Name string
	// From names its feeders: stations, conveyors or buffers.
	From []string
	// Holds is its number of places, or Unlimited.
	Holds int64
	// Transit is the time from its entrance to its exit.
	Transit Micros
	// Conveyor marks a belt: same rules, another word in reports.
	Conveyor bool
	// StopUpstream is the level from which feeding stations stop; 0 means only
	// when a piece finds no place.
	StopUpstream int64
	// Restart releases stations that this buffer has blocked.
	Restart Level
	// Start is the level, of pieces that have arrived, from which a station behind the buffer
	// that has been starved starts again.
	Start Level
	// Turns is who of several feeders goes first.
	Turns Turns
	// AtStart is the level at time 0, in pieces that have arrived.
	AtStart int64
}

// Level is a level in pieces, if there is one. A restart level counts all pieces
// between the machines, belts before the buffer too.
type Level struct {
	On    bool
	Level int64
}

// Turns is who of several feeders that wait for room goes first: the one that has waited longest,
// unless Alternate or First says otherwise.
type Turns struct {
	// Alternate lets them take turns, in the order of names.
	Alternate bool
	// First names the feeder that goes before all others.
	First string
}

// Crew is a number of people who do the work of stops.
type Crew struct {
	Name   string
	People int
	// ElsewhereShare is the share of each person's time that other work outside
	// the line asks for, 0 to below 1, in spells of mean length ElsewhereSpell.
	ElsewhereShare float64
	ElsewhereSpell Micros
}
