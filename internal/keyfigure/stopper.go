package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// stopper is a station, or the stations on one drive, with what its own stops take.
type stopper struct {
	stations []int
	// minutes is the work of a cycle at the fastest speed, restarts what restarts surely add to it, longest
	// the mean time that a cycle under way goes on at most.
	minutes, restarts, longest float64
	// down is the minutes of own stops for each cycle, often their number, unsure that of those that no bound counts.
	down, often, unsure float64
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
		one.outages = append(one.outages, stations[i].outages...)
	}
	s := &stations[one.first()] // on a drive each has the stops of all
	for _, p := range s.pauses {
		comes := p.perCycle + p.perRun*one.minutes
		if p.unsure {
			one.unsure += comes
			continue
		}
		one.down += comes * p.mean
		one.often += comes
		one.regular = one.regular || !p.random
	}
	one.restarts = s.restart.surely(&one, s.pauses)
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
