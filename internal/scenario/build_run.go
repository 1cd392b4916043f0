package scenario

import (
	"slices"

	"tuckline/internal/quantity"
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

// answer finds what is counted where.
func (b *resolver) answer() {
	w := &b.words.Answer
	a := &b.s.Answer
	a.Per = "hour"
	if w.Per.value != "" {
		a.Per = w.Per.value
	}
	stations := b.s.Line.Stations
	if len(stations) == 0 {
		b.complain(b.words.Line.at, "the line has no station")
		return
	}
	after := []int{len(stations) - 1}
	if len(w.CountedAfter.list) > 0 {
		after = b.countedAfter(w)
	}
	if len(after) == 0 {
		return
	}
	if len(after) > 1 {
		b.complain(w.CountedAfter.at, "counting after several stations at once is a part of the format that this version does not know yet; name one of them")
	}
	a.CountedAfter = after[0]
	a.Unit = b.s.Stations[after[0]].GivesUnit
	b.checkAnswerUnit(w, after)
}

func (b *resolver) countedAfter(w *answerWords) []int {
	var after []int
	for _, one := range w.CountedAfter.list {
		i := slices.IndexFunc(b.s.Line.Stations, func(s sim.Station) bool { return s.Name == one.value })
		if i < 0 {
			b.noSuchName(one.at, one.value, "station", b.stationNames(""))
		} else {
			after = append(after, i)
		}
	}
	return after
}

func (b *resolver) checkAnswerUnit(w *answerWords, after []int) {
	want := b.s.Answer.Unit
	if w.In.value != "" {
		want = w.In.value
	}
	for _, i := range after {
		if gives := b.s.Stations[i].GivesUnit; !quantity.SameUnit(want, gives) {
			b.complain(w.In.or(w.CountedAfter.at), "%s are to be counted, but %q gives %s", quantity.Plural(want), b.s.Line.Stations[i].Name, gives)
			return
		}
	}
}
