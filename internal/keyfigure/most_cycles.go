package keyfigure

import (
	"math"
	"slices"
)

// findMost derives the cycles that each station makes at most, whatever the mix of the line: its
// own time, with the stops of those that it stops with.
func (f *flow) findMost(stations []Station) {
	rows := withStops(f.line, stations)
	groups, _ := stoppers(f.line, stations)
	for _, group := range groups {
		for k := range group {
			one := &group[k]
			own := slices.Clone(rows)
			own = slices.DeleteFunc(own, func(row timeRow) bool { return !slices.Contains(one.stations, row.station) })
			most := f.mostOf(one, len(group) == 1, &gauge{rows: own, good: mostGood(stations)})
			for _, i := range one.stations {
				stations[i].AtMost = stations[i].mostOut(most)
			}
		}
	}
}

// mostOut is the rate of good pieces at so many cycles a minute, with the least that is lost.
func (s *Station) mostOut(cycles float64) Rate {
	given := cycles * float64(s.Gives)
	return Rate{Cycles: cycles, Pieces: given * s.mostGood, Answer: given * s.PerPiece * s.mostYield}
}

// mostOf is the cycles of a stopper: by its rows where it stops by itself, otherwise the most that
// the flow allows.
func (f *flow) mostOf(one *stopper, alone bool, g *gauge) float64 {
	if !alone {
		return f.mostCycles(one.first(), g)
	}
	most := math.Inf(1)
	for _, row := range g.rows {
		minutes := 0.0
		for _, i := range one.stations {
			minutes += row.minutes[i]
		}
		most = min(most, ratio(row.limit, minutes))
	}
	return most
}
