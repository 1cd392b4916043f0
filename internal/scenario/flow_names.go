package scenario

// named checks the names after from:.
func (b *resolver) named(e *entryWords, from *fromWords) []string {
	if len(from.names) > 1 && e.station != nil {
		b.complain(from.at, "a station takes from one place; a station that assembles names its places in takes: {A: 3 blisters, B: 1 leaflet}; for a merge put a buffer before it and write the list there: from: [A, B]")
		return nil
	}
	var names []string
	for _, one := range from.names {
		if b.feeds(one.at, one.value, e) {
			names = append(names, b.last(one.value))
		}
	}
	return names
}

// assembled checks the names of the places that a station takes from.
func (b *resolver) assembled(e *entryWords) []string {
	w := e.station
	if w.From.given() {
		b.complain(w.From.at, "takes already names what feeds %q; leave from out", e.name.value)
	}
	var names []string
	for i := range w.Takes.inputs {
		if one := &w.Takes.inputs[i]; b.feeds(one.place, one.name, e) {
			names = append(names, b.last(one.name))
		}
	}
	return names
}

// feeds says whether a name is one of an entry that can feed another.
func (b *resolver) feeds(where at, name string, e *entryWords) bool {
	switch _, found := b.flow.byName[name]; {
	case name == e.name.value:
		b.complain(where, "%q feeds itself", name)
	case name == "supply":
		b.complain(where, "supply is not one of several feeders; only a station has from: supply")
	case !found:
		b.noSuchName(where, name, "entry of the line", b.otherNames(e.name.value))
	default:
		return true
	}
	b.flow.unclear = true
	return false
}

func (b *resolver) otherNames(own string) []string {
	var names []string
	for _, e := range b.words.Line.entries {
		if e.name.value != own {
			names = append(names, e.name.value)
		}
	}
	return names
}
