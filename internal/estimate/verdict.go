package estimate

import (
	"slices"

	"gonum.org/v1/gonum/stat"
)

// Elimination says that an alternative was given up after so many replications.
type Elimination struct{ Alternative, Replications int }

// Verdict is what a selection ends with.
type Verdict struct {
	// Best is the alternative chosen, counted from 0.
	Best int
	// Alike are the others, in their order, whose mean lies within the zone below the
	// best over the replications that both have: not distinguishable from it.
	Alike []int
	// Replications is how many the best has.
	Replications int
	// Eliminations are in the order in which they happened.
	Eliminations []Elimination
}

// Verdict is the choice; ok is false while it is not made.
func (s *Selection) Verdict() (v Verdict, ok bool) {
	if !s.Done() {
		return Verdict{}, false
	}
	v.Best = s.alive[0]
	for _, i := range s.alive {
		if stat.Mean(s.samples[i], nil) > stat.Mean(s.samples[v.Best], nil) {
			v.Best = i
		}
	}
	best := s.samples[v.Best]
	v.Replications = len(best)
	v.Eliminations = slices.Clone(s.out)
	for i, sample := range s.samples {
		if i != v.Best && stat.Mean(best[:len(sample)], nil)-stat.Mean(sample, nil) < s.zone {
			v.Alike = append(v.Alike, i)
		}
	}
	return v, true
}
