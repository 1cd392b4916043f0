package part

import (
	"math"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// checkPhase is where an in-process test stands.
type checkPhase uint8

const (
	checkWaits checkPhase = iota // for its clock
	checkTakes                   // the next good pieces
	checkTests                   // what it has taken
)

// check takes pieces for an in-process test. Due is where its clock strikes, counted like that of
// a stop from the start of the cycle; one of the calendar has its clock with the engine. A test that is
// due while another is under way begins when that is over.
type check struct {
	plan  *plan.Check
	every draw.Stream
	due   int64
	phase checkPhase
	// missing is what it has still to take, last what it took of the last careful cycle.
	missing, last int64
	// waiting says that the calendar has struck while a test was under way.
	waiting bool
}

func (c *check) reset(pl *plan.Check, stream streams) {
	*c = check{plan: pl, every: stream(pl.Streams, "check every", pl.Name)}
	if pl.Clock != plan.CalendarClock {
		c.due = c.age()
	}
}

// age draws the next age.
func (c *check) age() int64 { return draw.Micros(&c.plan.Every, &c.every) }

// quiet is the number of cycles, and the work, of which it takes nothing.
func (c *check) quiet() (cycles int64, work plan.Micros) {
	switch {
	case c.phase == checkTakes:
		return 0, plan.Never
	case c.phase == checkTests || c.plan.Clock == plan.CalendarClock:
		return math.MaxInt64, plan.Never
	case c.plan.Clock == plan.CycleClock:
		return max(0, c.due) / plan.Cycle, plan.Never
	}
	return math.MaxInt64, plan.Micros(c.due)
}

// passed says that n cycles with so much work have ended: if its clock has struck before their
// end, it takes the next good pieces, those of the last cycle included.
func (c *check) passed(n int64, work plan.Micros) {
	aged := int64(work)
	switch c.plan.Clock {
	case plan.CycleClock:
		aged = n * plan.Cycle
	case plan.CalendarClock:
		return
	}
	c.due -= aged
	if c.phase == checkWaits && c.due < 0 {
		c.due = max(c.due, -aged) + c.age() // one that was due before begins with this cycle
		c.begin()
	}
}

func (c *check) begin() { c.phase, c.missing, c.waiting = checkTakes, c.plan.Takes, false }

// lost says that the cycle under way has ended without counting at a point: what it has aged stays.
func (c *check) lost(p point) {
	switch c.plan.Clock {
	case plan.CycleClock:
		c.due -= p.share
	case plan.RunningClock:
		c.due -= int64(p.work)
	}
}

// of takes what it needs of the good pieces of a cycle.
func (c *check) of(good int64) (left int64) {
	c.last = 0
	if c.phase != checkTakes {
		return good
	}
	c.last = min(c.missing, good)
	c.missing -= c.last
	if c.missing == 0 {
		c.phase = checkTests
	}
	return good - c.last
}

// Sample lets the checks take of the good pieces of the cycle that has ended; it says
// what is left.
func (m *Machine) Sample(good int64) int64 {
	for i := range m.checks {
		good = m.checks[i].of(good)
	}
	m.ask()
	return good
}

// Sampled is what the i-th check has taken of the cycle that has ended, and whether it has all that
// it needs now.
func (m *Machine) Sampled(i int) (pieces int64, complete bool) {
	c := &m.checks[i]
	return c.last, c.last > 0 && c.phase == checkTests
}

// CheckDue says that the calendar of a check has struck. It returns whether it begins now, or else
// when the test under way is over. Working says that a cycle is under way.
func (m *Machine) CheckDue(i int, working bool) bool {
	c := &m.checks[i]
	if c.phase != checkWaits {
		c.waiting = true
		return false
	}
	m.pause(working)
	c.begin()
	m.goOn()
	return true
}

// CheckAge draws the time to the next strike of a check of the calendar.
func (m *Machine) CheckAge(i int) plan.Micros { return plan.Micros(m.checks[i].age()) }

// Tested says that a test is over. It returns whether the next has been due meanwhile by the calendar.
func (m *Machine) Tested(i int, working bool) (next bool) {
	m.pause(working)
	m.checks[i].phase = checkWaits
	m.goOn()
	return m.checks[i].waiting
}

// pause settles what has passed before something changes between two events: a cycle under way
// goes on step by step.
func (m *Machine) pause(working bool) {
	if working {
		m.makeCareful()
		return
	}
	m.settle()
}

// goOn asks the parts anew after that; amid a cycle its end does.
func (m *Machine) goOn() {
	if !m.careful {
		m.ask()
	}
}
