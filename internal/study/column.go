package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

// columns turns records into one number a replication and those into
// estimates. All sums run in order of replication, so that the bytes of a
// result depend on the records only.
type columns struct {
	records    []sim.Record
	confidence float64
}

// estimate is the estimate of a value over all replications.
func (c columns) estimate(value func(*sim.Record) float64) result.Estimate {
	return estimateOf(c.column(value), c.confidence)
}

// share is the estimate of a time as a share of the window.
func (c columns) share(time func(*sim.Record) sim.Micros) result.Estimate {
	return c.estimate(func(r *sim.Record) float64 { return float64(time(r)) / float64(r.Window) })
}

// perHour is the estimate of a count per scheduled hour of the window.
func (c columns) perHour(count func(*sim.Record) int64) result.Estimate {
	return c.estimate(func(r *sim.Record) float64 { return float64(count(r)) / scheduledHours(r) })
}

// scheduledHours are those of the window in which the lines are not off shift: all without a calendar. A window
// without any, in which nothing is counted, keeps its length.
func scheduledHours(r *sim.Record) float64 {
	if r.Scheduled > 0 {
		return hours(r.Scheduled)
	}
	return hours(r.Window)
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
