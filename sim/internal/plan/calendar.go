package plan

// Span is a stretch of the calendar in which nothing changes.
type Span struct {
	Name  string
	Lasts Micros
	Line  LineTime
	Crews CrewTime
	Shift int
}

// LineTime is what stations may do.
type LineTime uint8

// The line times.
const (
	LineWorks LineTime = iota
	LineStands
	LineOff
)

// CrewTime is where people are.
type CrewTime uint8

// The crew times.
const (
	CrewsWork CrewTime = iota
	CrewsRest
	CrewsAway
)
