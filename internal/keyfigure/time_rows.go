package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// timeRow says that a station has no more time than there is: its cycles, and the stops that
// come with the cycles of each station that stops it, take minutes of it.
type timeRow struct {
	station int
	// minutes are by station, for each of its cycles.
	minutes []float64
	// limit is the share of time that there is.
	limit float64
}

// atSetSpeed are the rows of a line in which nothing stops.
func atSetSpeed(stations []Station) (rows []timeRow) {
	for i := range stations {
		rows = append(rows, workOnly(len(stations), i, ratio(1, stations[i].Set.Cycles)))
	}
	return rows
}

// workOnly is the row of a station that does nothing but work; without a speed it makes nothing.
func workOnly(n, station int, minutes float64) timeRow {
	row := timeRow{station: station, minutes: make([]float64, n), limit: 1}
	row.minutes[station] = minutes
	if minutes <= 0 {
		row.minutes[station], row.limit = 1, 0
	}
	return row
}

// withStops are the rows of a line at the fastest speeds in use, with all stops.
//
// Stops of stations that stop together follow each other, and take their time from each of
// the group, whatever the mix of their cycles. But a station ends the cycle under way when another stops: that
// much of the stop costs it nothing, and a stop of its own that strikes there overlaps.
// What is charged is what no luck can avoid: of stations whose clocks have a memory,
// so that their stops may keep falling together, one at a time.
// Source: own derivation, for stops without memory by conditioning on the work of each station.
func withStops(line *sim.Line, stations []Station) (rows []timeRow) {
	groups, of := stoppers(line, stations)
	for i := range stations {
		g := &stopGroup{stoppers: groups[of[i]], n: len(stations)}
		rows = append(rows, g.rows(i)...)
	}
	return rows
}

// stopGroup is the stoppers that stop together.
type stopGroup struct {
	stoppers []stopper
	n        int // stations of the line
}

// rows are what holds for one station of the group.
func (g *stopGroup) rows(station int) (rows []timeRow) {
	own := slices.IndexFunc(g.stoppers, func(s stopper) bool { return slices.Contains(s.stations, station) })
	if g.stoppers[own].minutes <= 0 {
		return []timeRow{workOnly(g.n, station, 0)}
	}
	out := g.outages()
	for _, counted := range g.choices(out.memoryless) {
		rows = append(rows, g.row(station, own, counted, out.share(g, counted)))
	}
	if !out.memoryless {
		rows = append(rows, g.row(station, own, nil, timeShare{up: 1, limit: out.all}))
	}
	return rows
}

// choices are sets of stoppers whose stops surely come one after the other: those without
// memory, and one other. Where calendar stops have a memory too, also those without memory alone.
func (g *stopGroup) choices(memorylessOutages bool) (choices [][]int) {
	var random, regular []int
	for k := range g.stoppers {
		if g.stoppers[k].regular {
			regular = append(regular, k)
		} else {
			random = append(random, k)
		}
	}
	for _, k := range regular {
		choices = append(choices, append(slices.Clone(random), k))
	}
	if len(regular) == 0 || !memorylessOutages {
		choices = append(choices, random)
	}
	return choices
}

// row charges the stops of the stoppers that are counted.
func (g *stopGroup) row(station, own int, counted []int, share timeShare) timeRow {
	row := workOnly(g.n, station, (g.stoppers[own].minutes+g.stoppers[own].restarts)/share.up)
	row.limit = share.limit
	goesOn := g.stoppers[own].longest / share.up
	for k := range g.stoppers {
		if k != own {
			row.limit += g.stoppers[k].outagesPerMinute() * goesOn
		}
	}
	for _, k := range counted {
		s := &g.stoppers[k]
		overlaps := g.overlaps(k, counted)
		if k != own {
			overlaps += goesOn
		}
		row.minutes[s.first()] += max(0, s.down-s.often*overlaps)
		for j := range g.stoppers {
			if j != k {
				row.limit += g.stoppers[j].outagesPerMinute() * s.down * s.longest / s.minutes
			}
		}
	}
	return row
}

// overlaps is the time by which the stops of others overlap one of a stopper at most: they
// strike in the cycle that goes on when it stops.
func (g *stopGroup) overlaps(one int, counted []int) (sum float64) {
	for _, k := range counted {
		if s := &g.stoppers[k]; k != one && s.minutes > 0 {
			sum += s.down * s.longest / s.minutes
		}
	}
	return sum
}
