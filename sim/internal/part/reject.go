package part

import (
	"math"

	"tuckline/sim/internal/draw"
)

// reject rejects a share of the pieces given: it draws how many are accepted
// before the next rejected one.
type reject struct {
	share  float64
	stream draw.Stream
	gap    int64
}

func (r *reject) reset(share float64, s draw.Stream) {
	r.share, r.stream, r.gap = share, s, math.MaxInt64
	if share > 0 {
		r.gap = r.next()
	}
}

func (r *reject) next() int64 { return draw.Gap(r.stream.Uniform(), r.share) }

// quiet is the number of cycles of so many pieces without a reject.
func (r *reject) quiet(gives int64) int64 { return r.gap / gives }

func (r *reject) passed(pieces int64) {
	if r.share > 0 {
		r.gap -= pieces
	}
}

// of says how many of the next pieces are rejected.
func (r *reject) of(pieces int64) (rejected int64) {
	if r.share <= 0 {
		return 0
	}
	for r.gap < pieces {
		rejected++
		pieces -= r.gap + 1
		r.gap = r.next()
	}
	r.gap -= pieces
	return rejected
}
