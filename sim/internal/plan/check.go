package plan

import "tuckline/sim/internal/draw"

// Check is an in-process test that takes good pieces.
type Check struct {
	Name  string
	Clock Clock
	Every draw.Law // in the unit of the clock
	Takes int64
	// Task is its place in Plan.Tasks.
	Task    int
	Streams string
	// Member is whose it is in Members, Index its place among the checks there.
	Member, Index int
}
