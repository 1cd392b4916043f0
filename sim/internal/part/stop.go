package part

import (
	"math"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// stop is one cause with a clock that ages with cycles or with running. Due is
// where it strikes, counted from the start of the cycle: in millionths of a cycle
// or in microseconds of running. A calendar stop has its streams here and
// its clock with the engine; one that a part raises has no clock.
type stop struct {
	plan         *plan.Stop
	every, lasts draw.Stream
	due          int64
}

func (s *stop) reset(pl *plan.Stop, every, lasts draw.Stream) {
	s.plan, s.every, s.lasts = pl, every, lasts
	if s.ages() {
		s.due = s.age()
	}
}

// ages says that its clock is here and ages with work.
func (s *stop) ages() bool {
	return s.plan.Clock == plan.CycleClock || s.plan.Clock == plan.RunningClock
}

// age draws the next age.
func (s *stop) age() int64 { return draw.Micros(&s.plan.Every, &s.every) }

// quiet is the number of whole cycles, and the work, without a strike.
func (s *stop) quiet() (cycles int64, work plan.Micros) {
	switch s.plan.Clock {
	case plan.CycleClock:
		return s.due / plan.Cycle, plan.Never
	case plan.RunningClock:
		return math.MaxInt64, plan.Micros(s.due)
	default:
		return math.MaxInt64, plan.Never
	}
}

// strikes says where in a cycle of duration d it strikes; d or more if it does not.
func (s *stop) strikes(d plan.Micros) plan.Micros {
	switch s.plan.Clock {
	case plan.CycleClock:
		if s.due >= plan.Cycle {
			return d
		}
		return d * plan.Micros(s.due) / plan.Cycle
	case plan.RunningClock:
		return plan.Micros(s.due)
	default:
		return d
	}
}

// point is a place in a cycle: in millionths of it, and in work from its start.
type point struct {
	share int64
	work  plan.Micros
}

// from is a place counted on the clock of the stop.
func (s *stop) from(p point) int64 {
	if s.plan.Clock == plan.CycleClock {
		return p.share
	}
	return int64(p.work)
}

// renew starts its clock anew from a place in the cycle.
func (s *stop) renew(p point) {
	if s.ages() {
		s.due = s.from(p) + s.age()
	}
}

// lost says that the cycle under way has ended without counting: what it has aged stays.
func (s *stop) lost(p point) {
	if s.ages() {
		s.due -= s.from(p)
	}
}

// passed says that n cycles with so much work have ended.
func (s *stop) passed(n int64, work plan.Micros) {
	switch s.plan.Clock {
	case plan.CycleClock:
		s.due -= n * plan.Cycle
	case plan.RunningClock:
		s.due -= int64(work)
	}
}
