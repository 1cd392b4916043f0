package part

import (
	"math"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// stock is a reel, a magazine or a hopper. It is used up when the rest is too
// short for one more cycle; the rest stays: it is spliced on, or lies in the magazine.
type stock struct {
	plan *plan.Stock
	work draw.Stream
	// left is what is on the reel or in the magazine, store what is in the web store.
	left, store int64
	// asked says that somebody has been asked to refill or splice it while the station runs.
	asked bool
	// used is what has been used, wasted the part of scrapped cycles and failed picks.
	used, wasted int64
	// failedPicks counts tries that failed.
	failedPicks int64
	// fails draws how many changes succeed before the next that does not; failed is how often
	// the last one had to be done again.
	fails  gaps
	failed int64
}

func (s *stock) reset(pl *plan.Stock, stream streams) {
	*s = stock{plan: pl, work: stream(pl.Streams, "change", pl.Name), left: pl.Full, store: pl.Length}
	s.fails = mayGap(pl.Fails, stream, pl.Streams, "splice fails", pl.Name)
	if pl.PartUsed {
		start := stream(pl.Streams, "part used", pl.Name)
		s.left = 1 + int64(start.Uniform()*float64(pl.Full))
	}
}

// quiet is the number of cycles that neither use it up nor bring it to its alarm.
func (s *stock) quiet() int64 {
	per := s.plan.PerCycle
	switch {
	case per == 0:
		return math.MaxInt64
	case s.plan.Length > 0:
		return s.quietWeb()
	case s.plan.Tasked && !s.asked:
		return max(0, (s.left-s.plan.Alarm-1)/per)
	}
	return max(0, s.left/per-1)
}

// passed says that n cycles, not more than quiet or one, have ended.
func (s *stock) passed(n int64) {
	amount := n * s.plan.PerCycle
	s.used += amount
	if s.plan.Length > 0 {
		s.drawWeb(n, amount)
		return
	}
	s.left -= amount
}

// use takes an amount beside what cycles use: for picks that failed.
func (s *stock) use(amount int64) {
	s.left -= amount
	s.used += amount
	s.wasted += amount
}

// serves is the number of cycles for which there is enough.
func (s *stock) serves() int64 {
	if s.plan.Length > 0 && s.asked {
		return s.store / s.plan.PerCycle
	}
	return s.left / s.plan.PerCycle
}

func (s *stock) usedUp() bool { return s.serves() < 1 }

// alarms says that somebody has to be asked for it now.
func (s *stock) alarms() bool { return s.plan.Tasked && !s.asked && s.left <= s.plan.Alarm }

func (s *stock) change() {
	s.left += s.plan.Refill
	s.asked = false
}

// lasts draws how long a change lasts: one that fails at its end is done again.
func (s *stock) lasts() plan.Micros {
	total := s.once()
	s.failed = 0
	for s.fails.of(1) > 0 {
		s.failed++
		total += s.once()
	}
	return total
}

func (s *stock) once() plan.Micros {
	return plan.Micros(draw.Micros(&s.plan.Work.Lasts, &s.work))
}
