package plan

// Store is what a place does beside holding pieces: few do.
type Store struct {
	// Stands: the belt stands while a piece at its exit is not taken.
	Stands bool
	// Full and Clear are sensors; At 0 is none.
	Full, Clear Sensor
	// In and Out are the times from one piece to the next at which it takes in and gives out at most;
	// Surplus is that of the way out, beside the line, while pieces also come straight.
	In, Out, Surplus Micros
	// Keeps is the number of pieces that stay.
	Keeps int64
	// Beside: pieces go straight over Direct places, which are part of the capacity, and what finds
	// no room there goes into the store.
	Beside bool
	Direct int64
	// Exits are the stations behind it, over belts too.
	Exits []int
	Stops []StoreStop
	// Hand is the task of somebody who carries pieces, Load at a time, at PerPiece each, or None.
	Hand     int
	Load     int64
	PerPiece Micros
	Returns  Returns
}

// Returns are pieces of rejected cycles of the Stations behind that come back: a share of the cycles, after
// the Task, or None.
type Returns struct {
	Share    float64
	Task     int
	Stations []int
	Streams  string
}

// Sensor sees that At pieces are as near to the exit as if they stood, when that has lasted for Delay; the belt runs their
// length in Travel.
type Sensor struct {
	At            int64
	Delay, Travel Micros
}

// StoreStop is a stop of the store itself. On CycleClock it ages by Cycle with every piece that
// goes in. Task is the work that ends it.
type StoreStop struct {
	Stop
	Task int
}
