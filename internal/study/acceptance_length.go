package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

// runLengths finds how long the run must be to be passed with the wanted power: by the line as entered if it is truly above the agreed
// efficiency, otherwise by the best of the curve. One long run tells of all that are shorter.
func (a *acceptance) runLengths() error {
	l := result.RunLength{Power: a.options.Power, Lengths: []result.LengthPasses{}}
	agreed := a.scenario.Agreement
	point := a.entered
	l.Entered = true
	if n := len(a.points); point.True.Low <= agreed.Efficiency && n > 0 && a.points[n-1].True.Mean > agreed.Efficiency {
		point, l.Entered = a.points[n-1], false
	}
	l.True, l.Factor, l.FormulaHours = point.True, point.Factor, point.Formula.RunHours
	if l.Asked = point.True.Mean > agreed.Efficiency; l.Asked {
		a.count.expect(a.effortOf(lengthRuns))
		if err := a.lengths(&l); err != nil {
			return err
		}
	}
	a.results.RunLength = l
	return nil
}

func (a *acceptance) lengths(l *result.RunLength) error {
	agreed := a.scenario.Agreement
	longest := spell{agreed.From, longestRun * agreed.Run}
	every := agreed.Run / 2
	records, err := a.records("run length", l.Factor, a.effortOf(lengthRuns), func(o *sim.Options) { o.Every = every }, longest)
	if err != nil {
		return err
	}
	series := outputSeries(a.scenario, records)
	sums := make([]float64, len(series))
	calendar := &a.scenario.Line.Calendar
	begin := calendar.After(longest.from)
	for k := range series[0] {
		scheduled := calendar.Scheduled(begin+sim.Micros(k+1)*every) - calendar.Scheduled(begin)
		works := a.worksBy(begin, begin+sim.Micros(k+1)*every)
		shown := make([]float64, len(series))
		for i := range series {
			sums[i] += series[i][k]
			shown[i] = sums[i] / (a.full * minutes(works))
		}
		if works == 0 {
			continue
		}
		if n := len(l.Lengths); n > 0 && l.Lengths[n-1].Hours == hours(scheduled) {
			l.Lengths = l.Lengths[:n-1] // the line was off shift in between
		}
		l.Lengths = append(l.Lengths, result.LengthPasses{Hours: hours(scheduled), Passing: a.passing(shown)})
	}
	l.Hours = from(l, func(e result.Estimate) float64 { return e.Mean })
	l.Low = from(l, func(e result.Estimate) float64 { return e.High })
	l.High = from(l, func(e result.Estimate) float64 { return e.Low })
	return nil
}

// from is the length from which on a value is at least the power; 0 where it is not so at the longest.
func from(l *result.RunLength, value func(result.Estimate) float64) float64 {
	found := 0.0
	for i := len(l.Lengths) - 1; i >= 0 && value(l.Lengths[i].Passing) >= l.Power; i-- {
		found = l.Lengths[i].Hours
	}
	return found
}
