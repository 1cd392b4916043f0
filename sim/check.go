package sim

// Check is an in-process test: from time to time it takes pieces off the line, which do not
// come back, while the station runs on. The next good pieces that the station gives are
// taken; then somebody tests them. A test that is over is a good one.
type Check struct {
	Name string
	// Every is the law of the time from one test to the next, in the unit of Clock, which
	// is CycleClock, PieceClock, RunningClock or CalendarClock. Pieces are taken of the cycle in which it
	// strikes, or of the next good ones. One that is due during a test begins when that is over.
	Every Law
	Clock Clock
	// Takes is the number of pieces, at least 1.
	Takes int64
	// Lasts is the law of the work, in microseconds; Crew does it.
	Lasts Law
	Crew  Work
}
