package sim

// SpeedStep is a cycle time that applies from a level of the buffer before the
// station until the level has fallen back. Of several active steps the last
// in the list applies.
type SpeedStep struct {
	// From switches the step on when the level is at least From pieces just before
	// the start of a cycle, BackAt switches it off when it is at most BackAt.
	From, BackAt int64
	Cycle        Micros
	// Delay is the time that the level has to stay at or beyond From, or BackAt, before
	// the step switches.
	Delay Micros
}

// Group makes every Every-th cycle longer by Adds, for example by the change
// of a case. Every 0 means no group.
type Group struct {
	Every int64
	Adds  Micros
}
