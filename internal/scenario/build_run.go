package scenario

import (
	"slices"

	"tuckline/sim"
)

// What applies where the file says nothing.
const (
	usualMeasure      = 8 * sim.Hour
	usualReplications = 40
	usualAtMost       = 400
	usualConfidence   = 0.95
	usualSeed         = 1
	usualMost         = 52 * weekLength
)

// run makes the run with its defaults.
func (b *resolver) run() {
	w := &b.words.Run
	run := Run{
		AutoWarmUp:   w.WarmUp.auto,
		Replications: usualReplications, Confidence: usualConfidence, Seed: usualSeed,
	}
	switch n := &w.Replications; {
	case n.HalfWidth.given():
		run.HalfWidth, run.AtMost = n.HalfWidth.value, usualAtMost
		if n.AtMost.given() {
			run.AtMost = int(n.AtMost.value)
		}
		run.Replications = run.AtMost
	case n.number.given():
		run.Replications = int(n.number.value)
	}
	if w.Confidence.given() {
		run.Confidence = w.Confidence.value
	}
	if w.Seed.given() {
		run.Seed = uint64(w.Seed.value)
	}
	b.window(&run)
	b.s.Run = run
	b.checkStart()
}

// window finds when the measured window begins and ends, in engine time.
func (b *resolver) window(run *Run) {
	w := &b.words.Run
	if c := b.s.Calendar; c != nil {
		run.Starts = c.Clock(0)
	}
	b.checkStarts(w)
	b.checkAuto(w)
	engine := &b.s.Line.Calendar
	warmUp, measure := w.WarmUp.scheduled(b.s.Calendar), usualMeasure
	run.WarmUp = engine.After(warmUp)
	switch {
	case w.Measure.given():
		b.checkNoMost(w, "measure says when a replication ends")
		measure = w.Measure.scheduled(b.s.Calendar)
	case b.ordersEnd():
		run.UntilOrders, run.Measure = true, usualMost
		if w.AtMost.given() {
			run.Measure = micros(w.AtMost.value)
		}
		run.Measure -= run.WarmUp
		if run.Measure <= 0 {
			b.complain(w.WarmUp.or(w.AtMost.at), "a replication ends %s after its start at most, so that nothing is measured behind a warm-up of %s", hoursText(run.Measure+run.WarmUp), hoursText(run.WarmUp))
		}
		return
	default:
		b.checkNoMost(w, "there are no orders that end; write measure: 8 h")
	}
	run.Measure = engine.After(warmUp+measure) - run.WarmUp
}

// ordersEnd says that there are orders, and not without end.
func (b *resolver) ordersEnd() bool {
	return len(b.s.Line.Orders.List) > 0 && !b.s.Line.Orders.Again
}

func (b *resolver) checkNoMost(w *runWords, why string) {
	if w.AtMost.given() {
		b.complain(w.AtMost.at, "at most is for a run that ends with its orders: %s", why)
	}
}

// checkStarts refuses a start without a calendar, and says what a start within a shift means.
func (b *resolver) checkStarts(w *runWords) {
	switch c := b.s.Calendar; {
	case !w.Starts.given() || !b.read(w.Starts.at):
	case w.Starts.week > 0:
		b.complain(w.Starts.at, "the week of the start is the first; write %s", w.Starts.words())
	case !b.words.Calendar.given():
		b.complain(w.Starts.at, "%q needs a calendar; without one there are no days", "starts")
	case c != nil:
		if s := b.shiftUnderWay(w.Starts.time); s != "" {
			b.warn("The run starts at %s, within the shift %s; what is left of it is no whole shift.", c.Clock(0), s)
		}
	}
}

// shiftUnderWay is the shift that has begun before a time of the week and is not over.
func (b *resolver) shiftUnderWay(t sim.Micros) string {
	for i := range b.s.Calendar.Shifts {
		s := &b.s.Calendar.Shifts[i]
		for _, day := range s.Days {
			one := stretch{begin: sim.Micros(day)*dayLength + s.From, lasts: (s.To - s.From + dayLength) % dayLength}
			if after, in := one.holds(t); in && after > 0 {
				return s.Name
			}
		}
	}
	return ""
}

// checkAuto wants a time where the start of the line is part of what is simulated.
func (b *resolver) checkAuto(w *runWords) {
	switch {
	case !w.WarmUp.auto:
	case b.words.Calendar.given():
		b.complain(w.WarmUp.at, "with a calendar the line starts and stops with its shifts, so that it never settles; write a time, such as 2 h")
	case b.ordersEnd():
		b.complain(w.WarmUp.at, "orders begin when the line starts; write a time, such as 0 h")
	}
}

// checkStart refuses levels of what is not a buffer.
func (b *resolver) checkStart() {
	var buffers []string
	for _, e := range b.words.Line.entries {
		if e.station == nil {
			buffers = append(buffers, e.name.value)
		}
	}
	for _, one := range b.words.Run.AtStart.Levels.list {
		if !slices.Contains(buffers, one.name) {
			b.noSuchName(one.place, one.name, "buffer or conveyor", append(buffers, "reels", "magazines"))
		}
	}
}
