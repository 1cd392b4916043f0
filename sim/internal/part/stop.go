package part

import (
	"math"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// stop is one cause with a clock that ages with cycles or with running. Due is
// where it strikes, counted from the start of the cycle: in millionths of a cycle
// or in microseconds of running. A calendar stop has its streams here and
// its clock with the engine.
type stop struct {
	plan         *plan.Stop
	every, lasts draw.Stream
	due          int64
}

func (s *stop) reset(pl *plan.Stop, every, lasts draw.Stream) {
	s.plan, s.every, s.lasts = pl, every, lasts
	if pl.Clock != plan.CalendarClock {
		s.due = s.age()
	}
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

// renew starts its clock anew from where it struck.
func (s *stop) renew() { s.due += s.age() }

// passed says that n cycles with so much work have ended.
func (s *stop) passed(n int64, work plan.Micros) {
	switch s.plan.Clock {
	case plan.CycleClock:
		s.due -= n * plan.Cycle
	case plan.RunningClock:
		s.due -= int64(work)
	}
}
