package plan

import "tuckline/sim/internal/draw"

// Clock is what ages a stop.
type Clock uint8

// The clocks.
const (
	CycleClock    Clock = iota // millionths of a cycle
	RunningClock               // microseconds of running
	CalendarClock              // microseconds, always
	SignalClock                // never by itself: a part of the station raises it
)

// MaterialClass is the class of stops for material.
const MaterialClass = 2

// Stop is one cause.
type Stop struct {
	Name  string
	Clock Clock
	Every draw.Law // in the unit of the clock
	Work  Work
	Class uint8
	// Scraps: the cycle under way is lost. Renews are the stops whose clocks start anew too.
	Scraps bool
	Renews []int
	// AtStart: a stop on SignalClock that a new station begins with.
	AtStart bool
	// Planned: the station is in a planned stop meanwhile, not down.
	Planned bool
	// Streams is the name by which its streams are found.
	Streams string
}

// Work is what ends a stop.
type Work struct {
	Lasts draw.Law // microseconds
	// Crew is None where nobody is needed.
	Crew, People, Priority int
}
