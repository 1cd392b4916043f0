package sim

// Clock says what ages a stop.
type Clock uint8

// The clocks of a stop.
const (
	// CycleClock: Every is in cycles of the station.
	CycleClock Clock = iota
	// PieceClock: Every is in pieces given, before rejects.
	PieceClock
	// RunningClock: Every is in microseconds of running.
	RunningClock
	// CalendarClock: Every is in microseconds; it runs always, except during the stop itself.
	CalendarClock
)

// Class is the class of a stop.
type Class uint8

// The classes of stops.
const (
	Minor Class = iota
	Breakdown
	MaterialChange
	Quality
	External
	// Planned is the class of heat-up, during which a station is in a planned stop, not
	// down. No stop as written has it.
	Planned
)

var classWords = [...]string{"minor", "breakdown", "material", "quality", "external", "planned"}

// String is the word of the scenario format.
func (c Class) String() string { return classWords[c] }

// Stop is one cause for which a station stops.
type Stop struct {
	Name string
	// Every is the law of the age at which it strikes, in the unit of Clock.
	Every Law
	Clock Clock
	// Lasts is the law of the work, in microseconds.
	Lasts Law
	Class Class
	// Crew does the work; empty means that it needs nobody.
	Crew Work
	// RateFactor multiplies how often the stop comes; 0 means 1.
	RateFactor float64
	// Scraps: the cycle that it strikes is lost, and its input is scrap.
	Scraps bool
	// Renews names other stops of the station whose clocks it starts anew.
	Renews []string
}

// Work says who is asked.
type Work struct {
	// Crew is the name of the crew; empty means nobody.
	Crew string
	// People is how many of them, at least 1.
	People int
	// Priority: smaller goes first.
	Priority int
}
