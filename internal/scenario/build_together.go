package scenario

import "cmp"

// What stations have to do with each other beside the flow: stops and random numbers.

// stopsWith checks the names after stops with:.
func (b *resolver) stopsWith() {
	for i := range b.s.Line.Stations {
		station := &b.s.Line.Stations[i]
		w := &b.flow.byName[station.Name].station.StopsWith
		if !w.given() {
			continue
		}
		other, found := b.flow.byName[w.value]
		switch {
		case w.value == station.Name:
			b.complain(w.at, "%q always stops with itself; name another station, or leave the key out", w.value)
		case found && other.station == nil:
			b.complain(w.at, "%q is not a station", w.value)
		case !found:
			b.noSuchName(w.at, w.value, "station", b.stationNames(station.Name))
		default:
			station.StopsWith = w.value
		}
	}
}

func (b *resolver) stationNames(but string) []string {
	var names []string
	for i := range b.s.Line.Stations {
		if name := b.s.Line.Stations[i].Name; name != but {
			names = append(names, name)
		}
	}
	return names
}

// streams refuses stations of one line that draw the same random numbers: both would always
// stop together, and the random numbers would count twice.
func (b *resolver) streams() {
	owner := map[string]string{}
	for i := range b.s.Line.Stations {
		station := &b.s.Line.Stations[i]
		if station.RandomAs == "" {
			owner[station.Name] = station.Name
		}
	}
	for i := range b.s.Line.Stations {
		station := &b.s.Line.Stations[i]
		if station.RandomAs == "" {
			continue
		}
		w := &b.flow.byName[station.Name].station.RandomNumbersAs
		if other := owner[station.RandomAs]; other != "" {
			b.complain(w.at, "%q would draw the same random numbers as %q of this line; write the name that a station of another layout has", station.Name, other)
		}
		owner[station.RandomAs] = cmp.Or(owner[station.RandomAs], station.Name)
	}
}
