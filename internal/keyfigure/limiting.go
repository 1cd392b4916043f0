package keyfigure

import "slices"

// Limiting are the stations, by their place in the line, that limit it. Where only the rate of a store does it is
// the station that could do least: of it can be told how its time goes. None where nothing reaches the count.
func (f *Figures) Limiting() []int {
	var all []int
	slowest := -1
	for i := range f.Stations {
		if slices.Contains(f.Bounds.Constraint, f.Stations[i].Name) {
			all = append(all, i)
		}
		if most := f.Stations[i].AtMost.Answer; most > 0 && (slowest < 0 || most < f.Stations[slowest].AtMost.Answer) {
			slowest = i
		}
	}
	if len(all) == 0 && f.Bounds.Gated && slowest >= 0 {
		return []int{slowest}
	}
	return all
}

// Gates are the stores whose rate limits the line.
func (f *Figures) Gates() []string {
	var all []string
	for _, name := range f.Bounds.Constraint {
		if !slices.ContainsFunc(f.Stations, func(s Station) bool { return s.Name == name }) {
			all = append(all, name)
		}
	}
	return all
}
