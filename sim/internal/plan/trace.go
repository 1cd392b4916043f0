package plan

// Trace collects what happened when, from time 0 to the end of the window.
// Stations, buffers and stops are indices as in the record. Stops of stores are counted in the record only.
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
	// Again: it goes on from the entry before, whose work was the first of several.
	Again bool
}
