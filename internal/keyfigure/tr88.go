package keyfigure

import "tuckline/sim"

// How the states of this program map to those of ISA-TR88.00.02 is written here and
// nowhere else. It is for people who compare records; nothing that is shown carries
// the names of that standard as a label.

// TR88State is a state of ISA-TR88.00.02.
type TR88State struct {
	Name string
	// Number is its number in public lists of constants.
	Number int
	// Acting says that the state ends by itself; otherwise it waits for a command or a condition.
	Acting bool
}

// Kind is "acting" or "wait".
func (s TR88State) Kind() string {
	if s.Acting {
		return "acting"
	}
	return "wait"
}

// TR88States are the states by their numbers, 1 to 17 (numbers from public lists of
// constants, names from OPC 30050).
var TR88States = [...]TR88State{
	{"Clearing", 1, true},
	{"Stopped", 2, false},
	{"Starting", 3, true},
	{"Idle", 4, false},
	{"Suspended", 5, false},
	{"Execute", 6, true},
	{"Stopping", 7, true},
	{"Aborting", 8, true},
	{"Aborted", 9, false},
	{"Holding", 10, true},
	{"Held", 11, false},
	{"Unholding", 12, true},
	{"Suspending", 13, true},
	{"Unsuspending", 14, true},
	{"Resetting", 15, true},
	{"Completing", 16, true},
	{"Complete", 17, false},
}

// The numbers that the mapping uses.
const (
	tr88Stopped   = 2
	tr88Suspended = 5
	tr88Execute   = 6
	tr88Aborted   = 9
	tr88Held      = 11
)

// byState is the mapping of states that need no cause. What has no state there, off
// shift, planned stops and changeovers, is Stopped: common practice, no source.
var byState = map[sim.State]int{
	sim.OffShift:    tr88Stopped,
	sim.PlannedStop: tr88Stopped,
	sim.Changeover:  tr88Stopped,
	sim.Blocked:     tr88Suspended,
	sim.Starved:     tr88Suspended,
	sim.Running:     tr88Execute,
}

// byClass is the mapping of down and of waiting for a crew, by the class of the stop:
// waits by causes outside the machine are Suspended, waits by the operator or for
// material are Held, a breakdown is Aborted.
var byClass = map[sim.Class]int{
	sim.Minor:          tr88Held,
	sim.Breakdown:      tr88Aborted,
	sim.MaterialChange: tr88Held,
	sim.Quality:        tr88Held,
	sim.External:       tr88Suspended,
}

// TR88 is the state of ISA-TR88.00.02 that comes closest to ours; class is that of
// the stop and counts only for down and waiting. The transitions of that standard (Starting,
// Holding, …) take no time in this program and are never given. ok is false for a
// state or class that does not exist.
func TR88(state sim.State, class sim.Class) (s TR88State, ok bool) {
	number, ok := byState[state]
	if state == sim.Down || state == sim.Waiting {
		number, ok = byClass[class]
	}
	if !ok {
		return TR88State{}, false
	}
	return TR88States[number-1], true
}
