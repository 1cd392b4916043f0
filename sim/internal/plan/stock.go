package plan

// Stock is a material that cycles use up.
type Stock struct {
	Name                   string
	Full, PerCycle, Refill int64
	Work                   Work
	PartUsed               bool
	Streams                string
}
