package part

import (
	"math"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// runs says whether the rejects are in a run: a chain of two states that moves at the end of every
// cycle. Both lengths are geometric: what is left is drawn once, when a state is entered.
type runs struct {
	plan           *plan.Runs
	begins, length draw.Stream
	// until is the number of cycles that end outside without a run after them; left is what is left
	// of the run under way, 0 outside.
	until, left int64
}

func (r *runs) reset(p *plan.Runs, stream streams, name string) {
	*r = runs{plan: p, until: math.MaxInt64}
	if p.Enter > 0 {
		r.begins, r.length = stream(name, "run begins"), stream(name, "run length")
		r.until = draw.Gap(r.begins.Uniform(), p.Enter)
	}
}

// on says that a run is under way.
func (r *runs) on() bool { return r.left > 0 }

// quiet is the number of cycles until the state may change.
func (r *runs) quiet() int64 {
	if r.on() {
		return r.left
	}
	return r.until
}

// passed says that n cycles, not more than quiet, have ended.
func (r *runs) passed(n int64) {
	switch {
	case r.on():
		r.left -= n
	case r.plan.Enter > 0:
		r.until -= n
	}
}

// ended ends one cycle.
func (r *runs) ended() {
	if r.on() || r.until > 0 {
		r.passed(1)
		return
	}
	r.left = 1 + draw.Gap(r.length.Uniform(), 1/r.plan.Length)
	r.until = draw.Gap(r.begins.Uniform(), r.plan.Enter)
}
