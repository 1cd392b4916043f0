package scenario

// ProductionLine is one of several lines, or the only one.
type ProductionLine struct {
	// Name is empty where the file has line: in place of lines:. With a name, those of all that stands in the line
	// begin with it: "line 1.cartoner".
	Name string
	// Stations and Buffers are indexes in Scenario.Line, rising.
	Stations, Buffers []int
}
