package keyfigure

import (
	"slices"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// units lists the stations in groups that are on one drive, in the order of the flow; a
// station without a drive is a group of its own.
func units(line *sim.Line) [][]int {
	next := make([]int, len(line.Stations))
	first := make([]bool, len(line.Stations))
	for i := range line.Stations {
		next[i], first[i] = -1, true
	}
	for i, s := range line.Stations {
		before := slices.IndexFunc(line.Stations, func(o sim.Station) bool { return o.Name == s.From })
		if s.Coupled != "" && before >= 0 && before != i && line.Stations[before].Coupled == s.Coupled && next[before] < 0 {
			next[before], first[i] = i, false
		}
	}
	var all [][]int
	for i := range first {
		if !first[i] {
			continue
		}
		var unit []int
		for k := i; k >= 0; k = next[k] {
			unit = append(unit, k)
		}
		all = append(all, unit)
	}
	return all
}

// oneDrive says that all of several stations are on one drive.
func oneDrive(line *sim.Line, stations []int) bool {
	for _, unit := range units(line) {
		if slices.Contains(unit, first(stations)) {
			return !slices.ContainsFunc(stations, func(i int) bool { return !slices.Contains(unit, i) })
		}
	}
	return false
}

func first(of []int) int {
	if len(of) == 0 {
		return -1
	}
	return of[0]
}

// onDrive gives the words of a station as those of its unit: the longest cycle, the lowest
// top speed, the longer cycles and speed steps that one of them has.
func onDrive(line *sim.Line, people []scenario.Station, i int, unit []int) (sim.Station, scenario.Station) {
	one, words := line.Stations[i], people[i]
	for _, k := range unit {
		words.SetCycle = max(words.SetCycle, people[k].SetCycle)
		words.TopCycle = max(words.TopCycle, people[k].TopCycle)
		if s := &line.Stations[k]; s.Group.Every > 0 {
			one.Group = s.Group
		}
		one.Ramp = max(one.Ramp, line.Stations[k].Ramp)
		one.HeatRecovery = max(one.HeatRecovery, line.Stations[k].HeatRecovery)
		if s := &line.Stations[k]; len(s.Steps) > 0 {
			one.Steps = s.Steps
		}
	}
	return one, words
}

// joinUnits derives stations on one drive anew as one unit: one cycle, and alone with the stops
// of all, which follow each other because the clocks stand still while one is stopped.
func joinUnits(line *sim.Line, people []scenario.Station, stations []Station) {
	for _, unit := range units(line) {
		if len(unit) < 2 || len(people) < len(stations) {
			continue
		}
		for _, i := range unit {
			one, words := onDrive(line, people, i, unit)
			stations[i] = newStation(&one, &words)
		}
		settleUnit(line, stations, unit)
		for _, i := range unit {
			s := &stations[i]
			down, calendar := s.downPerCycle, s.calendar
			for _, k := range unit {
				if k != i {
					other := &stations[k]
					down += other.downPerCycle + other.downPerRun*other.meanCycle(other.Set)
					calendar *= other.calendar
					s.CoupledWith = append(s.CoupledWith, other.Name)
				}
			}
			s.Alone = s.efficiency(s.Set, down, calendar)
		}
	}
}

// settleUnit derives anew what follows from all stops of a unit: its restarts, what each member loses
// by them, and its splice scrap, which is that of the member with most if they keep step; a further try of one
// is the time of all.
func settleUnit(line *sim.Line, stations []Station, unit []int) {
	var all []pause
	tries, worst := 1.0, unit[0]
	for _, i := range unit {
		all = append(all, stations[i].pauses...)
		tries += stations[i].Tries - 1
		if stations[i].mostSplice > stations[worst].mostSplice {
			worst = i
		}
	}
	for _, i := range unit {
		s := &stations[i]
		s.pauses, s.Tries = all, tries
		if i != worst {
			s.mostSplice = 0
		}
		s.settle(&line.Stations[i])
	}
}

// tieCycles gives all stations of a unit the same cycles: those of the one that makes most, since
// a cycle of the drive is one of each, whatever was rejected before.
func tieCycles(line *sim.Line, stations []Station) {
	for _, unit := range units(line) {
		most := 0.0
		for _, i := range unit {
			most = max(most, stations[i].cycles)
		}
		for _, i := range unit {
			stations[i].cycles = most
		}
	}
}
