package study

import (
	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

// columns turns records into one number a replication and those into
// estimates. All sums run in order of replication, so that the bytes of a
// result depend on the records only.
type columns struct {
	records    []sim.Record
	confidence float64
	// span is the scheduled hours of a shift or week of the calendar, whichever the answer is per; 0 where the
	// measured window stands for it.
	span float64
}

// over is a value per unit of the length of each window. Windows that differ, as those of runs that end with their orders, weigh
// as much as they are long: it is the ratio of the means.
func (c columns) over(value, length func(*sim.Record) float64) result.Estimate {
	return c.quotient(c.column(value), c.column(length))
}

// quotient is over of values that are there, by replication.
func (c columns) quotient(values, lengths []float64) result.Estimate {
	if differ(lengths) {
		if ratio, ok := estimate.LinearRatio(values, lengths, c.confidence); ok {
			return result.Estimate(ratio)
		}
	}
	var each []float64
	for i := range values {
		if lengths[i] != 0 {
			each = append(each, values[i]/lengths[i])
		}
	}
	return estimateOf(each, c.confidence)
}

// differ says that not all values are the same.
func differ(values []float64) bool {
	for _, v := range values {
		if v != values[0] {
			return true
		}
	}
	return false
}

// share is the estimate of a time as a share of the scheduled time.
func (c columns) share(time func(*sim.Record) sim.Micros) result.Estimate {
	return c.over(func(r *sim.Record) float64 { return float64(time(r)) }, scheduled)
}

// clockShare is the estimate of a time as a share of all time, that between shifts included.
func (c columns) clockShare(time func(*sim.Record) sim.Micros) result.Estimate {
	return c.over(func(r *sim.Record) float64 { return float64(time(r)) }, window)
}

func window(r *sim.Record) float64 { return float64(r.Window) }

// scheduled is the time of the window in which the lines are not off shift: all without a calendar. A window
// without any, in which nothing is counted, keeps its length.
func scheduled(r *sim.Record) float64 {
	if r.Scheduled > 0 {
		return float64(r.Scheduled)
	}
	return window(r)
}

// scheduledHours is the same in hours.
func scheduledHours(r *sim.Record) float64 {
	if r.Scheduled > 0 {
		return hours(r.Scheduled)
	}
	return hours(r.Window)
}

// perHour is the estimate of a count per scheduled hour of the window.
func (c columns) perHour(count func(*sim.Record) int64) result.Estimate {
	return c.over(func(r *sim.Record) float64 { return float64(count(r)) }, scheduledHours)
}

// count is a count per scheduled hour, or per shift or week where one is asked for: that of the calendar, or
// the measured window without one.
func (c columns) count(per string, value func(*sim.Record) float64) result.Estimate {
	if per == "hour" {
		return c.over(value, scheduledHours)
	}
	return c.total(value)
}

// total is a count per shift or week of the calendar where the answer is per one, otherwise per window.
func (c columns) total(value func(*sim.Record) float64) result.Estimate {
	return c.totalOf(c.column(value))
}

// totalOf is total of values that are there, by replication.
func (c columns) totalOf(values []float64) result.Estimate {
	if c.span > 0 && !c.spansWhole() {
		return scaled(c.quotient(values, c.column(scheduledHours)), c.span)
	}
	return estimateOf(values, c.confidence)
}

// spansWhole says that every window is as long as the shift or the week of the answer.
func (c columns) spansWhole() bool {
	for i := range c.records {
		if scheduledHours(&c.records[i]) != c.span {
			return false
		}
	}
	return true
}

func scaled(e result.Estimate, by float64) result.Estimate {
	return result.Estimate{Mean: e.Mean * by, Low: e.Low * by, High: e.High * by, SD: e.SD * by, N: e.N}
}

func (c columns) column(value func(*sim.Record) float64) []float64 {
	values := make([]float64, len(c.records))
	for i := range c.records {
		values[i] = value(&c.records[i])
	}
	return values
}

// ratio leaves out the replications in which the denominator is 0.
func (c columns) ratio(over, under func(*sim.Record) float64) result.Estimate {
	var values []float64
	for i := range c.records {
		if d := under(&c.records[i]); d != 0 {
			values = append(values, over(&c.records[i])/d)
		}
	}
	return estimateOf(values, c.confidence)
}

func hours(t sim.Micros) float64 { return float64(t) / float64(sim.Hour) }
