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
)

// run makes the run with its defaults.
func (b *resolver) run() {
	w := &b.words.Run
	run := Run{
		WarmUp: micros(w.WarmUp.value), AutoWarmUp: w.WarmUp.auto, Measure: usualMeasure,
		Replications: usualReplications, Confidence: usualConfidence, Seed: usualSeed,
	}
	if w.Measure.given() {
		run.Measure = micros(w.Measure.value)
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
	b.s.Run = run
	b.checkStart()
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
