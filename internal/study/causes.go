package study

import (
	"cmp"
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// causesOf lists what the time of the limiting stations went to beside good output, worst first: the branches
// of their loss trees, those of one kind together, of stops those of one name. Minutes are summed over the stations, and so
// are the pieces of the answer that they would have made in them at set speed.
func causesOf(v view, stations []int) []Cause {
	var groups causeGroups
	for _, i := range stations {
		at, together := newLosing(v.scenario.Line, i), stoppedTogether(v.scenario.Line, i)
		at.from = v.scenario.Run.WarmUp
		for r := range v.records {
			for _, one := range at.times(&v.records[r]) {
				if one.kind == result.LossGood || one.time == 0 {
					continue
				}
				group := groups.of(v.causeKeyOf(one, stations, together), len(v.records))
				group.add(r, one.time, v.figures.Stations[i].Set.Answer)
				group.at = withName(group.at, v.scenario.Line.Stations[i].Name)
				if one.named && group.key.stop != "" {
					group.stops = withName(group.stops, v.scenario.Line.Stations[one.from.station].Name)
				}
			}
		}
	}
	var causes []Cause
	for _, group := range groups {
		if cause := v.causeOf(group); cause.Minutes.Mean > 0 {
			causes = append(causes, cause)
		}
	}
	slices.SortStableFunc(causes, func(a, b Cause) int { return cmp.Compare(b.Pieces.Mean, a.Pieces.Mean) })
	return causes
}

// causeKey is what times of one cause have in common. Stops have a name and the
// place of their station among those that stop the limiting one, itself the first.
type causeKey struct {
	kind  result.LossKind
	stop  string
	place int
}

// causeKeyOf is the cause to which a branch belongs. A stop is one cause with its waiting for the crew; waits for
// neighbours are one cause, whatever began them.
func (v view) causeKeyOf(one lossTime, stations, together []int) causeKey {
	if one.span != "" {
		return causeKey{kind: one.kind, stop: one.span}
	}
	if !one.named || one.kind == result.LossBlocked || one.kind == result.LossStarved {
		return causeKey{kind: one.kind}
	}
	key := causeKey{kind: result.LossStop}
	_, key.stop = v.originWords(one.from)
	if !slices.Contains(stations, one.from.station) { // a limiting station itself is the first, whoever it stops too
		key.place = slices.Index(together, one.from.station)
	}
	return key
}

// causeGroup is one cause: minutes and pieces by replication, the limiting stations whose time it is, and the stations whose stop it is.
type causeGroup struct {
	key             causeKey
	at, stops       []string
	minutes, pieces []float64
}

func (g *causeGroup) add(replication int, time sim.Micros, perMinute float64) {
	minutes := float64(time) / float64(sim.Minute)
	g.minutes[replication] += minutes
	g.pieces[replication] += minutes * perMinute
}

type causeGroups []*causeGroup

// of is the group of a key.
func (g *causeGroups) of(key causeKey, replications int) *causeGroup {
	at := slices.IndexFunc(*g, func(one *causeGroup) bool { return one.key == key })
	if at < 0 {
		at = len(*g)
		*g = append(*g, &causeGroup{key: key, minutes: make([]float64, replications), pieces: make([]float64, replications)})
	}
	return (*g)[at]
}

// withName has the name once.
func withName(names []string, name string) []string {
	if slices.Contains(names, name) {
		return names
	}
	return append(names, name)
}

// causeOf measures one cause, per shift or week of the calendar where the answer is per one.
func (v view) causeOf(group *causeGroup) Cause {
	return Cause{
		Kind: group.key.kind, Stop: group.key.stop, Stations: group.stops, At: group.at,
		Minutes: v.totalOf(group.minutes), Pieces: v.totalOf(group.pieces),
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
