package scenario

import (
	"strings"

	"tuckline/internal/quantity"
	"tuckline/sim"
)

// lanesOf is the name of the station into which the lanes of a station compile, and
// placesBefore that of the places between them.
func lanesOf(station string) string { return station + " lanes" }

func placesBefore(station string) string { return station + " to " + lanesOf(station) }

// addLanes puts a station behind each one with lanes, that passes single pieces on at their
// rate, and the places of the lanes between them. What follows takes from it.
func (b *resolver) addLanes() {
	var all []*entryWords
	written := b.words.Line.entries
	for i, e := range written {
		all = append(all, e)
		if e.station == nil || !e.station.Lanes.given() || b.lanesNameTaken(e) {
			continue
		}
		if drive := e.station.Coupled; drive.given() && i+1 < len(written) && written[i+1].station != nil && written[i+1].station.Coupled.value == drive.value {
			b.complain(e.station.Lanes.at, "%q and %q are on one drive, with nothing between them; write the lanes at the last station of the drive", e.name.value, written[i+1].name.value)
		}
		all = append(all, b.lanePlaces(e), b.lanes(e))
		b.laned[e.name.value] = lanesOf(e.name.value)
	}
	b.words.Line.entries = all
}

// lanesNameTaken refuses entries that have the names of what lanes compile into.
func (b *resolver) lanesNameTaken(e *entryWords) bool {
	taken := false
	for _, other := range b.words.Line.entries {
		if name := other.name.value; name == lanesOf(e.name.value) || name == placesBefore(e.name.value) {
			b.complain(other.name.at, "%q is what the program calls the lanes of %q; name this entry differently", name, e.name.value)
			taken = true
		}
	}
	return taken
}

// lanes is the station of the lanes; it chooses where pieces go in place of its machine.
func (b *resolver) lanes(e *entryWords) *entryWords {
	w := &e.station.Lanes
	name := text{at: w.at, value: lanesOf(e.name.value)}
	station := &stationWords{at: w.at, Name: name, Stops: w.Stops, Sends: e.station.Sends}
	station.Cycle = cycleLaw{law{w.Rate.at, sim.Fixed(w.Rate.value), "fixed " + quantity.FormatNumber(w.Rate.value)}}
	if as := e.station.RandomNumbersAs; as.value != "" {
		station.RandomNumbersAs = text{at: as.at, value: lanesOf(as.value)}
	}
	e.station.Sends = sendsWords{}
	if gives := max(1, e.station.Gives.pieces()); w.Holds.given() && w.Holds.pieces() < gives && b.read(w.Holds.at) {
		b.complain(w.Holds.at, "a cycle gives %d at once, and the lanes hold fewer, %d; write at least %[1]d", gives, w.Holds.pieces())
	}
	return &entryWords{at: w.at, name: name, line: e.line, station: station}
}

// lanePlaces are the places of the lanes together. With fewer than twice what a cycle gives a
// machine that blocks before its cycle would wait until the last piece is gone.
func (b *resolver) lanePlaces(e *entryWords) *entryWords {
	w := &e.station.Lanes
	name := text{at: w.at, value: placesBefore(e.name.value)}
	holds := w.Holds
	if !holds.given() {
		holds.at, holds.value = w.at, 2*max(1, e.station.Gives.value)
		holds.unit = e.station.Gives.unit
	}
	return &entryWords{at: w.at, name: name, line: e.line, lanes: true, buffer: &bufferWords{at: w.at, Name: name, Holds: places{holds}}}
}

// last is the entry that gives what comes out behind a name: its lanes, if it has any.
func (b *resolver) last(name string) string {
	if lanes, has := b.laned[name]; has {
		return lanes
	}
	return name
}

// written is the path in the file of a path of the model.
func (b *resolver) written(path string) string {
	if path == "orders.counted after" {
		return "answer.counted after"
	}
	for station, lanes := range b.laned {
		for _, name := range []string{lanes, placesBefore(station)} {
			if rest, is := strings.CutPrefix(path, name); is && (rest == "" || rest[0] == '.') {
				return station + ".lanes" + rest
			}
		}
	}
	return path
}
