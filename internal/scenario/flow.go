package scenario

import (
	"slices"
	"strings"

	"tuckline/sim"
)

// flow is who feeds whom.
type flow struct {
	// entries are those that stay: buffers of no places are gone.
	entries []*entryWords
	byName  map[string]*entryWords
	// feeders are the names that feed an entry; none means supply. takers are the other way round.
	feeders, takers map[string][]string
	// lapsed are buffers of no places: their levels do not count. Of those that are gone
	// fedBy has what takes the place of its name for who takes from it, takenBy for who feeds it.
	lapsed         map[string]bool
	fedBy, takenBy map[string]string
	// unclear says that a name after from or takes was wrong.
	unclear bool
}

// findFlow follows the list and every from:.
func (b *resolver) findFlow() {
	all := b.words.Line.entries
	b.flow = flow{
		entries: all, byName: map[string]*entryWords{},
		feeders: map[string][]string{}, takers: map[string][]string{}, lapsed: map[string]bool{},
		fedBy: map[string]string{}, takenBy: map[string]string{},
	}
	for _, e := range all {
		b.flow.byName[e.name.value] = e
	}
	for i, e := range all {
		b.flow.feeders[e.name.value] = b.feedersOf(e, i)
	}
	b.findTakers()
	b.checkSends()
	b.dropEmpty()
	b.checkFlow()
}

func (e *entryWords) from() *fromWords {
	switch {
	case e.station != nil:
		return &e.station.From
	case e.conveyor != nil:
		return &e.conveyor.From
	}
	return &e.buffer.From
}

// feedersOf names what feeds an entry: what from: says, or the entry above.
func (b *resolver) feedersOf(e *entryWords, i int) []string {
	from := e.from()
	if e.station != nil && len(e.station.Takes.inputs) > 0 {
		return b.assembled(e)
	}
	senders := b.senders(e)
	switch {
	case from.supply && e.station == nil:
		b.complain(from.at, "only a station can have supply; %q is fed by the stations that stand before it", e.name.value)
		return nil
	case from.supply:
		return nil
	case from.given():
		return b.named(e, from)
	case len(senders) > 0:
		return senders
	case b.above(i) != nil:
		return []string{b.above(i).name.value}
	case e.station == nil:
		b.complain(e.name.at, "nothing feeds %q; the first entry of a line is a station", e.name.value)
	}
	return nil
}

func (b *resolver) findTakers() {
	clear(b.flow.takers)
	for _, e := range b.flow.entries {
		for _, feeder := range b.flow.feeders[e.name.value] {
			b.flow.takers[feeder] = append(b.flow.takers[feeder], e.name.value)
		}
	}
}

// dropEmpty takes buffers of no places out of the line, as if they were not
// written. One that merges or serves several stays as a place of its own.
func (b *resolver) dropEmpty() {
	for _, e := range slices.Clone(b.flow.entries) {
		if e.buffer == nil || !e.buffer.Holds.given() || e.buffer.Holds.value != 0 || !b.read(e.buffer.Holds.at) {
			continue
		}
		name := e.name.value
		b.flow.lapsed[name] = true
		b.warn("%s holds 0 places and counts as not written: its levels, and the speed steps that read it, lapse.", name)
		feeders := b.flow.feeders[name]
		if len(feeders) != 1 || len(b.flow.takers[name]) > 1 && b.flow.byName[feeders[0]].station != nil {
			continue
		}
		for _, taker := range b.flow.takers[name] {
			list := b.flow.feeders[taker]
			list[slices.Index(list, name)] = feeders[0]
			b.flow.takenBy[name] = taker
		}
		b.flow.fedBy[name] = feeders[0]
		b.flow.entries = slices.DeleteFunc(slices.Clone(b.flow.entries), func(other *entryWords) bool { return other == e })
		b.findTakers()
	}
}

// instead is what stands for a name that may be gone.
func instead(name string, gone map[string]string) string {
	for range gone {
		if next, is := gone[name]; is {
			name = next
		}
	}
	return name
}

// read says that nothing was wrong with a value.
func (b *resolver) read(where at) bool {
	return !slices.ContainsFunc(b.complaints, func(c Complaint) bool { return c.Path == where.path })
}

// checkFlow complains about entries with several outputs, about buffers that
// nobody empties and about entries that no supply reaches.
func (b *resolver) checkFlow() {
	for _, e := range b.flow.entries {
		name := e.name.value
		takers := b.flow.takers[name]
		if len(takers) == 0 && e.station == nil && !b.wrongFrom() {
			b.complain(e.name.at, "nobody takes from %q, so that it fills up and stops the line; leave it out: what the last station gives leaves the line", name)
		}
		if e.station != nil && len(e.station.Sends.To.list) > 0 {
			continue // checked with what it sends to
		}
		if len(takers) > 1 && (e.station != nil || slices.ContainsFunc(takers, func(t string) bool { return b.flow.byName[t].station == nil })) {
			second := b.flow.byName[takers[1]]
			b.complain(at{second.name.node, second.name.path}, "%q already feeds %q; what it gives can go to one place only: put a buffer between, from which stations take%s", name, takers[0], orSends(e))
		}
	}
	b.checkReached()
}

// wrongFrom says that some from: was wrong already: whoever seems to feed
// nobody may be what was meant there.
func (b *resolver) wrongFrom() bool {
	return b.flow.unclear || slices.ContainsFunc(b.complaints, func(c Complaint) bool { return strings.HasSuffix(c.Path, ".from") })
}

// checkReached finds entries that feed each other in a ring without supply.
func (b *resolver) checkReached() {
	reached := map[string]bool{}
	for again := true; again; {
		again = false
		for _, e := range b.flow.entries {
			name, feeders := e.name.value, b.flow.feeders[e.name.value]
			if !reached[name] && (len(feeders) == 0 || slices.ContainsFunc(feeders, func(f string) bool { return reached[f] })) {
				reached[name], again = true, true
			}
		}
	}
	for _, e := range b.flow.entries {
		if !reached[e.name.value] {
			b.complain(e.name.at, "nothing feeds %q: its pieces would come from itself; name what feeds it with from:", e.name.value)
		}
	}
}

// before is the buffer or conveyor that a station takes from, the first of several, or nil.
func (b *resolver) before(station string) *sim.Buffer {
	for i := range b.s.Line.Buffers {
		if b.s.Line.Buffers[i].Name == b.feeder(station) {
			return &b.s.Line.Buffers[i]
		}
	}
	return nil
}
