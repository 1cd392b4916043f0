package sim

// Line describes a line: what stands in it and how pieces move through it. It
// is plain data in engine units (microseconds, pieces, micrometres); reading
// units and percentages is the business of whoever fills it in.
type Line struct {
	Stations []Station
	Buffers  []Buffer // buffers and conveyors
	Crews    []Crew
}

// Crew is a number of people who do the work of stops.
type Crew struct {
	Name   string
	People int
	// ElsewhereShare is the share of each person's time that other work outside
	// the line asks for, 0 to below 1, in spells of mean length ElsewhereSpell.
	ElsewhereShare float64
	ElsewhereSpell Micros
}
