package sim

// Line describes a line: what stands in it and how pieces move through it. It
// is plain data in engine units (microseconds, pieces, micrometres); reading
// units and percentages is the business of whoever fills it in.
type Line struct {
	Stations []Station
	Buffers  []Buffer // buffers and conveyors
	Crews    []Crew
	Calendar Calendar
	Orders   Orders
}
