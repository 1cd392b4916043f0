package plan

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
	// NoReads and LostPacks count pieces among Rejected: those whose code could not be read, and
	// those that lost their place at a stop. MisPicked counts those of cycles without a blank or a leaflet.
	NoReads, LostPacks, MisPicked int64
	// InRuns counts pieces among Rejected that the camera found in a run of rejects.
	InRuns int64
	// Sampled counts good pieces that checks have taken; they do not pass.
	Sampled int64
	// EmptyPockets counts pockets that ran through empty; they are no cycles.
	EmptyPockets int64
	// Lost counts pieces taken in for cycles that a stop has ended: they count for nothing.
	Lost int64
	// PartCycles counts, of Cycles, those with an input that was not complete at the end of an order. PartRejected counts
	// pieces of such an input that were taken out; they are not in Taken.
	PartCycles, PartRejected int64
	// PartShort counts, with Taken, the pieces that such cycles lacked when they took their input, PartLost those of them
	// whose cycles a stop has ended, with Lost; PartInside are those of the cycle under way at the two edges. Taken and
	// PartShort together are whole cycles, of all inputs where there are several.
	PartShort, PartLost int64
	PartInside          [2]int64
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
	// Materials are in the order of the station.
	Materials []MaterialRecord `json:",omitempty"`
	// Checks are in the order of the station.
	Checks []CheckRecord `json:",omitempty"`
	// Because says what began the blocked and starved spells, sorted by station and cause; nil unless asked for.
	Because []Because `json:",omitempty"`
	// StoppedBy says which stop, its own or one of its group or drive, each time under a stop goes back
	// to, sorted in the same way: of several that are open the one that began first. It sums to the states waiting,
	// down and planned stop; nil unless asked for.
	StoppedBy []StoppedBy `json:",omitempty"`
	// Pauses are the pauses of own and joined stops, and of waits for room longer than one cycle at set speed, that began in the window, whole and in order
	// of time; nil unless asked for.
	Pauses []Pause `json:",omitempty"`
	// Short are the standstills shorter than each of Options.ShortUpTo; nil unless asked for.
	Short []Standstills `json:",omitempty"`
	// Waits are the times from a request of the station for a crew to the beginning of the work, walking included and time off
	// shift left out, by
	// the beginning of the work; nil unless asked for.
	Waits *Ages `json:",omitempty"`
}

// MaterialRecord measures one stock: Stock at the first edge plus Added less Used is Stock
// at the last edge.
type MaterialRecord struct {
	// Stock is what is on the machine at the two edges, the content of a web store included.
	Stock [2]int64
	// Added counts what changes and refills have added, Used what cycles have used, Wasted of
	// it being what scrapped cycles and failed picks have used.
	Added, Used, Wasted int64
	// Tasks counts refills, splices and preparations done while running, by the time at which they were
	// asked for. Late counts by their end those for which the station had to stop, Lateness sums the whole times from
	// the beginning of that stop to their end.
	Tasks, Late int64
	Lateness    Micros
	// FailedSplices counts changes that had to be done again, FailedPicks the tries that failed.
	FailedSplices, FailedPicks int64
}

// CheckRecord measures one in-process test.
type CheckRecord struct {
	// Count counts tests by the time at which they were over.
	Count int64
	// Exposures are, test by test, the pieces that the line had made since what the last good test
	// looked at; nil unless ages are asked for.
	Exposures []int64 `json:",omitempty"`
}

// Because says that spells of waiting go back to a cause: a stop, stock or other cause of a station.
type Because struct {
	// Station is its place in the line, Cause one of StopNames or one of the causes below 0.
	Station, Cause int
	// BlockedSpells and StarvedSpells count by the beginning; Blocked and Starved are times in
	// the window.
	BlockedSpells, StarvedSpells int64
	Blocked, Starved             Micros
	// Stops counts the stops that have made the station wait, by the beginning of the first wait of each: all
	// waits of one stop are one, also those between two cycles of a station that then gets less. Of other causes 0.
	Stops int64
	// Overlap is the part of Blocked and Starved in which another station or store before it (starved) or
	// behind it (blocked) was stopped too, BlockedOverlap of it that of Blocked.
	Overlap, BlockedOverlap Micros
}

// StoppedBy is the time in the window under a stop: of a station, and one of its StopNames.
type StoppedBy struct {
	Station, Cause         int
	Waiting, Down, Planned Micros
}

// The causes that are no stops.
const (
	// CausePace: the neighbour is slower.
	CausePace = -1 - iota
	// CauseRejects: the neighbour gave rejects, outside runs of scrap after a stop.
	CauseRejects
	// CauseStore: a stop of the store; the station is the number of stations plus the place in Buffers.
	CauseStore
	// CauseSupply: no more input comes.
	CauseSupply
	// CauseOutage: a break, a time in which the line stands, or the time between shifts; the station is the one that it made
	// slower or stopped.
	CauseOutage
	// CauseOrder: the run-out of an order, or the changeover after it.
	CauseOrder
)

// Pause is one pause: the cause that began first, and how long the station did not work and could not.
type Pause struct {
	// Station and Cause are those of the stop, or what the wait for room goes back to, as in Because.
	Station, Cause int
	Begin, Lasted  Micros
}

// Standstills counts the standstills of a station that ended in the window, or were under way at its end, and were shorter
// than a limit, with their time in the window in each state. A standstill lasts from when the station stops running until it runs
// again or a changeover begins, whatever the causes within it; breaks and planned stops within one are no part of it. Its
// length counts stops for material too, its times do not.
type Standstills struct {
	Count                           int64
	Waiting, Down, Blocked, Starved Micros
}

// Time is that in all states.
func (s *Standstills) Time() Micros { return s.Waiting + s.Down + s.Blocked + s.Starved }

// StopRecord counts one cause at one station.
type StopRecord struct {
	// Count counts by the beginning.
	Count int64
	// Waiting is the time from the beginning to the beginning of work, Down the time of work,
	// both cut at the edges of the window.
	Waiting, Down Micros
}
