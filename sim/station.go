package sim

// Station is a machine that takes pieces, works for a cycle and gives pieces.
type Station struct {
	Name string
	// From names the buffer, conveyor or station (a hand-over) that feeds it.
	// Empty means supply from outside.
	From string
	// Supply is the number of pieces that the outside supplies; 0 is without limit.
	Supply int64
	// BatchPerCycle is, of a station that takes supply, how many units of the batch of an order a cycle
	// uses; 0 means Takes.
	BatchPerCycle int64
	// LastPart is what becomes of an input that is not complete at the end of an order.
	LastPart LastPart
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
	// LoadsWhileStopped lets an empty station take its input in any state: stopped, or while it waits
	// for room before its cycle.
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
	// HeatRecovery is the time after a standstill before work begins: the ramp follows it. It
	// is part of the first cycle and counts as running.
	HeatRecovery Micros
	// HeatUp is the time at the beginning of a replication before which the station cannot
	// work, for example until the glue is hot: a planned stop.
	HeatUp Micros
	// EmptyPockets lets a station whose input is not complete run on empty.
	EmptyPockets EmptyPockets
	// BlocksBefore makes the station wait for room before a cycle, not after it.
	BlocksBefore bool
	// StopsWith names a station of the same group: a stop of either stops both.
	StopsWith string
	Stops     []Stop
	// RejectShare is the share of the pieces given that is rejected, 0 to 1.
	RejectShare float64
	// Runs are the runs in which rejects come.
	Runs RejectRuns
	// RejectStop stops the station after so many cycles in a row with a reject.
	RejectStop RejectStop
	// RejectsAfter is the number of cycles from the camera that finds a reject to the place where
	// it leaves; 0 means in the same cycle. What is on the way survives a stop; scrapped cycles move it on,
	// and what would leave with one is part of the scrap. If it is more than 0 the camera looks at all pieces
	// of every cycle, since what is scrapped or lost at the exit is other web.
	RejectsAfter int64
	// NoReads is the share of the pieces given whose code cannot be read, 0 to 1: rejected, and
	// counted apart.
	NoReads float64
	// LostPerStop is the number of pieces between printing and rejecting that lose their
	// place when the station stops: the next pieces given are rejected, those of the cycle that is struck
	// first; scrapped cycles give none. A stop while some are still to come makes it LostPerStop again. It
	// counts own stops, those of its group, and a blocked spell longer than one cycle at set speed, but no
	// stop of a station that has been starved for longer than it takes until they have left at set speed, those of
	// one cycle in each cycle: an empty infeed lets them run out.
	LostPerStop int64
	// Checks are in-process tests that take pieces off the line.
	Checks []Check
	// AfterStop scraps cycles after an own stop, AfterStandstill after any
	// standstill. The line with the longest limit passed applies.
	AfterStop, AfterStandstill []ScrapRule
	Materials                  []Material
}

// EmptyPockets lets a station run a pocket through empty, for one cycle, when its input is not
// complete at the time when a cycle could start. It takes and gives nothing, uses no material
// and ages no clock; its time counts as running. After Most in a row the station waits. A station that
// its start level holds, or that lacks the room it has to reserve, runs none.
type EmptyPockets struct {
	On   bool
	Most int64 // at least 1
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
