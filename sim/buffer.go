package sim

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
	// Stands says of a conveyor that it does not accumulate: while the piece at its exit
	// is not taken the belt stands with all that is on it.
	Stands bool
	// Full and Clear are sensors that stop and release the stations before an accumulating
	// conveyor; without Clear the full sensor, with its delay, is also the one that releases.
	Full, Clear Sensor
	// Kind is how the store lies in the line.
	Kind Kind
	// LastIn says that the last in goes out first; it changes how long pieces stay, not how many go.
	LastIn bool
	// Keeps is the number of pieces that always stay in the store, unless no more input can come.
	Keeps int64
	// TakenOut says that at the end of an order what it keeps, and what waits for its start level, does not leave
	// through the line: it is taken out by hand and counted as cleared.
	TakenOut bool
	// In, Out are the times from one piece to the next at which the store takes pieces in and gives
	// them out at most; 0 is without limit.
	In, Out Micros
	// Surplus is, beside the line, the time from one piece out of the store to the next while
	// pieces also come straight from the line; 0 is without limit.
	Surplus Micros
	// Stops are the store's own: nothing goes in or out meanwhile. Their clocks are
	// PieceClock (pieces that went in) or CalendarClock.
	Stops []Stop
	// Hand is how a hand magazine is worked.
	Hand Hand
	// Returns are blisters that come back from rejected cartons.
	Returns Returns
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
