package sim

// Kind is how a store lies in the line.
type Kind uint8

// The kinds.
const (
	// InLine: all pieces pass through it.
	InLine Kind = iota
	// BesideLine: pieces go straight on while the exit takes them, and into the store when it
	// does not; the store gives them back when the exit takes more than comes.
	BesideLine
	// HandMagazine is beside the line too, and somebody carries the pieces.
	HandMagazine
)

// Sensor looks at a belt. Full reports when the pieces that stand before the exit have
// reached it for Delay without a break, Clear when they have not reached it for Delay. From a report of Full to one of
// Clear the stations before the belt are stopped.
type Sensor struct {
	On bool
	// At is the number of standing pieces that reach from the exit to the sensor, at least 1.
	At    int64
	Delay Micros
	// Travel is the time in which the belt runs the length of At pieces that stand close together, At × pitch / speed, 0
	// to the transit: a piece stands as soon as it meets the end of the queue, before it would have been at the exit by
	// the time for the pieces in front of it. With 0 only pieces that have had their whole transit count.
	Travel Micros
}

// Hand is the work at a hand magazine: pieces are carried Load at a time, at PerPiece each, but not for a pause of a part
// of a cycle. Out of it when a station behind is up and has lacked pieces for one of its cycles at set speed, and then on and
// on while nothing comes; into it when no station behind is at work, nothing has been taken for that long, and a whole
// Load waits before it, or less where the feeder is blocked or the start level of the station behind is not reached.
type Hand struct {
	// PerPiece is the time of one piece at the hand rate of one person.
	PerPiece Micros
	Load     int64
	Crew     Work
}

// Returns are pieces that come back to the store from cycles that the station behind it has
// rejected: a share of what such a cycle took, after an inspection.
type Returns struct {
	// Share of what rejected cycles took, 0 to 1; 0 means none.
	Share float64
	// Inspection is the law of the time for what one cycle took, in microseconds.
	Inspection Law
	Crew       Work
}
