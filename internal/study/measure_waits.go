package study

import (
	"fmt"
	"slices"
	"strings"

	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

// The words of measures of waits. NAME stands for a stop, a material or a store.
const (
	waitsBecause = "stops of STATION because of NAME"
	freePlaces   = "free places needed at BUFFER"
)

// needsPauses says that a measure asked for needs the pauses one by one.
func needsPauses(show []string) bool {
	words, _, _ := strings.Cut(freePlaces, "BUFFER")
	return slices.ContainsFunc(show, func(one string) bool {
		return strings.HasPrefix(strings.Join(strings.Fields(one), " ")+" ", words)
	})
}

// causeNames are the names of all stops, materials and stores that stop, each once, in the order of the line; a stop that is the
// only one of its store goes by its own name too.
func causeNames(line *sim.Line, m *sim.Model) []string {
	var names []string
	add := func(name string) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for i := range line.Stations {
		for _, name := range m.StopNames(i) {
			add(name)
		}
	}
	for i := range line.Buffers {
		if len(line.Buffers[i].Stops) > 0 {
			add(line.Buffers[i].Name)
		}
		if stop := onlyStop(&line.Buffers[i]); stop != "" {
			add(stop)
		}
	}
	return names
}

// onlyStop is the name of the stop of a store that has one; of several it cannot be told which has begun a wait.
func onlyStop(b *sim.Buffer) string {
	if len(b.Stops) == 1 {
		return b.Stops[0].Name
	}
	return ""
}

// becauseOf counts the stops that have made a station wait, all waits of one stop once: a row for each
// station, or the store, whose stop has the name.
func becauseOf(v view, of int, per string) []result.Measure {
	stations := len(v.scenario.Line.Stations)
	station, name := of%stations, causeNames(&v.scenario.Line, v.model)[of/stations]
	var rows []result.Measure
	for _, key := range v.keysNamed(name) {
		value := v.count(per, func(r *sim.Record) float64 {
			var n int64
			for _, one := range r.Stations[station].Because {
				if one.Station == key.station && one.Cause == key.cause {
					n += one.Stops
				}
			}
			return float64(n)
		})
		where, cause := v.originWords(key)
		if cause == result.Store && name != where {
			cause = name
		}
		if cause != result.Store {
			where = cause + " of " + where
		}
		rows = append(rows, one(where, value)...)
	}
	return rows
}

// keysNamed are the causes of a name.
func (v view) keysNamed(name string) []originKey {
	var keys []originKey
	line := &v.scenario.Line
	for i := range line.Stations {
		for k, one := range v.model.StopNames(i) {
			if one == name {
				keys = append(keys, originKey{i, k})
			}
		}
	}
	for i := range line.Buffers {
		if b := &line.Buffers[i]; (b.Name == name || onlyStop(b) == name) && len(b.Stops) > 0 {
			keys = append(keys, originKey{len(line.Stations) + i, sim.CauseStore})
		}
	}
	return keys
}

// neededPlaces are the free places that a pause of a station behind a buffer would need, so that those
// before it can go on at set speed: quantiles over all pauses of all replications.
func neededPlaces(v view, of int, _ string) []result.Measure {
	var needs []float64
	before, behind := v.around(of)
	feed, take := 0.0, 0.0
	for _, i := range before {
		feed += v.setPieces(i, v.scenario.Line.Stations[i].Gives)
	}
	for _, i := range behind {
		take += v.setPieces(i, v.takesOf(i, of))
	}
	for _, i := range behind {
		rate := feed * v.setPieces(i, v.takesOf(i, of)) / take
		for k := range v.records {
			for _, p := range v.records[k].Stations[i].Pauses {
				needs = append(needs, float64(p.Lasted)*rate)
			}
		}
	}
	var rows []result.Measure
	for _, p := range []int{90, 95, 99} {
		value, ok := estimate.QuantileInterval(needs, float64(p)/100, v.confidence)
		if !ok {
			value.N = min(value.N, 1) // there is no interval
		}
		rows = append(rows, result.Measure{
			Of: fmt.Sprintf("P%d", p), Value: result.Estimate(value), Unit: v.scenario.Stations[before[0]].GivesUnit,
		})
	}
	return rows
}

// setPieces is how many pieces a microsecond are at set speed, so many a cycle.
func (v view) setPieces(station int, pieces int64) float64 {
	return float64(pieces) / float64(newLosing(v.scenario.Line, station).cycle)
}

// around are the stations before and behind a place, over other places too.
func (v view) around(place int) (before, behind []int) {
	var walk func(name string, on func(sim.Place) []string) []int
	walk = func(name string, on func(sim.Place) []string) []int {
		for i := range v.scenario.Line.Stations {
			if v.scenario.Line.Stations[i].Name == name {
				return []int{i}
			}
		}
		var all []int
		for _, p := range v.model.Places() {
			if p.Name != name {
				continue
			}
			for _, next := range on(p) {
				for _, i := range walk(next, on) {
					if !slices.Contains(all, i) {
						all = append(all, i)
					}
				}
			}
		}
		return all
	}
	name := v.model.Places()[place].Name
	return walk(name, func(p sim.Place) []string { return p.From }), walk(name, func(p sim.Place) []string { return p.To })
}

// takesOf is what a station takes in a cycle from the way on which a place lies.
func (v view) takesOf(station, place int) int64 {
	s := &v.scenario.Line.Stations[station]
	for _, in := range s.Also {
		for p, one := range v.model.Places() {
			if one.Name == in.From || one.HandOver && slices.Contains(one.To, s.Name) && slices.Contains(one.From, in.From) {
				if p == place || slices.Contains(v.placesBefore(one), v.model.Places()[place].Name) {
					return in.Takes
				}
			}
		}
	}
	return s.Takes
}

// placesBefore are the places that a place gets its pieces from, over others too.
func (v view) placesBefore(place sim.Place) []string {
	var all []string
	for _, from := range place.From {
		for _, p := range v.model.Places() {
			if p.Name == from {
				all = append(append(all, from), v.placesBefore(p)...)
			}
		}
	}
	return all
}
