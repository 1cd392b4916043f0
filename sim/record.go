package sim

import "tuckline/sim/internal/plan"

// State is what a station does; it is in exactly one state at any instant.
type State = plan.State

// The states, in the order in which they win if several hold.
const (
	OffShift    = plan.OffShift
	PlannedStop = plan.PlannedStop
	Changeover  = plan.Changeover
	Waiting     = plan.Waiting
	Down        = plan.Down
	Blocked     = plan.Blocked
	Starved     = plan.Starved
	Running     = plan.Running
)

// NumStates is the number of states.
const NumStates = plan.NumStates

// The records of one replication: integers only, in the order in which the
// line was declared.
type (
	// Record is what happened in the window of one replication.
	Record = plan.Record
	// StationRecord is the part of one station.
	StationRecord = plan.StationRecord
	// StopRecord is one cause at one station; the changes of materials follow the stops.
	StopRecord = plan.StopRecord
	// BufferRecord is the part of one place between stations.
	BufferRecord = plan.BufferRecord
	// CrewRecord is the part of one crew.
	CrewRecord = plan.CrewRecord
	// OrderRecord is one order, ShiftRecord one whole shift.
	OrderRecord = plan.OrderRecord
	ShiftRecord = plan.ShiftRecord
	// MaterialRecord is one stock of a station, CheckRecord one in-process test.
	MaterialRecord = plan.MaterialRecord
	CheckRecord    = plan.CheckRecord
	// Because says what began spells of waiting, Pause is one pause.
	Because = plan.Because
	Pause   = plan.Pause
	// Standstills counts the short ones of a station.
	Standstills = plan.Standstills
	// StoppedBy is the time under one stop.
	StoppedBy = plan.StoppedBy
	// Ages is a distribution of times.
	Ages = plan.Ages
	// Trace collects what happened when.
	Trace = plan.Trace
	// StateChange, LevelChange and StopSpell are the entries of a trace.
	StateChange = plan.StateChange
	LevelChange = plan.LevelChange
	StopSpell   = plan.StopSpell
	// End is the reason why a replication ended.
	End = plan.End
)

// The reasons.
const (
	HorizonReached = plan.HorizonReached
	InputUsedUp    = plan.InputUsedUp
	Deadlock       = plan.Deadlock
	OrdersFinished = plan.OrdersFinished
)

// The causes of waiting that are no stops.
const (
	CausePace    = plan.CausePace
	CauseRejects = plan.CauseRejects
	CauseStore   = plan.CauseStore
	CauseSupply  = plan.CauseSupply
	CauseOutage  = plan.CauseOutage
	CauseOrder   = plan.CauseOrder
)

// AgeClass is the class of Ages in which an age is counted.
func AgeClass(age Micros) int { return plan.AgeClass(age) }

// AgeLimit is the upper limit of a class of Ages, in microseconds.
func AgeLimit(class int) float64 { return plan.AgeLimit(class) }

// LevelClasses is the number of classes in BufferRecord.Classes.
const LevelClasses = plan.LevelClasses
