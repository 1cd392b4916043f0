package scenario

import (
	"slices"

	"tuckline/internal/quantity"
	"tuckline/sim"
)

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
	after := b.lastStations()
	if len(w.CountedAfter.list) > 0 {
		after = b.countedAfter(w)
	}
	if len(after) == 0 {
		return
	}
	slices.Sort(after)
	a.CountedAfter = after
	a.Unit = b.s.Stations[after[0]].GivesUnit
	b.checkAnswerUnit(w, after)
}

// countedAfter finds the stations that are named, each once and side by side.
func (b *resolver) countedAfter(w *answerWords) []int {
	var after []int
	for _, one := range w.CountedAfter.list {
		i := slices.IndexFunc(b.s.Line.Stations, func(s sim.Station) bool { return s.Name == one.value })
		switch {
		case i < 0:
			b.noSuchName(one.at, one.value, "station", b.stationNames(""))
		case slices.Contains(after, i):
			b.complain(one.at, "%q is named twice; its pieces are counted once", one.value)
		default:
			b.checkBeside(one, after)
			after = append(after, i)
		}
	}
	return after
}

// checkBeside refuses a station through which pieces go on to one that is named
// before it, or the other way round.
func (b *resolver) checkBeside(one text, after []int) {
	for _, i := range after {
		first, second := b.s.Line.Stations[i].Name, one.value
		if b.upstream(first)[second] {
			first, second = second, first
		} else if !b.upstream(second)[first] {
			continue
		}
		b.complain(one.at, "what %q gives goes on to %q: such pieces would be counted twice; name one of them, or stations in branches side by side", first, second)
	}
}

// upstream has every entry from which pieces reach another.
func (b *resolver) upstream(name string) map[string]bool {
	reached := map[string]bool{}
	for queue := []string{name}; len(queue) > 0; queue = queue[1:] {
		for _, feeder := range b.flow.feeders[queue[0]] {
			if !reached[feeder] {
				reached[feeder] = true
				queue = append(queue, feeder)
			}
		}
	}
	return reached
}

// checkAnswerUnit wants every station that is counted to give the pieces of the answer.
func (b *resolver) checkAnswerUnit(w *answerWords, after []int) {
	want := b.s.Answer.Unit
	if w.In.value != "" {
		want = w.In.value
	}
	for _, i := range after {
		name, gives := b.s.Line.Stations[i].Name, b.s.Stations[i].GivesUnit
		if quantity.SameUnit(want, gives) {
			continue
		}
		where := w.In.or(w.CountedAfter.at)
		if len(after) > 1 && w.CountedAfter.given() {
			named := slices.IndexFunc(w.CountedAfter.list, func(one text) bool { return one.value == name })
			where = w.CountedAfter.list[named].at
		}
		b.complain(where, "%s are to be counted, but %q gives %s", quantity.Plural(want), name, gives)
	}
}
