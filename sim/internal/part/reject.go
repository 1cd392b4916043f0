package part

import "tuckline/sim/internal/plan"

// Rejects is what a member has rejected of one cycle.
type Rejects struct {
	// All of them, and those among them that lost their place at a stop, whose code could not be read, and
	// that lack a blank or a leaflet. InRuns are those that the camera found in a run.
	All, LostPacks, NoReads, MisPicked, InRuns int64
}

// reject is all that one member rejects: packs that a stop has lost, what the camera
// finds, codes that cannot be read. Scrapped cycles draw nothing, but for a camera that looks at web which
// leaves later.
type reject struct {
	plan *plan.Reject
	// lost is the number of packs that have lost their place and are still to come.
	lost int64
	// outside and inside are the gaps outside a run of rejects and in one; each stays while the other is used.
	outside, inside gaps
	runs            runs
	// row is the number of cycles in a row with a reject found.
	row      int64
	register register
	reads    gaps
	// missed says that the cycle under way lacks a blank or a leaflet.
	missed bool
	// last is what was rejected of the last careful cycle.
	last Rejects
}

func (r *reject) reset(p *plan.Reject, stream streams) {
	r.plan, r.lost, r.row, r.missed, r.last = p, 0, 0, false, Rejects{}
	r.outside = mayGap(p.Share, stream, p.Streams, "rejects")
	r.inside = noGaps()
	if p.Runs.Enter > 0 {
		r.inside = mayGap(p.Runs.Share, stream, p.Streams, "rejects in a run")
	}
	r.runs.reset(&p.Runs, stream, p.Streams)
	r.register.reset(p.After)
	r.reads = mayGap(p.NoReads, stream, p.Streams, "no-reads")
}

// camera is the gaps of the state that holds now.
func (r *reject) camera() *gaps {
	if r.runs.on() {
		return &r.inside
	}
	return &r.outside
}

// quiet is the number of cycles in which nothing is found or leaves.
func (r *reject) quiet() int64 {
	if r.lost > 0 {
		return 0
	}
	pieces := min(r.camera().free, r.reads.free)
	return min(pieces/r.plan.Gives, r.runs.quiet(), r.register.quiet())
}

// passed says that n such cycles have ended.
func (r *reject) passed(n int64) {
	if n == 0 {
		return
	}
	r.row = 0
	r.camera().passed(n * r.plan.Gives)
	r.reads.passed(n * r.plan.Gives)
	r.runs.passed(n)
	r.register.passed(n)
}

// of rejects some of the next pieces and says how many are left.
func (r *reject) of(pieces int64) (good int64) {
	r.last = Rejects{}
	good = pieces
	if r.missed {
		r.last.MisPicked, good = good, 0
	}
	r.last.LostPacks = min(r.lost, good)
	r.lost -= r.last.LostPacks
	good -= r.last.LostPacks
	good -= r.leave(good)
	r.last.NoReads = r.reads.of(good)
	good -= r.last.NoReads
	r.last.All = pieces - good
	return good
}

// leave lets the camera look at one cycle and says how many of so many pieces at the exit leave here. Where
// rejects leave later it looks at all pieces of other web, whatever is lost at the exit.
func (r *reject) leave(pieces int64) (leave int64) {
	seen := pieces
	if r.plan.After > 0 {
		seen = r.plan.Gives
	}
	leave, inRun := r.look(seen)
	leave = min(leave, pieces)
	if inRun {
		r.last.InRuns = leave
	}
	return leave
}

// look lets the camera look at pieces; it says how many come to the exit, and whether they were found in a run.
func (r *reject) look(pieces int64) (leave int64, left bool) {
	found, inRun := r.camera().of(pieces), r.runs.on()
	switch {
	case found > 0:
		r.row++
	case pieces > 0:
		r.row = 0
	}
	r.runs.ended()
	return r.register.shift(found, inRun)
}

// scrapped says that a scrapped cycle has ended: what leaves with it is part of the scrap. Where rejects
// leave later, what the camera looks at meanwhile is not.
func (r *reject) scrapped() {
	if r.plan.After > 0 {
		r.look(r.plan.Gives)
		return
	}
	r.runs.ended()
}

// full says that the row has reached the number that stops the station; it then starts anew.
func (r *reject) full() bool {
	if r.plan.InARow == 0 || r.row < r.plan.InARow {
		return false
	}
	r.row = 0
	return true
}

// cycles is how many cycles it takes until all packs on their way have left.
func (r *reject) cycles() plan.Micros {
	return plan.Micros((r.plan.LostPerStop + r.plan.Gives - 1) / r.plan.Gives)
}

// stopped says that a stop takes the place from all packs on their way.
func (r *reject) stopped() { r.lost = r.plan.LostPerStop }
