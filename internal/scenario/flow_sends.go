package scenario

import (
	"slices"
	"strings"
)

// senders are the stations whose sends: names an entry.
func (b *resolver) senders(e *entryWords) []string {
	var names []string
	for _, other := range b.words.Line.entries {
		if other.station != nil && other != e && other.station.sendsTo(e.name.value) {
			names = append(names, other.name.value)
		}
	}
	return names
}

func (s *stationWords) sendsTo(name string) bool {
	return slices.ContainsFunc(s.Sends.To.list, func(one text) bool { return one.value == name })
}

// orSends is what a station could write to feed several.
func orSends(e *entryWords) string {
	if e.station == nil {
		return ""
	}
	return ", or sends: {to: [A, B], rule: in turn} at " + e.name.value
}

// checkSends holds the places that stations choose among against what takes from them.
func (b *resolver) checkSends() {
	for _, e := range b.words.Line.entries {
		if e.station != nil && e.station.Sends.given() {
			b.checkSendsOf(e)
		}
	}
	b.noteEnds()
}

func (b *resolver) checkSendsOf(e *entryWords) {
	name, to := e.name.value, e.station.Sends.To.list
	if len(to) == 1 {
		b.complain(to[0].at, "one place needs no choice; name several, or leave sends out")
	}
	for i, one := range to {
		other, found := b.flow.byName[one.value]
		switch {
		case !found:
			b.flow.unclear = true
			b.noSuchName(one.at, one.value, "entry of the line", b.otherNames(name))
		case slices.ContainsFunc(to[:i], func(before text) bool { return before.value == one.value }):
			b.complain(one.at, "%q is named twice", one.value)
		case !slices.Contains(b.flow.takers[name], one.value):
			b.complain(one.at, "%q does not take from %q, but from %s; name %s there, or leave its from out", one.value, name,
				orSupply(b.flow.feeders[one.value]), name)
		case other.station != nil && len(b.flow.feeders[one.value]) > 1 && len(other.station.Takes.inputs) == 0:
			b.complain(one.at, "%q is a station and takes from one place; put a buffer before it, to which several send", one.value)
		}
	}
	for _, taker := range b.flow.takers[name] {
		if !b.flow.unclear && len(to) > 0 && !e.station.sendsTo(taker) {
			b.complain(e.station.Sends.To.at, "%q takes from %q too; name it here", taker, name)
		}
	}
}

func orSupply(feeders []string) string {
	if len(feeders) == 0 {
		return "supply"
	}
	return strings.Join(feeders, ", ")
}

// noteEnds says of a station whether what it gives leaves the line although an entry stands
// below it, because that entry is fed by a sends: elsewhere.
func (b *resolver) noteEnds() {
	all := b.words.Line.entries
	for i, e := range all {
		above, senders := b.above(i), b.senders(e)
		if above == nil || above.station == nil || len(senders) == 0 || e.from().given() || slices.Contains(senders, above.name.value) ||
			len(b.flow.takers[above.name.value]) > 0 || b.isCounted(above.name.value) {
			continue
		}
		b.warn("What %s gives leaves the line: %s below it is fed by %s, which sends to it.", above.name.value, e.name.value, strings.Join(senders, " and "))
	}
}

func (b *resolver) isCounted(station string) bool {
	return slices.ContainsFunc(b.words.Answer.CountedAfter.list, func(one text) bool { return one.value == station })
}

// sendsOf are the places among which a station chooses, without those that hold nothing.
func (b *resolver) sendsOf(w *stationWords) []string {
	var to []string
	for _, one := range w.Sends.To.list {
		to = append(to, instead(one.value, b.flow.takenBy))
	}
	return to
}
