package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// handOvers derives the places that the program puts where no buffer is
// written: the smallest that cannot lock, or before empty pockets one stack more, as compiling the line finds them.
// The warning says why a line cannot be compiled; one that was read can.
func handOvers(f *flow, stations []Station) (places []Place, warning string) {
	model, err := sim.Compile(*f.line)
	if err != nil {
		return nil, "This line cannot run: " + err.Error()
	}
	for _, put := range model.Places() {
		if !put.HandOver {
			continue
		}
		from := f.lastOfUnits(put.From)
		at := -1
		for _, i := range from {
			at = f.out[i]
		}
		p := Place{Name: put.Name, Kind: "hand-over", From: put.From, To: put.To, Capacity: put.Capacity, Stacks: put.Stacks}
		for i := range stations {
			s := &stations[i]
			if slices.Contains(from, i) {
				p.Unit = s.GivesUnit
				p.Feed += s.Set.Pieces * f.portionInto(stations, i, f.behind(i, put.To))
			}
			if slices.Contains(put.To, s.Name) {
				p.Drain += s.Top.Cycles * f.takesFrom(i, at)
			}
		}
		p.fill()
		places = append(places, p)
	}
	return places, ""
}

// lastOfUnits finds the stations of names; of stations on one drive the last gives, by
// whichever of them the unit is known.
func (f *flow) lastOfUnits(names []string) []int {
	var found []int
	for _, unit := range units(f.line) {
		if slices.ContainsFunc(unit, func(i int) bool { return slices.Contains(names, f.line.Stations[i].Name) }) {
			found = append(found, unit[len(unit)-1])
		}
	}
	return found
}

// behind is the node behind a station that has one of the names, or -1.
func (f *flow) behind(station int, names []string) int {
	for _, node := range f.after[station] {
		if slices.Contains(names, f.name(node)) {
			return node
		}
	}
	return -1
}
