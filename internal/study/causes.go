package study

import (
	"cmp"
	"slices"

	"tuckline/sim"
)

// causesOf lists why stations did not run, worst first: minutes of all of them,
// and the pieces of the answer that they would have made in them at set speed.
// Stops of one name at stations side by side are one cause.
func causesOf(v view, stations []int) []Cause {
	var groups causeGroups
	for _, state := range []sim.State{sim.Blocked, sim.Starved} {
		for _, i := range stations {
			groups.add(causeKey{state: state}, "", lostTime{i, func(r *sim.Record) sim.Micros { return r.Stations[i].States[state] }})
		}
	}
	for _, i := range stations {
		for place, of := range stoppedTogether(v.scenario.Line, i) {
			if slices.Contains(stations, of) {
				place = 0 // a limiting station itself, whoever it stops too
			}
			for k, name := range v.model.StopNames(of) {
				groups.add(causeKey{sim.Down, name, place}, v.scenario.Line.Stations[of].Name,
					lostTime{i, func(r *sim.Record) sim.Micros { return v.stoodFor(r, of, k) }})
			}
		}
	}
	v.addPlanned(&groups, stations)
	var causes []Cause
	for _, group := range groups {
		if cause := v.causeOf(group); cause.Minutes.Mean > 0 {
			causes = append(causes, cause)
		}
	}
	slices.SortStableFunc(causes, func(a, b Cause) int { return cmp.Compare(b.Pieces.Mean, a.Pieces.Mean) })
	return causes
}

// addPlanned adds changeovers, and the spans of the calendar in which the line stands, by their names.
func (v view) addPlanned(groups *causeGroups, stations []int) {
	from := v.scenario.Run.WarmUp
	for _, i := range stations {
		groups.add(causeKey{state: sim.Changeover}, "", lostTime{i, func(r *sim.Record) sim.Micros { return r.Stations[i].States[sim.Changeover] }})
		for k := range v.scenario.Line.Calendar.Spans {
			span := &v.scenario.Line.Calendar.Spans[k]
			key := causeKey{state: sim.PlannedStop, stop: span.Name}
			if span.Line != sim.LineStands || slices.ContainsFunc(*groups, func(g *causeGroup) bool {
				return g.key == key && slices.ContainsFunc(g.times, func(t lostTime) bool { return t.station == i })
			}) {
				continue
			}
			groups.add(key, "", lostTime{i, func(r *sim.Record) sim.Micros {
				return spansStanding(&v.scenario.Line.Calendar, from, r.Window)[span.Name]
			}})
		}
	}
}

// causeKey is what times of one cause have in common. Stops have a name and the
// place of their station among those that stop the limiting one, itself the first.
type causeKey struct {
	state sim.State
	stop  string
	place int
}

// lostTime is a time in which a limiting station did not run.
type lostTime struct {
	station int
	time    func(*sim.Record) sim.Micros
}

// causeGroup is one cause with its times and the stations whose stop it is.
type causeGroup struct {
	key   causeKey
	of    []string
	times []lostTime
}

type causeGroups []*causeGroup

func (g *causeGroups) add(key causeKey, of string, time lostTime) {
	at := slices.IndexFunc(*g, func(one *causeGroup) bool { return one.key == key })
	if at < 0 {
		at = len(*g)
		*g = append(*g, &causeGroup{key: key})
	}
	one := (*g)[at]
	one.times = append(one.times, time)
	if of != "" && !slices.Contains(one.of, of) {
		one.of = append(one.of, of)
	}
}

// causeOf measures one cause.
func (v view) causeOf(group *causeGroup) Cause {
	sum := func(worth func(station int) float64) func(*sim.Record) float64 {
		return func(r *sim.Record) float64 {
			sum := 0.0
			for _, lost := range group.times {
				sum += float64(lost.time(r)) / float64(sim.Minute) * worth(lost.station)
			}
			return sum
		}
	}
	return Cause{
		State: group.key.state, Stations: group.of, Stop: group.key.stop,
		Minutes: v.total(sum(func(int) float64 { return 1 })),
		Pieces:  v.total(sum(func(i int) float64 { return v.figures.Stations[i].Set.Answer })),
	}
}

// stoppedTogether is the station and those whose stops stop it too: joined
// directly or through a third. The station comes first.
func stoppedTogether(line sim.Line, station int) []int {
	group := []int{station}
	for k := 0; k < len(group); k++ {
		one := line.Stations[group[k]]
		for i, other := range line.Stations {
			joined := other.StopsWith == one.Name || one.StopsWith == other.Name
			if joined && !slices.Contains(group, i) {
				group = append(group, i)
			}
		}
	}
	return group
}
