package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// handOvers derives the places that the program puts where no buffer is
// written: the smallest that cannot lock, as compiling the line finds them.
// The warning says why a line cannot be compiled; one that was read can.
func handOvers(line *sim.Line, stations []Station) (places []Place, warning string) {
	model, err := sim.Compile(*line)
	if err != nil {
		return nil, "This line cannot run: " + err.Error()
	}
	for _, put := range model.Places() {
		if !put.HandOver {
			continue
		}
		p := Place{Name: put.Name, Kind: "hand-over", From: put.From, To: put.To, Capacity: put.Capacity}
		for i := range stations {
			s := &stations[i]
			if slices.Contains(put.From, s.Name) {
				p.Unit = s.GivesUnit
				p.Feed += s.Set.Pieces
			}
			if slices.Contains(put.To, s.Name) {
				p.Drain += s.Top.Cycles * float64(s.Takes)
			}
		}
		p.fill()
		places = append(places, p)
	}
	return places, ""
}
