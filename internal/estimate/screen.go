package estimate

import (
	"slices"

	"gonum.org/v1/gonum/stat"
)

// screen gives up every survivor that lies too far below another.
func (s *Selection) screen() {
	means := make([]float64, len(s.samples))
	for _, i := range s.alive {
		means[i] = stat.Mean(s.samples[i], nil)
	}
	r := len(s.samples[s.alive[0]])
	var kept []int
	for _, i := range s.alive {
		if slices.ContainsFunc(s.alive, func(l int) bool { return i != l && means[i] < means[l]-s.slack(i, l, r) }) {
			s.out = append(s.out, Elimination{i, r})
		} else {
			kept = append(kept, i)
		}
	}
	s.alive = kept
}

// slack is W = max(0, zone/(2r) · (h² S²/zone² − r)), what a mean of r replications may lie below
// another and stay.
func (s *Selection) slack(i, l, r int) float64 {
	return max(0, s.zone/(2*float64(r))*(s.h2*s.variances[i][l]/(s.zone*s.zone)-float64(r)))
}

// variancesOfDifferences has S² of each pair of alternatives.
func variancesOfDifferences(samples [][]float64) [][]float64 {
	all := make([][]float64, len(samples))
	for i := range all {
		all[i] = make([]float64, len(samples))
		for l := range all[i] {
			if i != l {
				all[i][l] = stat.Variance(differences(samples[i], samples[l]), nil)
			}
		}
	}
	return all
}

// FirstStageVariance is S² of the differences between two alternatives in the first
// stage, the noise that the procedure allows for; 0 until that stage is complete.
func (s *Selection) FirstStageVariance(i, l int) float64 {
	if s.variances == nil {
		return 0
	}
	return s.variances[i][l]
}
