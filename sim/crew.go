package sim

// Crew is a number of people who do the work of stops, changes, tasks and changeovers.
type Crew struct {
	Name   string
	People int
	// ByShift is how many there are on each shift of the calendar, by Span.Shift; nil means People on all. None may
	// be on a shift.
	ByShift []int
	// InBreaks is how many are there during breaks of the others; Relief says that these are all: they come
	// for breaks only.
	InBreaks int
	Relief   bool
	// ElsewhereShare is the share of each person's time that other work outside
	// the line asks for, 0 to below 1, in spells of mean length ElsewhereSpell. It counts in working time only.
	ElsewhereShare float64
	ElsewhereSpell Micros
	// Walk is the law of the way to the work, Response that of the time until somebody who was free when he was called
	// sets out; zero laws are none. Both are drawn anew for every work, from streams of the stop or task, and
	// bind the person; the stop is waiting meanwhile.
	Walk, Response Law
	// CanAlso names crews whose work its people can do too. A request is served by people of its own
	// crew first, then by those of others that can do it, by name.
	CanAlso []string
}
