package study

import (
	"fmt"

	"tuckline/internal/estimate"
	"tuckline/sim"
)

// fewReplications is the number below which an interval is not to be relied
// on (common practice, no source).
const fewReplications = 20

// warnings are whole sentences on what changes how the answer may be used.
func warnings(v view) []string {
	all := append([]string{}, v.figures.Warnings...)
	if n := len(v.records); n < fewReplications {
		all = append(all, fmt.Sprintf("Only %d replications were run: take %d or more before you rely on the intervals.", n, fewReplications))
	}
	all = append(all, v.lopsided()...)
	if v.scenario.Run.WarmUp == 0 {
		all = append(all, "There is no warm-up: the figures include the filling of an empty line.")
	}
	if n := endedEarly(v.records); n > 0 {
		all = append(all, fmt.Sprintf("%d of %d replications used up their input before the end of the window: the rest of the window counts as standing still.", n, len(v.records)))
	}
	return all
}

func endedEarly(records []sim.Record) int {
	n := 0
	for i := range records {
		if records[i].End == sim.InputUsedUp {
			n++
		}
	}
	return n
}

// lopsided warns of totals so skewed that the t interval misses more often than it says.
func (v view) lopsided() []string {
	var all []string
	for _, doubt := range estimate.Summarise(v.column(total(v.scenario)), v.confidence, 0).Doubts {
		if doubt.Kind == estimate.Skewed {
			all = append(all, doubt.String())
		}
	}
	return all
}
