package scenario

import (
	"slices"
	"strconv"

	"tuckline/internal/quantity"
)

// units are the names of pieces. Everything that touches the same pieces is a
// group: what a station gives, the buffer behind it, what the next one takes.
type units struct {
	parent map[string]string
	// written are the counts of a group, in the order of the file.
	written map[string][]writtenCount
	order   []string
}

type writtenCount struct {
	where at
	unit  string
	what  string
}

// noUnit is the name of pieces that nobody named.
const noUnit = "pieces"

func inPort(station string) string { return station + "\x00in" }

// inPortOf is the port of the k-th place that a station takes from.
func inPortOf(station string, k int) string {
	if k == 0 {
		return inPort(station)
	}
	return inPort(station) + strconv.Itoa(k)
}

func outPort(station string) string { return station + "\x00out" }

func (u *units) root(port string) string {
	for {
		next, found := u.parent[port]
		if !found {
			return port
		}
		port = next
	}
}

func (u *units) join(a, b string) {
	if a, b = u.root(a), u.root(b); a != b {
		u.parent[a] = b
	}
}

// findUnits joins the neighbours and holds what they say against each other.
func (b *resolver) findUnits() {
	b.units = units{parent: map[string]string{}, written: map[string][]writtenCount{}}
	for _, e := range b.flow.entries {
		name := e.name.value
		in := name
		if e.station != nil {
			in = inPort(name)
			b.joinThrough(e.station)
		}
		for k, feeder := range b.flow.feeders[name] {
			if e.station != nil {
				in = inPortOf(name, k)
			}
			out := feeder
			if b.flow.byName[feeder].station != nil {
				out = outPort(feeder)
			}
			b.units.join(out, in)
		}
	}
	for _, e := range b.flow.entries {
		b.collect(e)
	}
	for _, root := range b.units.order {
		b.agree(b.units.written[root])
	}
}

// joinThrough says that a station which does not name what it gives gives what it takes.
func (b *resolver) joinThrough(s *stationWords) {
	switch {
	case s.Gives.given():
	case len(s.Takes.inputs) > 1:
		b.complain(s.Name.at, "%q assembles and does not say what it gives, such as gives: 1 carton", s.Name.value)
	case s.Takes.given() && s.Takes.value > 1:
		b.complain(s.Name.at, "%q takes several pieces and does not say what it gives, such as gives: 1 carton", s.Name.value)
	default:
		b.units.join(inPort(s.Name.value), outPort(s.Name.value))
	}
}

// collect enters all counts of an entry.
func (b *resolver) collect(e *entryWords) {
	name := e.name.value
	if s := e.station; s != nil {
		b.note(inPort(name), &s.From.limit, "supply of "+name)
		b.note(inPort(name), &s.Takes.count, name+" takes")
		for k := 1; k < len(s.Takes.inputs); k++ {
			b.note(inPortOf(name, k), &s.Takes.inputs[k].count, name+" takes")
		}
		b.note(outPort(name), &s.Gives, name+" gives")
		b.note(outPort(name), &s.LostPerStop, "at each stop "+name+" loses")
		b.note(outPort(name), &s.Lanes.Holds, name+" lanes hold")
		b.noteRate(outPort(name), &s.Lanes.Rate, name+" lanes pass on")
		for i := range s.Checks.list {
			b.note(outPort(name), &s.Checks.list[i].value.Takes, s.Checks.list[i].name+" takes")
		}
		for i := range s.SpeedSteps.list {
			b.noteLevel(inPort(name), &s.SpeedSteps.list[i].FromLevel, name+" speed steps")
			b.noteLevel(inPort(name), &s.SpeedSteps.list[i].BackAt, name+" speed steps")
		}
	}
	if e.buffer != nil {
		b.collectStore(name, e.buffer)
		if e.buffer.Holds.value > 0 {
			b.note(name, &e.buffer.Holds.count, name+" holds")
		}
		b.noteLevel(name, &e.buffer.Levels.StopUpstream, name+" levels")
		b.noteLevel(name, &e.buffer.Levels.RestartUpstream, name+" levels")
		b.noteLevel(name, &e.buffer.Levels.StartDownstream, name+" levels")
	}
	for i := range b.words.Run.AtStart.Levels.list {
		if start := &b.words.Run.AtStart.Levels.list[i]; start.name == name && e.station == nil {
			b.noteLevel(name, &start.value, "at start")
		}
	}
}

// collectStore enters the counts of a store beside its places and levels.
func (b *resolver) collectStore(name string, w *bufferWords) {
	b.note(name, &w.Keeps, name+" keeps")
	b.note(name, &w.Load, name+" load")
	b.note(name, &w.Stock, name+" stock")
	for _, rate := range []*pieceRate{&w.InAtMost, &w.OutAtMost, &w.Surplus, &w.HandRate} {
		b.noteRate(name, rate, "the rates of "+name+" count")
	}
}

// noteRate enters the pieces of a rate, which may be left out: 300/min.
func (b *resolver) noteRate(port string, rate *pieceRate, what string) {
	if rate.unit != "" {
		b.note(port, &rate.count, what)
	}
}

func (b *resolver) noteLevel(port string, l *level, what string) {
	if !l.percent && l.value > 0 {
		b.note(port, &l.count, what)
	}
}

func (b *resolver) note(port string, c *count, what string) {
	if !c.given() || !b.read(c.at) {
		return
	}
	root := b.units.root(port)
	if slices.ContainsFunc(b.units.written[root], func(w writtenCount) bool { return w.where.node == c.node }) {
		return // the places of lanes stand in the line too
	}
	if _, known := b.units.written[root]; !known {
		b.units.order = append(b.units.order, root)
	}
	b.units.written[root] = append(b.units.written[root], writtenCount{c.at, c.unit, what})
}

// agree complains about counts of one group that name other pieces or none.
func (b *resolver) agree(group []writtenCount) {
	first := firstNamed(group)
	if first == nil {
		return
	}
	for _, w := range group {
		switch {
		case w.unit == "":
			text := w.where.text()
			b.complain(w.where, "%q has no unit; write %s %s, since %s %s", text, text, quantity.Plural(first.unit), first.what, quantity.Plural(first.unit))
		case !quantity.SameUnit(w.unit, first.unit):
			b.complain(w.where, "%s %s, but %s %s (line %s)", w.what, quantity.Plural(w.unit), first.what, quantity.Plural(first.unit), strconv.Itoa(first.where.line()))
		}
	}
}

func firstNamed(group []writtenCount) *writtenCount {
	for i := range group {
		if group[i].unit != "" {
			return &group[i]
		}
	}
	return nil
}

// unit is the plural name of the pieces of a port.
func (b *resolver) unit(port string) string {
	if first := firstNamed(b.units.written[b.units.root(port)]); first != nil {
		return quantity.Plural(first.unit)
	}
	return noUnit
}
