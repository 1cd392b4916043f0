package keyfigure

import "slices"

// inTurn puts branches that get pieces in turn into one row: if one of them stands, no piece
// can be put into it, and the others wait for their turn. What lies behind several of them is as it was.
func (t *tied) inTurn(ways []way, joint int) []way {
	row := way{from: joint, station: -1, runs: 1}
	rest := slices.Clone(ways)
	var exits []way
	turns := t.joints[joint].turns
	for k, branch := range turns {
		others := slices.Concat(slices.Concat(turns[:k]...), slices.Concat(turns[k+1:]...))
		own, behind := reachedFrom(ways, joint, branch), reachedFrom(ways, joint, others)
		own = slices.DeleteFunc(own, func(w way) bool { return slices.Contains(behind, w) })
		rest = slices.DeleteFunc(rest, func(w way) bool { return slices.Contains(own, w) })
		row.follow(t.reduced(own))
		exits = append(exits, slices.DeleteFunc(slices.Clone(own), func(w way) bool { return leads(own, w.to) })...)
	}
	for _, exit := range exits {
		one := row
		one.to, one.share = exit.to, exit.share
		rest = append(rest, one)
	}
	return rest
}

// reachedFrom are the ways that pieces can take that come to some of the stations behind a joint.
func reachedFrom(ways []way, joint int, stations []int) (found []way) {
	ends := map[int]bool{}
	for news := true; news; {
		news = false
		var left []way
		for _, w := range ways {
			if ends[w.from] || (w.from == joint && slices.Contains(stations, w.station)) {
				found, ends[w.to], news = append(found, w), true, true
			} else {
				left = append(left, w)
			}
		}
		ways = left
	}
	return found
}
