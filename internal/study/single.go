package study

import (
	"slices"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
)

// What single windows are whose spread is shown.
const (
	singleWindows = "windows"
	singleShifts  = "shifts"
	// noSingles: no whole shift or week lies in the windows, and they are none themselves.
	noSingles = "none"
)

// singles are the good pieces of single shifts, weeks or windows, by replication, and what they are. Whole shifts in the windows
// come first; without any the windows count where each is as long as a shift.
func (v view) singles() (groups [][]float64, of string) {
	if v.scenario.Answer.Per == "shift" && v.scenario.Calendar != nil {
		if groups := v.wholeShifts(); groups != nil {
			return groups, singleShifts
		}
	}
	if v.span > 0 && !v.spansWhole() || differ(v.column(window)) {
		return nil, noSingles
	}
	value := total(v.scenario)
	for i := range v.records {
		groups = append(groups, []float64{value(&v.records[i])})
	}
	return groups, singleWindows
}

// wholeShifts are the good pieces of the regular shifts that lie in the windows, by replication; nil without any.
func (v view) wholeShifts() (groups [][]float64) {
	any := false
	for i := range v.records {
		var group []float64
		for k := range v.records[i].Shifts {
			shift := &v.records[i].Shifts[k]
			if v.scenario.Calendar.Shifts[shift.Shift].Overtime {
				continue
			}
			sum := int64(0)
			for _, at := range v.scenario.Answer.CountedAfter {
				sum += shift.Passed[at]
			}
			group, any = append(group, float64(sum)), true
		}
		groups = append(groups, group)
	}
	if !any {
		return nil
	}
	return groups
}

// answerSpan is the scheduled hours of the shift or week of the calendar that the answer is per; 0 where there is none.
func answerSpan(s *scenario.Scenario) float64 {
	if s.Calendar == nil || s.Answer.Per == "hour" {
		return 0
	}
	return hours(s.AnswerSpan())
}

// runningTotal is the total after 2, 3, … replications.
func (v view) runningTotal() []result.Estimate {
	if v.scenario.Run.UntilOrders {
		return nil
	}
	values := v.column(total(v.scenario))
	if v.span > 0 && !v.spansWhole() {
		for i := range values {
			values[i] *= v.span / scheduledHours(&v.records[i])
		}
	}
	return runningMean(values, v.confidence)
}

// flat puts the values of all replications in one row.
func flat(groups [][]float64) []float64 { return slices.Concat(groups...) }
