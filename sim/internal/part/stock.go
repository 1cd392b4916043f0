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
	left int64
}

func (s *stock) reset(pl *plan.Stock, work, start draw.Stream) {
	s.plan, s.work, s.left = pl, work, pl.Full
	if pl.PartUsed {
		s.left = 1 + int64(start.Uniform()*float64(pl.Full))
	}
}

// quiet is the number of cycles that do not use it up.
func (s *stock) quiet() int64 {
	if s.plan.PerCycle == 0 {
		return math.MaxInt64
	}
	return max(0, s.left/s.plan.PerCycle-1)
}

func (s *stock) passed(n int64) { s.left -= n * s.plan.PerCycle }

// use takes an amount beside what cycles use: for picks that failed.
func (s *stock) use(amount int64) { s.left -= amount }

// serves is the number of cycles for which there is enough.
func (s *stock) serves() int64 { return s.left / s.plan.PerCycle }

func (s *stock) usedUp() bool { return s.left < s.plan.PerCycle }

func (s *stock) change() { s.left += s.plan.Refill }
