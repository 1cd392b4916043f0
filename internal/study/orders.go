package study

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

// orderKey is an order of a round.
type orderKey struct{ round, order int }

// orders say what became of the orders; nil without any.
func (v view) orders() *result.Orders {
	if v.scenario.Orders == nil {
		return nil
	}
	all := &result.Orders{Until: v.scenario.Run.UntilOrders, Each: []result.OrderMade{}, Left: v.left()}
	if !v.scenario.Orders.WithoutEnd {
		last := v.lastFinish()
		for _, t := range last {
			if t == never {
				all.Unfinished++
			}
		}
		finish := v.clocked(last)
		all.Finish = &finish
	}
	for _, key := range v.orderKeys() {
		all.Each = append(all.Each, v.order(key))
	}
	return all
}

// orderKeys are all that were begun in any run.
func (v view) orderKeys() []orderKey {
	var keys []orderKey
	for i := range v.all {
		for _, one := range v.all[i].Orders {
			if key := (orderKey{one.Round, one.Order}); !slices.Contains(keys, key) {
				keys = append(keys, key)
			}
		}
	}
	slices.SortFunc(keys, func(a, b orderKey) int { return cmp.Or(cmp.Compare(a.round, b.round), cmp.Compare(a.order, b.order)) })
	return keys
}

// lastFinish is when the last order of the list was finished, by replication; never where not all were.
func (v view) lastFinish() []sim.Micros {
	all := make([]sim.Micros, len(v.all))
	for i := range v.all {
		many := 0
		for _, one := range v.all[i].Orders {
			all[i] = max(all[i], one.Finished)
			many++
		}
		if many < len(v.scenario.Orders.Batches) {
			all[i] = never
		}
	}
	return all
}

func (v view) order(key orderKey) result.OrderMade {
	batch := v.scenario.Orders.Batches[key.order]
	one := result.OrderMade{Name: batch.Name, Round: key.round, Due: batch.DueAt}
	began, finished := make([]sim.Micros, len(v.all)), make([]sim.Micros, len(v.all))
	var input, good, changeover []float64
	inTime := 0
	for i := range v.all {
		began[i], finished[i] = never, never
		for _, r := range v.all[i].Orders {
			if (orderKey{r.Round, r.Order}) != key || r.Began == never {
				continue
			}
			began[i], finished[i] = r.Began, r.Finished
			one.Began++
			changeover = append(changeover, hours(r.Began-r.Changed))
			if r.Finished == never {
				continue
			}
			one.Ended++
			input, good = append(input, float64(r.Input)), append(good, float64(r.Good))
			if r.Finished <= batch.Due {
				inTime++
			}
		}
	}
	one.Begins, one.Finishes = v.clocked(began), v.clocked(finished)
	one.Input, one.Good, one.Changeover = estimateOf(input, v.confidence), estimateOf(good, v.confidence), estimateOf(changeover, v.confidence)
	if batch.DueAt != "" && key.round == 0 {
		one.InTime = result.Estimate(estimate.Wilson(inTime, len(v.all), v.confidence))
	}
	return one
}

// clocked are quantiles of times over all runs; what did not come to pass is later than all else.
func (v view) clocked(times []sim.Micros) result.Clocked {
	var passed []float64
	for _, t := range times {
		if t != never {
			passed = append(passed, float64(t))
		}
	}
	at := func(p float64) result.ClockTime { return v.clockTime(passed, len(times), p) }
	return result.Clocked{P5: at(0.05), P50: at(0.50), P95: at(0.95)}
}

// rankOf is the place, from 0, of the least of so many values that this share of all do not exceed. Times are not put between two
// runs: between Friday and Monday nobody finishes anything.
func rankOf(runs int, p float64) int { return max(0, int(math.Ceil(p*float64(runs)-1e-9))-1) }

func (v view) clockTime(passed []float64, runs int, p float64) result.ClockTime {
	rank := rankOf(runs, p)
	if rank >= len(passed) {
		return result.ClockTime{}
	}
	t := sim.Micros(slices.Sorted(slices.Values(passed))[rank])
	return result.ClockTime{Within: true, Hours: hours(t), At: v.scenario.Calendar.Clock(t)}
}

// left is what was left at the ends of orders.
func (v view) left() []result.Left {
	var all []result.Left
	add := func(of, what, unit string, count func(*sim.Record) int64) {
		if e := v.perHour(count); e.Mean > 0 {
			all = append(all, result.Left{Of: of, What: what, Unit: unit, PerHour: e})
		}
	}
	for i := range v.scenario.Line.Stations {
		name, people := v.scenario.Line.Stations[i].Name, v.scenario.Stations[i]
		add(name, "rejected", people.TakesUnit, func(r *sim.Record) int64 { return r.Stations[i].PartRejected })
		add(name, "closed", people.GivesUnit, func(r *sim.Record) int64 { return r.Stations[i].PartCycles * v.scenario.Line.Stations[i].Gives })
	}
	for i := range v.scenario.Line.Buffers {
		add(v.scenario.Line.Buffers[i].Name, "cleared", v.scenario.Buffers[i].Unit, func(r *sim.Record) int64 { return r.Buffers[i].Cleared })
	}
	return all
}

// finishTime is when the last order was finished.
func finishTime(v view, _ int, _ string) []result.Measure {
	if v.scenario.Orders == nil || v.scenario.Orders.WithoutEnd {
		return nil
	}
	var rows []result.Measure
	passed, last := []float64{}, v.lastFinish()
	for _, t := range last {
		if t != never {
			passed = append(passed, hours(t))
		}
	}
	for _, p := range []float64{0.05, 0.50, 0.95} {
		at := v.clockTime(scaledAll(passed, float64(sim.Hour)), len(last), p)
		row := result.Measure{Of: fmt.Sprintf("P%.0f", 100*p), Unit: "h"}
		if at.Within {
			row.Value = result.Estimate{Mean: at.Hours, Low: at.Hours, High: at.Hours, N: 1}
			if e, ok := estimate.QuantileInterval(passed, p, v.confidence); ok && len(passed) == len(last) {
				row.Value = result.Estimate(e)
				row.Value.Mean = at.Hours
			}
			if at.At != "" {
				row.Of += ", " + at.At
			}
		} else {
			row.Of += ", not within the run"
		}
		rows = append(rows, row)
	}
	return rows
}

func scaledAll(values []float64, by float64) []float64 {
	all := make([]float64, len(values))
	for i := range values {
		all[i] = values[i] * by
	}
	return all
}

// changeovers counts the changeovers that began in the window, that before the first order of a line being none.
func changeovers(v view, _ int, per string) []result.Measure {
	from := v.scenario.Run.WarmUp
	return one("line", v.count(per, func(r *sim.Record) float64 {
		n, seen := 0, map[int]bool{}
		for _, order := range r.Orders {
			if seen[order.Line] && order.Changed >= from && order.Changed < from+r.Window && order.Began > order.Changed {
				n++
			}
			seen[order.Line] = true
		}
		return float64(n)
	}))
}

// ordersEnd warns of orders that end before the window does.
func (v view) ordersEnd() string {
	if v.scenario.Orders == nil || v.scenario.Orders.WithoutEnd || v.scenario.Run.UntilOrders {
		return ""
	}
	n, end := 0, v.scenario.Run.WarmUp+v.scenario.Run.Measure
	for _, t := range v.lastFinish() {
		if t < end {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("In %d of %d %s all orders are finished before the measured window ends: the rest of it counts as waiting for input. Write more orders, or times: without end.", n, len(v.records), windows(v.scenario))
}
