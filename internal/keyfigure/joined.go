package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// joinStops adds the stops of the stations that stop with each one.
func joinStops(line *sim.Line, stations []Station) {
	for i, group := range stopGroups(line) {
		s := &stations[i]
		calendar := 1.0
		for _, j := range group {
			calendar *= stations[j].calendar
			if j != i && !slices.Contains(s.CoupledWith, stations[j].Name) {
				s.JoinedWith = append(s.JoinedWith, stations[j].Name)
			}
		}
		s.Joined = s.efficiency(s.Set, groupDown(stations, group, i), calendar)
	}
}

// groupDown is the time that the stops of a whole group take per cycle of one
// of its stations at set speed, if the flow divides as planned. While one is stopped the clocks of the others
// stand still, so the stops follow each other and their times add up.
func groupDown(stations []Station, group []int, one int) float64 {
	s := &stations[one]
	down := s.downPerCycle
	for _, j := range group {
		other := &stations[j]
		if j == one || other.Set.Cycles <= 0 {
			continue
		}
		down += ratio(other.cycles, s.cycles) * (other.downPerCycle + other.downPerRun*other.meanCycle(other.Set))
	}
	return down
}

// stopGroups lists, for every station, all stations that stop with it, itself included: those
// on one drive, and those that are joined by stops with.
func stopGroups(line *sim.Line) [][]int {
	group := make([]int, len(line.Stations))
	for _, unit := range units(line) {
		for _, i := range unit {
			group[i] = unit[0]
		}
	}
	for i, s := range line.Stations {
		other := slices.IndexFunc(line.Stations, func(o sim.Station) bool { return o.Name == s.StopsWith })
		if s.StopsWith == "" || other < 0 {
			continue
		}
		from, to := group[i], group[other]
		for j := range group {
			if group[j] == from {
				group[j] = to
			}
		}
	}
	members := make([][]int, len(group))
	for i := range group {
		for j := range group {
			if group[j] == group[i] {
				members[i] = append(members[i], j)
			}
		}
	}
	return members
}
