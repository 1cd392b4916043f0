package study

import (
	"slices"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
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
			group, any = append(group, v.goodIn(shift)), true
		}
		groups = append(groups, group)
	}
	if !any {
		return nil
	}
	return groups
}

// meanShifts are the good pieces of the mean shift, by replication, overtime left aside: the mean of the whole shifts of each kind
// in the window, weighted by how many of the kind there are in a week of the calendar. They are nil where the answer is not per
// shift of a calendar, where runs end with their orders, or where a window has no whole shift of some kind.
func (v view) meanShifts() []float64 {
	s := v.scenario
	if s.Answer.Per != "shift" || s.Calendar == nil || s.Run.UntilOrders {
		return nil
	}
	means := make([]float64, len(v.records))
	for i := range v.records {
		sum, weight := 0.0, 0
		for kind := range s.Calendar.Shifts {
			shift := &s.Calendar.Shifts[kind]
			if shift.Overtime || shift.AWeek == 0 {
				continue
			}
			mean, some := v.meanOfKind(&v.records[i], kind)
			if !some {
				return nil
			}
			sum, weight = sum+mean*float64(shift.AWeek), weight+shift.AWeek
		}
		means[i] = sum / float64(max(1, weight))
	}
	return means
}

// meanOfKind is the mean of the good pieces of the whole shifts of one kind; some says that there are any.
func (v view) meanOfKind(r *sim.Record, kind int) (mean float64, some bool) {
	sum, n := 0.0, 0
	for k := range r.Shifts {
		if r.Shifts[k].Shift == kind {
			sum, n = sum+v.goodIn(&r.Shifts[k]), n+1
		}
	}
	return sum / float64(max(1, n)), n > 0
}

// byShift are the good pieces of the whole shifts of each name, overtime too; nil where fewer than two names have any.
func (v view) byShift() (all []result.ShiftMade) {
	if v.scenario.Calendar == nil {
		return nil
	}
	for kind := range v.scenario.Calendar.Shifts {
		var means []float64
		for i := range v.records {
			if mean, some := v.meanOfKind(&v.records[i], kind); some {
				means = append(means, mean)
			}
		}
		if len(means) >= leastReplications {
			all = append(all, result.ShiftMade{Name: v.scenario.Calendar.Shifts[kind].Name, Good: estimateOf(means, v.confidence)})
		}
	}
	if len(all) < 2 {
		return nil
	}
	return all
}

// goodIn is the good pieces of the answer of one shift.
func (v view) goodIn(shift *sim.ShiftRecord) float64 {
	sum := int64(0)
	for _, at := range v.scenario.Answer.CountedAfter {
		sum += shift.Passed[at]
	}
	return float64(sum)
}

// goodTotal is the good pieces per mean shift where whole shifts of every kind lie in the windows, otherwise as total counts.
func (v view) goodTotal() result.Estimate {
	if shifts := v.meanShifts(); shifts != nil {
		return estimateOf(shifts, v.confidence)
	}
	return v.total(total(v.scenario))
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
	if shifts := v.meanShifts(); shifts != nil {
		return runningMean(shifts, v.confidence)
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
