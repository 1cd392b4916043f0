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
}

// Step is a speed that a level switches on and off.
type Step struct {
	From, BackAt int64
	Cycle        Micros
}

// Scrap scraps the next Cycles cycles, or all that start or go on within Lasts of
// running, after a pause longer than LongerThan.
type Scrap struct {
	LongerThan Micros
	Cycles     int64
	Lasts      Micros
}

// Reject rejects a share of the pieces that a member gives.
type Reject struct {
	Share   float64
	Gives   int64
	Streams string
	// Member is its place in Members.
	Member int
}
