package plan

// Stock is a material that cycles use up.
type Stock struct {
	Name                   string
	Full, PerCycle, Refill int64
	Work                   Work
	PartUsed               bool
	Streams                string
	// Tasked: it is refilled, or spliced, by a task while the station runs, which is asked for when
	// at most Alarm is left. RefilledBy and PreparedBy are places in Plan.Tasks, or None.
	Tasked                 bool
	Alarm                  int64
	RefilledBy, PreparedBy int
	// Length is what a web store holds, 0 without one; Gains is what it gains in a cycle while it
	// fills again.
	Length, Gains int64
	// Scrap is the number of cycles that are scrap after a change, Fails the share of changes that
	// have to be done again.
	Scrap int64
	Fails float64
	// Material is its place among the materials of the member whose it is, which is Declared.
	Declared, Material int
}
