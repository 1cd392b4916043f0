package part

import (
	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// reject rejects a share of the pieces given: it draws how many are accepted
// before the next rejected one.
type reject struct {
	plan   *plan.Reject
	stream draw.Stream
	gap    int64
	// last is what was rejected of the last careful cycle.
	last int64
}

func (r *reject) reset(pl *plan.Reject, s draw.Stream) {
	*r = reject{plan: pl, stream: s}
	r.gap = r.next()
}

func (r *reject) next() int64 { return draw.Gap(r.stream.Uniform(), r.plan.Share) }

// quiet is the number of cycles without a reject.
func (r *reject) quiet() int64 { return r.gap / r.plan.Gives }

// passed says that n cycles without a reject have ended.
func (r *reject) passed(n int64) { r.gap -= n * r.plan.Gives }

// of rejects some of the next pieces and says how many are left.
func (r *reject) of(pieces int64) (good int64) {
	r.last = 0
	good = pieces
	for r.gap < pieces {
		r.last++
		pieces -= r.gap + 1
		r.gap = r.next()
	}
	r.gap -= pieces
	return good - r.last
}
