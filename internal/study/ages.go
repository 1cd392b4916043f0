package study

import "tuckline/sim"

// allAges are the ages of the pieces of all replications together; nil where they were not followed.
func allAges(records []sim.Record) *sim.Ages {
	return addUp(records, func(r *sim.Record) *sim.Ages { return r.Ages })
}
