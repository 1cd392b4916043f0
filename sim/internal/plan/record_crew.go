package plan

// CrewRecord measures one crew.
type CrewRecord struct {
	// Present is the time of people on duty, summed over people, breaks left out.
	Present Micros
	// Busy is the time of people at work at the line, walking included, Walking of it that from the call to
	// the beginning of work; Elsewhere is that of other work. Overtime is the part of Busy that was worked after the
	// end of the shift or in a break.
	Busy, Walking, Elsewhere, Overtime Micros
	// Requests counts requests of the line by the beginning of work, Waited those of them that waited
	// at all, WaitTime the sum of their whole waiting, walking included, time off shift left out.
	Requests, Waited int64
	WaitTime         Micros
	// Waits is the distribution of the whole waiting; nil unless asked for.
	Waits *Ages `json:",omitempty"`
}
