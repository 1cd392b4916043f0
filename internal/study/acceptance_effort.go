package study

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// A study of usual length is some 50,000 simulated hours. A line of 12,000 cycles an hour, those of all stations added up, takes
// about a minute of processor time for it, more on a busy machine; a line with more gets fewer and shorter runs, so that the answer is
// there within a minute on two cores. The intervals are those of the runs that there are, and wider.
const (
	usualCycles = 12_000
	leastShare  = 0.2
)

// effort is the share of the usual runs and of their hours that a line gets where nothing is asked for, 0.2 to 1. It goes by set
// speeds, not by a clock: the same scenario has the same runs on any machine.
func effort(s *scenario.Scenario) float64 {
	cycles := 0.0
	for i := range s.Line.Stations {
		cycles += float64(sim.Hour) / s.Line.Stations[i].Cycle.Mean()
	}
	return min(1, max(leastShare, usualCycles/max(1, cycles)))
}

// effortOf is so much of a usual number of runs.
func (a *acceptance) effortOf(runs int) int {
	return max(leastReplications, int(float64(runs)*effort(a.scenario)))
}

// longLasts is how long each of the long runs lasts.
func (a *acceptance) longLasts() sim.Micros {
	return max(sim.Micros(effort(a.scenario)*float64(longHours*sim.Hour/longRuns)), 4*a.scenario.Agreement.Run)
}
