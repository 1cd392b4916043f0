package study

import (
	"cmp"
	"slices"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// causesOf lists why a station did not run, worst first, in minutes and in
// pieces of the answer that it would have made in them at set speed.
func causesOf(s *scenario.Scenario, m *sim.Model, c columns, station int) []Cause {
	perMinute := setPiecesPerMinute(s, station)
	var causes []Cause
	add := func(cause Cause, time func(*sim.Record) sim.Micros) {
		minutes := c.column(func(r *sim.Record) float64 { return float64(time(r)) / float64(sim.Minute) })
		cause.Minutes = estimateOf(minutes, c.confidence)
		for i := range minutes {
			minutes[i] *= perMinute
		}
		cause.Pieces = estimateOf(minutes, c.confidence)
		if cause.Minutes.Mean > 0 {
			causes = append(causes, cause)
		}
	}
	for _, state := range []sim.State{sim.Blocked, sim.Starved} {
		add(Cause{State: state}, func(r *sim.Record) sim.Micros { return r.Stations[station].States[state] })
	}
	for _, of := range stoppedTogether(s.Line, station) {
		for k, name := range m.StopNames(of) {
			add(Cause{State: sim.Down, Station: s.Line.Stations[of].Name, Stop: name},
				func(r *sim.Record) sim.Micros { return stopped(&r.Stations[of].Stops[k]) })
		}
	}
	slices.SortStableFunc(causes, func(a, b Cause) int { return cmp.Compare(b.Pieces.Mean, a.Pieces.Mean) })
	return causes
}

// setPiecesPerMinute is the set speed of a station in pieces of the answer.
func setPiecesPerMinute(s *scenario.Scenario, station int) float64 {
	pieces := flowOf(s.Line).piecesPerCycle(s.Answer.CountedAfter)[station]
	return pieces * float64(sim.Minute) / s.Stations[station].SetCycle
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
