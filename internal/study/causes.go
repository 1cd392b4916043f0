package study

import (
	"cmp"
	"slices"

	"tuckline/internal/keyfigure"
	"tuckline/sim"
)

// constraint is the station that limits the line, or stations side by side, by
// the derived figures: the smallest rate that cannot be exceeded in the long run.
func constraint(line sim.Line, figures keyfigure.Figures) []int {
	var all []int
	for i := range line.Stations {
		if slices.Contains(figures.Bounds.Constraint, line.Stations[i].Name) {
			all = append(all, i)
		}
	}
	return all
}

// causesOf lists why stations did not run, worst first: minutes of all of them,
// and the pieces of the answer that they would have made in them at set speed.
func causesOf(v view, stations []int) []Cause {
	var causes []Cause
	for _, state := range []sim.State{sim.Blocked, sim.Starved} {
		causes = v.addCause(causes, Cause{State: state}, stations,
			func(r *sim.Record, i int) sim.Micros { return r.Stations[i].States[state] })
	}
	for _, i := range stations {
		for _, of := range stoppedTogether(v.scenario.Line, i) {
			for k, name := range v.model.StopNames(of) {
				cause := Cause{State: sim.Down, Station: v.scenario.Line.Stations[of].Name, Stop: name}
				causes = v.addCause(causes, cause, []int{i},
					func(r *sim.Record, _ int) sim.Micros { return stopped(&r.Stations[of].Stops[k]) })
			}
		}
	}
	slices.SortStableFunc(causes, func(a, b Cause) int { return cmp.Compare(b.Pieces.Mean, a.Pieces.Mean) })
	return causes
}

// addCause measures a cause over stations and adds it if it ever happened.
func (v view) addCause(causes []Cause, cause Cause, stations []int, time func(*sim.Record, int) sim.Micros) []Cause {
	minutes := func(r *sim.Record, i int) float64 { return float64(time(r, i)) / float64(sim.Minute) }
	cause.Minutes = v.estimate(func(r *sim.Record) float64 {
		sum := 0.0
		for _, i := range stations {
			sum += minutes(r, i)
		}
		return sum
	})
	cause.Pieces = v.estimate(func(r *sim.Record) float64 {
		sum := 0.0
		for _, i := range stations {
			sum += minutes(r, i) * v.figures.Stations[i].Set.Answer
		}
		return sum
	})
	if cause.Minutes.Mean == 0 {
		return causes
	}
	return append(causes, cause)
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
