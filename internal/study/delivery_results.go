package study

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

// curvePoints is how many points the curve of the finish has at most.
const curvePoints = 40

// results are those of the start of the scenario.
func (d *delivery) results(records []sim.Record) result.Delivery {
	s := d.scenario
	r := result.Delivery{
		Format: result.Format, Title: s.Title, ScenarioHash: s.Hash(), Seed: s.Run.Seed, Confidence: s.Run.Confidence,
		Replications: len(records), Starts: s.Calendar.Clock(0), HorizonHours: hours(d.horizon), By: d.options.By,
		Orders: []result.DeliveryOrder{}, Warnings: append([]string{}, s.Warnings...),
	}
	for _, one := range d.due {
		r.Orders = append(r.Orders, result.DeliveryOrder{
			Name: s.Orders.Batches[one.order].Name, Due: one.text, DueHours: hours(one.at), InTime: d.inTime(records, []dueOrder{one}, 0),
		})
	}
	if len(d.due) > 0 {
		r.InTime = d.inTime(records, d.due, 0)
	} else {
		r.Warnings = append(r.Warnings, "No order has a date: write due: beside it, or ask with --by \"Fri 14:00\".")
	}
	finish := d.lastFinishes(records)
	r.Unfinished = len(records) - len(finish)
	if r.Unfinished > 0 {
		r.Warnings = append(r.Warnings, fmt.Sprintf("In %d of %d runs not all orders are finished within %s: they count as late, and are in no average.", r.Unfinished, len(records), weeksWords(d.horizon)))
	}
	for _, p := range []float64{0.05, 0.50, 0.90, 0.95} {
		r.Finish = append(r.Finish, d.finishAt(finish, len(records), p))
	}
	r.Curve = d.curve(finish, len(records))
	return r
}

// weeksWords is a horizon in whole weeks, or in hours.
func weeksWords(t sim.Micros) string {
	if week := 7 * 24 * sim.Hour; t%week == 0 {
		return fmt.Sprintf("%d weeks", t/week)
	}
	return hoursWords(t)
}

// lastFinishes are the times, rising, at which all orders were finished, of the runs in which they were.
func (d *delivery) lastFinishes(records []sim.Record) []float64 {
	var all []float64
	for i := range records {
		if last := slices.Max(d.finishes(&records[i])); last != never {
			all = append(all, float64(last))
		}
	}
	slices.Sort(all)
	return all
}

// finishAt is a quantile of the finish over all runs; those that are not finished are later than all others.
func (d *delivery) finishAt(finish []float64, runs int, p float64) result.DeliveryFinish {
	late := math.MaxFloat64 / 4
	all := slices.Clone(finish)
	for len(all) < runs {
		all = append(all, late)
	}
	e, ok := estimate.QuantileInterval(all, p, d.scenario.Run.Confidence)
	f := result.DeliveryFinish{P: p, Within: rankOf(runs, p) < len(finish)}
	f.HighWithin = f.Within && ok && e.High < late
	clock := func(v float64) (float64, string) {
		return hours(sim.Micros(v)), d.scenario.Calendar.Clock(sim.Micros(v))
	}
	if f.Within {
		f.Hours, f.At = clock(finish[rankOf(runs, p)])
	}
	if ok && e.Low < late {
		f.LowHours, f.LowAt = clock(e.Low)
	}
	if f.HighWithin {
		f.HighHours, f.HighAt = clock(e.High)
	}
	return f
}

// curve is the share of runs that are finished by times at equal distances, from the first finish to the last.
func (d *delivery) curve(finish []float64, runs int) []result.DeliveryPoint {
	all := []result.DeliveryPoint{}
	if len(finish) == 0 {
		return all
	}
	first, last := finish[0], finish[len(finish)-1]
	for k := range curvePoints {
		at := first + (last-first)*float64(k)/(curvePoints-1)
		if k == curvePoints-1 {
			at = last
		}
		n := sort.Search(len(finish), func(i int) bool { return finish[i] > at })
		all = append(all, result.DeliveryPoint{
			Hours: hours(sim.Micros(at)), At: d.scenario.Calendar.Clock(sim.Micros(at)),
			Finished: result.Estimate(estimate.Wilson(n, runs, d.scenario.Run.Confidence)),
		})
		if first == last {
			break
		}
	}
	return all
}
