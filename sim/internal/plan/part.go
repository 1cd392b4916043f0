package plan

import "tuckline/sim/internal/draw"

// Pace is how long a cycle lasts.
type Pace struct {
	// Fixed is the cycle time if it is the same for every cycle, else 0.
	Fixed Micros
	Law   draw.Law
	Steps []Step
	// Every n-th cycle takes Adds longer; Every 0 is never.
	Every int64
	Adds  Micros
	// Ramp is the time from standstill to set speed after a pause longer than RampAfter, one cycle
	// at set speed: from there on a pause counts as a standstill and its end as a restart.
	Ramp, RampAfter Micros
	// Heat is the time after such a pause before work begins.
	Heat Micros
}

// Step is a speed that a level switches on and off.
type Step struct {
	From, BackAt int64
	Cycle        Micros
	// Delay is how long the level has to stay at or beyond From, or BackAt.
	Delay Micros
}

// Scrap scraps the next Cycles cycles, or all that start or go on within Lasts of
// running, after a pause longer than LongerThan.
type Scrap struct {
	LongerThan Micros
	Cycles     int64
	Lasts      Micros
}

// Reject is what one member rejects of the pieces that it gives.
type Reject struct {
	// Share is rejected by the camera outside runs.
	Share float64
	Runs  Runs
	// After is the number of cycles from the camera to where a reject leaves.
	After int64
	// InARow is the number of cycles in a row with a reject found that raise Signal, a stop; 0 is never.
	InARow int64
	Signal int
	// LostPerStop is the number of next pieces that a stop makes rejects.
	LostPerStop int64
	// NoReads is the share whose code cannot be read.
	NoReads float64
	Gives   int64
	Streams string
	// Member is its place in Members.
	Member int
}

// Runs are the runs in which rejects come: after a share Enter of the cycles outside, of mean
// Length cycles, with Share of the pieces rejected.
type Runs struct {
	Enter, Share, Length float64
}

// Pick is the pick of a material that may fail.
type Pick struct {
	// Stock and Reject are places in Stocks and Rejects of the station.
	Stock, Reject int
	Share         float64
	Retries       int64
	// Signal is the stop that a pick raises that has failed for good, or None.
	Signal  int
	Name    string
	Streams string
}
