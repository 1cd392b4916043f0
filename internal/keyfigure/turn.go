package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// findTurns finds the stations that put their pieces into their branches in turn.
func (f *flow) findTurns() {
	for i := range f.line.Stations {
		joint := &f.joints[f.out[i]]
		if !f.inTurn(i) || len(joint.feeders) != 1 {
			continue
		}
		var branches [][]int
		for _, branch := range f.branches(i) {
			branches = append(branches, f.takersBehind(branch))
		}
		if all := slices.Concat(branches...); len(all) == len(joint.takers) { // none behind two of them
			joint.turns = branches
		}
	}
}

// inTurn says that a station puts its pieces into several branches in turn.
func (f *flow) inTurn(station int) bool {
	sends := &f.line.Stations[station].Sends
	return len(sends.To) > 1 && sends.Rule == sim.InTurn
}

// branches are the nodes that a station with a choice puts its pieces into.
func (f *flow) branches(station int) []int { return f.after[station] }

// takersBehind are the stations that take what is put into a node: the node itself, or those
// behind a buffer.
func (f *flow) takersBehind(node int) []int {
	if node < len(f.line.Stations) {
		return []int{node}
	}
	return f.downstream(node)
}

// portionTaken is the part of a station in what is taken from a joint: by set speeds, or, where
// pieces come in turn, as much for every branch.
func (f *flow) portionTaken(stations []Station, i, at int) float64 {
	takes := func(k int) float64 { return stations[k].Set.Cycles * f.takesFrom(k, at) }
	joint := &f.joints[at]
	for _, branch := range joint.turns {
		if slices.Contains(branch, i) {
			return portion(branch, i, takes) / float64(len(joint.turns))
		}
	}
	return portion(joint.takers, i, takes)
}

// portionGiven is the part of a station in what its joint gets.
func (f *flow) portionGiven(stations []Station, i int) float64 {
	return portion(f.joints[f.out[i]].feeders, i, given(stations))
}

// portionInto is the part of what a station gives that goes into one of the nodes behind it.
func (f *flow) portionInto(stations []Station, station, node int) float64 {
	branches := f.branches(station)
	switch {
	case len(branches) < 2:
		return 1
	case f.inTurn(station):
		return 1 / float64(len(branches))
	}
	return portion(branches, node, func(branch int) float64 {
		sum := 0.0
		for _, k := range f.takersBehind(branch) {
			sum += stations[k].Set.Cycles * f.takesFrom(k, f.out[station])
		}
		return sum
	})
}
