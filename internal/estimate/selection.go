package estimate

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// smallestFirstStage is the least number of replications of the first stage:
// below it the variances of differences are too uncertain (common practice).
const smallestFirstStage = 20

// KimNelson are the constants of the procedure of Kim and Nelson (ACM TOMACS 11(3)
// (2001) 251) with c = 1: η = ((2α/(k−1))^(−2/(n₀−1)) − 1)/2 and h² = 2η(n₀ − 1),
// for k ≥ 2 alternatives, α = 1 − confidence and a first stage of n₀ ≥ 2.
func KimNelson(k int, confidence float64, first int) (eta, h2 float64) {
	freedom := float64(first - 1)
	eta = (math.Pow(2*(1-confidence)/float64(k-1), -2/freedom) - 1) / 2
	return eta, 2 * eta * freedom
}

// Selection finds the alternative with the largest mean: a state machine that
// is handed one replication of all alternatives after the other, under common random
// numbers if there are any. If the best is ahead by the zone or more, it is
// chosen with the confidence. Start with NewSelection; while it is not Done, run the
// next replication of Survivors and Add it.
type Selection struct {
	zone    float64
	first   int
	h2      float64
	samples [][]float64
	alive   []int
	// variances are those of the differences in the first stage, by pair.
	variances [][]float64
	out       []Elimination
}

// NewSelection starts a choice among k alternatives. zone is the difference that
// nobody cares about, in the unit of the values; first is the number of
// replications of the first stage, at least 20. Everything that is wrong is said at once.
func NewSelection(k int, zone, confidence float64, first int) (*Selection, error) {
	return startSelection(k, zone, confidence, first, smallestFirstStage)
}

// NewShortSelection is NewSelection with a first stage from 2 up: for published
// runs of the procedure, never for a study.
func NewShortSelection(k int, zone, confidence float64, first int) (*Selection, error) {
	return startSelection(k, zone, confidence, first, 2)
}

func startSelection(k int, zone, confidence float64, first, least int) (*Selection, error) {
	var wrong []error
	if k < 2 {
		wrong = append(wrong, fmt.Errorf("a choice needs at least 2 alternatives, there are %d", k))
	}
	if !(zone > 0) || math.IsInf(zone, 0) {
		wrong = append(wrong, fmt.Errorf("the zone within which alternatives are alike must be above 0, it is %g", zone))
	}
	if !(confidence > 0 && confidence < 1) {
		wrong = append(wrong, fmt.Errorf("a confidence lies between 0 and 1, such as 0.95; it is %g", confidence))
	}
	if first < least {
		wrong = append(wrong, fmt.Errorf("the first stage needs at least %d replications, it has %d", least, first))
	}
	if k >= 2 && 1-confidence >= float64(k-1)/2 {
		wrong = append(wrong, fmt.Errorf("a confidence of %g asks for nothing with %d alternatives", confidence, k))
	}
	if len(wrong) > 0 {
		return nil, errors.Join(wrong...)
	}
	s := &Selection{zone: zone, first: first, samples: make([][]float64, k), alive: make([]int, k)}
	_, s.h2 = KimNelson(k, confidence, first)
	for i := range s.alive {
		s.alive[i] = i
	}
	return s, nil
}

// Survivors are the alternatives whose next replication is wanted, in their order.
func (s *Selection) Survivors() []int { return slices.Clone(s.alive) }

// Done says that the choice is made.
func (s *Selection) Done() bool {
	r := len(s.samples[s.alive[0]])
	return len(s.alive) == 1 || r >= s.first && r > s.longest()
}

// Most is the number of replications after which the choice is made at the
// latest, max N + 1 with N = ⌊h² S² / zone²⌋; 0 until the first stage is complete.
func (s *Selection) Most() int {
	if s.variances == nil {
		return 0
	}
	return max(s.first, s.longest()+1)
}

// longest is the largest N over all pairs.
func (s *Selection) longest() int {
	n := 0.0
	for _, row := range s.variances {
		n = max(n, math.Floor(s.h2*slices.Max(row)/(s.zone*s.zone)))
	}
	return int(min(n, 1<<53))
}

// Add takes one replication: a finite value for each alternative, of which only
// those of the survivors are read. When done, nothing changes.
func (s *Selection) Add(values []float64) error {
	if len(values) != len(s.samples) {
		return fmt.Errorf("a replication needs a value for each of the %d alternatives, it has %d", len(s.samples), len(values))
	}
	for _, i := range s.alive {
		if math.IsNaN(values[i]) || math.IsInf(values[i], 0) {
			return fmt.Errorf("the value of alternative %d is %g, not a number that can be compared", i+1, values[i])
		}
	}
	if s.Done() {
		return nil
	}
	for _, i := range s.alive {
		s.samples[i] = append(s.samples[i], values[i])
	}
	if len(s.samples[s.alive[0]]) == s.first {
		s.variances = variancesOfDifferences(s.samples)
	}
	if s.variances != nil {
		s.screen()
	}
	return nil
}
