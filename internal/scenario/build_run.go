package scenario

import (
	"slices"

	"tuckline/sim"
)

// What applies where the file says nothing.
const (
	usualMeasure      = 8 * sim.Hour
	usualReplications = 40
	usualConfidence   = 0.95
	usualSeed         = 1
)

// run makes the run with its defaults.
func (b *resolver) run() {
	w := &b.words.Run
	run := Run{
		WarmUp: micros(w.WarmUp.value), Measure: usualMeasure,
		Replications: usualReplications, Confidence: usualConfidence, Seed: usualSeed,
	}
	if w.Measure.given() {
		run.Measure = micros(w.Measure.value)
	}
	if w.Replications.given() {
		run.Replications = int(w.Replications.value)
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
