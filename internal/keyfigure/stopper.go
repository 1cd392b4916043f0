package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// stopper is a station, or the stations on one drive, with what its own stops take.
type stopper struct {
	stations []int
	// minutes is the work of a cycle at the fastest speed, longest the mean time that a cycle
	// under way goes on at most.
	minutes, longest float64
	// down is the minutes of own stops for each cycle, often their number.
	down, often float64
	// regular says that some clock of theirs has a memory, so that it can keep step with others.
	regular bool
	outages []outage
}

// newStopper adds up the stops of a station or of the stations on one drive.
func newStopper(stations []Station, unit []int) stopper {
	one := stopper{stations: unit}
	for _, i := range unit {
		s := &stations[i]
		if s.Fastest.Cycles <= 0 {
			continue
		}
		one.minutes = s.meanCycle(s.Fastest)
		one.longest = max(one.longest, s.longest)
	}
	for _, i := range unit {
		s := &stations[i]
		one.down += s.downPerCycle + s.downPerRun*one.minutes
		one.often += s.stopsPerCycle + s.stopsPerRun*one.minutes
		one.regular = one.regular || s.regular
		one.outages = append(one.outages, s.outages...)
	}
	return one
}

// first is the station whose cycles are those of all.
func (s *stopper) first() int { return s.stations[0] }

// outagesPerMinute is how often calendar stops begin.
func (s *stopper) outagesPerMinute() (sum float64) {
	for _, o := range s.outages {
		sum += o.perMinute
	}
	return sum
}

// stoppers are those of each group that stops together, and the group of each station.
func stoppers(line *sim.Line, stations []Station) (groups [][]stopper, of []int) {
	of = make([]int, len(stations))
	members := stopGroups(line)
	for i := range of {
		of[i] = -1
	}
	for i, group := range members {
		if of[i] >= 0 {
			continue
		}
		var all []stopper
		for _, unit := range units(line) {
			if slices.Contains(group, unit[0]) {
				all = append(all, newStopper(stations, unit))
			}
		}
		for _, k := range group {
			of[k] = len(groups)
		}
		groups = append(groups, all)
	}
	return groups, of
}
