package sim

import "tuckline/sim/internal/plan"

// Micros is a time or a duration in microseconds. Time counts from the start
// of a replication. A year is about 3.2e13, far below the limit of int64.
type Micros = plan.Micros

// Common durations.
const (
	Second Micros = 1_000_000
	Minute        = 60 * Second
	Hour          = 60 * Minute
)

// Micrometres is a length of web in micrometres.
type Micrometres = int64

// Capacities that are not a number of places.
const (
	// Unlimited is the capacity of a buffer without limit.
	Unlimited int64 = -1
	// Smallest lets Compile put the smallest number of places with which the line
	// cannot lock, as it does for a hand-over; before a station with EmptyPockets at least 2 × takes − 1.
	Smallest int64 = -2
)
