package keyfigure

import (
	"math"
	"slices"

	"tuckline/sim"
)

// renewal says how often a stop comes whose clock other stops start anew.
type renewal struct {
	// every is the mean of its age between two of its strikes, in cycles or microseconds of
	// running; 0 means that its own law holds.
	every float64
	// never: the others always come first. unknown: no arithmetic here.
	never, unknown bool
}

// renewals derives them for stops that all start each other anew: then the clocks begin
// together, and the first to be due strikes. Source: renewal reward theorem; with two stops
// it is age replacement (Barlow and Proschan 1965; from memory). Stops without memory
// come as often as before. What is renewed in any other way is unknown.
func renewals(stops []sim.Stop, gives int64) []renewal {
	found := make([]renewal, len(stops))
	by := renewedBy(stops)
	for i := range stops {
		if len(by[i]) == 0 || memoryless(&stops[i]) || found[i] != (renewal{}) {
			continue
		}
		group := together(i, by, stops)
		if !eachRenewsEach(group, by, stops) {
			found[i].unknown = true
			continue
		}
		first, mean := race(group, stops, gives)
		for k, m := range group {
			switch {
			case first[k] == 0:
				found[m].never = true
			case !memoryless(&stops[m]):
				found[m].every = mean / first[k]
			}
		}
	}
	return found
}

// renewedBy lists for every stop the others that start its clock anew.
func renewedBy(stops []sim.Stop) [][]int {
	by := make([][]int, len(stops))
	for j := range stops {
		for i := range stops {
			if i != j && slices.Contains(stops[j].Renews, stops[i].Name) {
				by[i] = append(by[i], j)
			}
		}
	}
	return by
}

func memoryless(s *sim.Stop) bool {
	return s.Every.Kind() == "exponential" && math.Abs(s.Every.CV()-1) < 1e-9
}

// together are a stop, those that renew it, those that renew these, and so on.
func together(i int, by [][]int, stops []sim.Stop) []int {
	group := []int{i}
	for k := 0; k < len(group); k++ {
		if memoryless(&stops[group[k]]) {
			continue
		}
		for _, j := range by[group[k]] {
			if !slices.Contains(group, j) {
				group = append(group, j)
			}
		}
	}
	return group
}

// eachRenewsEach says that after every stop of a group all its clocks are as new, and on one clock.
func eachRenewsEach(group []int, by [][]int, stops []sim.Stop) bool {
	for _, m := range group {
		running, first := stops[m].Clock == sim.RunningClock, stops[group[0]].Clock == sim.RunningClock
		if stops[m].Clock == sim.CalendarClock || running != first {
			return false
		}
		for _, j := range group {
			if j != m && !memoryless(&stops[m]) && !slices.Contains(by[m], j) {
				return false
			}
		}
	}
	return true
}

// raceParts is how many parts of equal weight stand for each law; the shares are right to about
// one in twice as many.
const raceParts = 4096

// race is the probability of each of several stops to be due first when their clocks begin
// together, and the mean time until then. Of several due together the first by name strikes.
func race(group []int, stops []sim.Stop, gives int64) (first []float64, mean float64) {
	ages := make([][]float64, len(group))
	for k, m := range group {
		ages[k] = agesOf(&stops[m], gives)
	}
	first = make([]float64, len(group))
	for k := range group {
		for _, age := range ages[k] {
			weight := 1.0 / raceParts
			for j := range group {
				if j != k {
					weight *= outlive(ages[j], age, stops[group[k]].Name < stops[group[j]].Name)
				}
			}
			first[k] += weight
			mean += weight * age
		}
	}
	return first, mean
}

// agesOf are the middles of the parts of a law, in cycles or microseconds.
func agesOf(s *sim.Stop, gives int64) []float64 {
	law, scale := s.Every, 1.0
	if s.RateFactor > 0 {
		scale = 1 / s.RateFactor
	}
	if s.Clock == sim.PieceClock {
		scale /= float64(gives)
	}
	ages := make([]float64, raceParts)
	for k := range ages {
		ages[k] = scale * law.Quantile((float64(k)+0.5)/raceParts)
	}
	return ages
}

// outlive is the share of ages that are longer than a given one, or as long.
func outlive(ages []float64, age float64, orEqual bool) float64 {
	k, _ := slices.BinarySearch(ages, age)
	for !orEqual && k < len(ages) && ages[k] == age {
		k++
	}
	return float64(len(ages)-k) / float64(len(ages))
}
