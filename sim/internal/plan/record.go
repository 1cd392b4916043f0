package plan

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
	// OrdersFinished: the run was to end with its orders, and they are finished.
	OrdersFinished
)

var endWords = [...]string{"horizon", "input used up", "deadlock", "orders finished"}

// String is the word in results.
func (e End) String() string { return endWords[e] }

// Record is what happened in the window [T0, T1) of one replication.
type Record struct {
	Replication int
	// Window is T1 - T0; it stays the whole window when the run ended early, but for runs that end with
	// their orders: there it ends with the last.
	Window Micros
	// Scheduled is the time of the window in which the lines were not off shift.
	Scheduled Micros
	End       End
	// EndedAt is the time, from the start of the replication, at which nothing moved any more;
	// T1 if the horizon was reached.
	EndedAt Micros
	// Locked names the stations of a deadlock.
	Locked   []string `json:",omitempty"`
	Stations []StationRecord
	Buffers  []BufferRecord
	Crews    []CrewRecord
	// Orders are all that were begun in the replication, by their beginning.
	Orders []OrderRecord `json:",omitempty"`
	// Shifts are the whole shifts in the window.
	Shifts []ShiftRecord `json:",omitempty"`
	// AllRunning is the time in which all stations run at once.
	AllRunning Micros
	// Series has the pieces that each station has passed in each full interval of the window, by
	// interval and station; nil unless asked for.
	Series [][]int64 `json:",omitempty"`
	// Ages are the times from the cycle that made the oldest part of a piece to its leaving one
	// of Options.AgesAt; nil unless asked for.
	Ages *Ages `json:",omitempty"`
	// Events is the number of events of the whole replication.
	Events int64
}
