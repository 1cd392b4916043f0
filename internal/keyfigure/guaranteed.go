package keyfigure

import "fmt"

// findInRigid derives how much of the time each station works in the line without any buffer:
// output × cycles for each piece × mean cycle.
func (f *Figures) findInRigid() {
	for i := range f.Stations {
		s := &f.Stations[i]
		if s.Set.Cycles > 0 {
			s.InRigid = f.Bounds.Rigid * s.cycles * s.meanCycle(s.Set)
		}
	}
}

// guaranteedText holds the contract efficiency against that of the station alone and in the line.
func (s *Station) guaranteedText() string {
	word, gap := "more", s.Alone-s.Guaranteed
	if gap < 0 {
		word, gap = "less", -gap
	}
	return fmt.Sprintf("%s of the machine alone; by these stops it runs %s of the time alone, %s points %s, and works %s of it in the line without any buffer",
		percent(s.Guaranteed), percent(s.Alone), fixed(100*gap, 1), word, percent(s.InRigid))
}
