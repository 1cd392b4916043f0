package plan

import "math/bits"

// Micros is a time or duration in microseconds.
type Micros int64

// Never is a time that does not come.
const Never Micros = 1<<63 - 1

// State is what a station does.
type State uint8

// States in order of precedence.
const (
	OffShift State = iota
	PlannedStop
	Changeover
	Waiting
	Down
	Blocked
	Starved
	Running
	NumStates = 8
)

var stateWords = [...]string{
	"off shift", "planned stop", "changeover", "waiting for crew",
	"down", "blocked", "starved", "running",
}

// String is the word that people see.
func (s State) String() string { return stateWords[s] }

// End is the reason why a replication ended.
type End uint8

// The reasons.
const (
	HorizonReached End = iota
	InputUsedUp
	Deadlock
)

var endWords = [...]string{"horizon", "input used up", "deadlock"}

// String is the word in results.
func (e End) String() string { return endWords[e] }

// Record is what happened in the window [T0, T1) of one replication.
type Record struct {
	Replication int
	// Window is T1 - T0; it stays the whole window when the run ended early.
	Window Micros
	End    End
	// EndedAt is the time, from the start of the replication, at which nothing moved any more;
	// T1 if the horizon was reached.
	EndedAt Micros
	// Locked names the stations of a deadlock.
	Locked   []string `json:",omitempty"`
	Stations []StationRecord
	Buffers  []BufferRecord
	Crews    []CrewRecord
	// AllRunning is the time in which all stations run at once.
	AllRunning Micros
	// Series has the pieces that each station has passed in each full interval of the window, by
	// interval and station; nil unless asked for.
	Series [][]int64 `json:",omitempty"`
	// Events is the number of events of the whole replication.
	Events int64
}

// StationRecord counts one station in the window.
type StationRecord struct {
	// Cycles counts cycles that ended, scrapped ones included.
	Cycles int64
	// ScrappedCycles counts those of them that were scrapped.
	ScrappedCycles int64
	// Taken counts pieces taken in, of the first input where there are several.
	Taken int64
	// Given counts pieces that cycles gave, before rejects, without scrapped cycles.
	Given int64
	// Rejected counts pieces given and rejected at the station.
	Rejected int64
	// Scrapped counts pieces that scrapped cycles would have given.
	Scrapped int64
	// Lost counts pieces taken in for cycles that a stop has ended: they count for nothing.
	Lost int64
	// Passed counts good pieces by their entry into the next place, or out of the line.
	Passed int64
	// InputInside and OutputInside are pieces in the cycle under way (as taken)
	// and finished pieces held, at the first edge and at the last.
	InputInside, OutputInside [2]int64
	// States is the time in each state; it sums to the window.
	States [NumStates]Micros
	// Holding is the time in which finished output is held, whatever the state.
	Holding Micros
	// BlockedSpells and StarvedSpells count the beginnings of these states.
	BlockedSpells, StarvedSpells int64
	// Restarts counts the beginnings of work after a pause longer than one cycle at set speed.
	Restarts int64
	// Stops has the stops in the order of the station, then its materials.
	Stops []StopRecord
}

// StopRecord counts one cause at one station.
type StopRecord struct {
	// Count counts by the beginning.
	Count int64
	// Waiting is the time from the beginning to the beginning of work, Down the time of work,
	// both cut at the edges of the window.
	Waiting, Down Micros
}

// LevelClasses is the number of classes of a level: 0, then 50 equal parts of
// the capacity, the last of which includes full.
const LevelClasses = 51

// BufferRecord measures one place between stations.
type BufferRecord struct {
	// In and Out count pieces that entered and left.
	In, Out int64
	// Level is the level at the first edge and at the last.
	Level [2]int64
	// LevelTime and TransitTime are integrals: pieces times microseconds. What goes
	// beyond 2^62 is counted in LevelCarry, in units of 2^62: a buffer without limit
	// may fill all year. MeanLevel puts both together.
	LevelTime, TransitTime int64
	LevelCarry             int64 `json:",omitempty"`
	// Full is the time in which the whole output of the (first) feeder does not
	// fit, Empty that in which fewer pieces than one take have arrived.
	Full, Empty Micros
	// Max is the highest level.
	Max int64
	// Classes is the time in each class of level; nil unless asked for.
	Classes []Micros `json:",omitempty"`
}

// MeanLevel is the mean level in a window of this length.
func (b *BufferRecord) MeanLevel(window Micros) float64 {
	return (float64(b.LevelTime) + float64(b.LevelCarry)*(1<<62)) / float64(window)
}

// AddLevel counts a level, at least 0, that lasted for a time.
func (b *BufferRecord) AddLevel(level int64, lasted Micros) {
	high, low := bits.Mul64(uint64(level), uint64(lasted))
	b.LevelTime += int64(low & (1<<62 - 1))
	b.LevelCarry += int64(high<<2|low>>62) + b.LevelTime>>62
	b.LevelTime &= 1<<62 - 1
}

// CrewRecord measures one crew.
type CrewRecord struct {
	// Busy is the time of work at the line, summed over people; Elsewhere that of other work.
	Busy, Elsewhere Micros
	// Requests counts requests of the line by the beginning of work, Waited those of them that waited
	// at all, WaitTime the sum of their whole waiting.
	Requests, Waited int64
	WaitTime         Micros
}

// Trace collects what happened when, from time 0 to the end of the window.
// Stations, buffers and stops are indices as in the record.
type Trace struct {
	States []StateChange
	Levels []LevelChange
	Stops  []StopSpell
}

// StateChange says that a station entered a state. If it is down or waiting,
// the cause is a stop of station By.
type StateChange struct {
	At       Micros
	Station  int
	State    State
	By, Stop int // -1 without a cause
}

// LevelChange says that a place holds Level pieces from At on.
type LevelChange struct {
	At     Micros
	Buffer int
	Level  int64
}

// StopSpell is one stop from its beginning over the beginning of work to its end.
type StopSpell struct {
	Station, Stop     int
	Begin, Work, Done Micros
}
