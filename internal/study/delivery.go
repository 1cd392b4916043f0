package study

import (
	"context"
	"slices"

	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// deliveryReplications is the least number of runs of a delivery study where none is asked for: the tail of a distribution needs more
// runs than its mean.
const deliveryReplications = 200

// DeliveryOptions say what is asked about the delivery of the orders of a scenario.
type DeliveryOptions struct {
	// By is a clock by which all orders are to be finished, such as "Fri 14:00"; empty means the dates of the orders.
	By string
	// Chance is the probability for which the latest start is looked for, between 0 and 1.
	Chance float64
	// Replications is how many runs there are; 0 is those of the scenario, 200 at least.
	Replications int
	Workers      int
	// Progress, if not nil, is told how many runs are finished.
	Progress func(done, total int)
}

// DeliveryOutcome is everything that a delivery study found.
type DeliveryOutcome struct {
	Scenario *scenario.Scenario
	Model    *sim.Model
	Records  []sim.Record
	Results  result.Delivery
}

// Deliver simulates the orders of a scenario and says when they are finished, how likely that is in time, and which start is
// the latest for a wanted chance. It returns an InputError if that cannot be asked of the scenario, the error of the
// context if it was cancelled, and a DeadlockError if the line locks.
func Deliver(ctx context.Context, s *scenario.Scenario, o DeliveryOptions) (*DeliveryOutcome, error) {
	d, err := newDelivery(s, o)
	if err != nil {
		return nil, err
	}
	d.ctx = ctx
	model, err := sim.Compile(s.Line)
	if err != nil {
		return nil, err
	}
	records, err := d.simulate(0, 1, d.horizon)
	if err != nil {
		return nil, err
	}
	out := &DeliveryOutcome{Scenario: s, Model: model, Records: records, Results: d.results(records)}
	if len(d.due) > 0 {
		if out.Results.LatestStart, err = d.latestStart(records); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// delivery is such a study on its way.
type delivery struct {
	ctx      context.Context
	scenario *scenario.Scenario
	options  DeliveryOptions
	runs     int
	horizon  sim.Micros
	// due are the orders that have a date.
	due   []dueOrder
	count counter
}

// dueOrder is an order, by its place in the list, and when it is due, in engine time.
type dueOrder struct {
	order int
	at    sim.Micros
	text  string
}

func newDelivery(s *scenario.Scenario, o DeliveryOptions) (*delivery, error) {
	switch {
	case s.Orders == nil:
		return nil, &InputError{"the scenario has no orders: say with orders: what has to be made"}
	case s.Orders.WithoutEnd:
		return nil, &InputError{"the orders are without end, so they are never finished: write times: with a number"}
	case s.Calendar == nil:
		return nil, &InputError{"a date of delivery needs a calendar: say with calendar: when the line works"}
	}
	d := &delivery{scenario: s, options: o, runs: o.Replications, horizon: 52 * 7 * 24 * sim.Hour}
	if d.runs == 0 {
		d.runs = max(s.Run.Replications, deliveryReplications)
	}
	if s.Run.UntilOrders {
		d.horizon = s.Run.WarmUp + s.Run.Measure
	}
	if o.By == "" {
		for i, batch := range s.Orders.Batches {
			if batch.DueAt != "" {
				d.due = append(d.due, dueOrder{i, batch.Due, batch.DueAt})
			}
		}
	} else {
		at, err := s.Calendar.At(o.By)
		if err != nil {
			return nil, &InputError{"--by: " + err.Error()}
		}
		for i := range s.Orders.Batches {
			d.due = append(d.due, dueOrder{i, at, s.Calendar.Clock(at)})
		}
	}
	d.count = counter{total: d.runs, tell: o.Progress}
	return d, nil
}

// simulate runs the replications from one on with a start so much later than that of the scenario, below 0 earlier. Replications of
// one number share their random numbers, whatever the start. They end at the horizon at the latest.
func (d *delivery) simulate(shift sim.Micros, from int, horizon sim.Micros) ([]sim.Record, error) {
	line := d.scenario.Line
	line.Calendar = shifted(line.Calendar, shift)
	model, err := sim.Compile(line)
	if err != nil {
		return nil, err
	}
	p := pass{
		from: from, to: from + d.runs - 1, workers: Options{Workers: d.options.Workers}.workers(), finished: d.count.finished,
		newEngine: func() engine { return model.NewEngine() },
		options: func(replication int) sim.Options {
			return sim.Options{Seed: d.scenario.Run.Seed, Replication: replication, Measure: horizon, UntilOrders: true}
		},
	}
	records := p.run(d.ctx)
	if d.ctx.Err() != nil {
		return nil, d.ctx.Err()
	}
	return records, locked(records)
}

// finishes are the times at which each order was finished, Never if it was not.
func (d *delivery) finishes(r *sim.Record) []sim.Micros {
	all := make([]sim.Micros, len(d.scenario.Orders.Batches))
	for i := range all {
		all[i] = never
	}
	for _, one := range r.Orders {
		if one.Round == 0 {
			all[one.Order] = one.Finished
		}
	}
	return all
}

// never is a time that does not come.
const never = sim.Micros(1<<63 - 1)

// inTime is the share of runs in which the orders that are due are finished then, with a start so much later.
func (d *delivery) inTime(records []sim.Record, due []dueOrder, shift sim.Micros) result.Estimate {
	hits := 0
	for i := range records {
		all := d.finishes(&records[i])
		if !slices.ContainsFunc(due, func(one dueOrder) bool { return all[one.order] == never || all[one.order] > one.at-shift }) {
			hits++
		}
	}
	return result.Estimate(estimate.Wilson(hits, len(records), d.scenario.Run.Confidence))
}

// shifted is the calendar as it is seen from a start so much later: it begins in the middle of a span, the rest of which is its last.
func shifted(c sim.Calendar, by sim.Micros) sim.Calendar {
	cycle := c.Cycle()
	by = ((by % cycle) + cycle) % cycle
	var later, before []sim.Span
	at := sim.Micros(0)
	for _, span := range c.Spans {
		end := at + span.Lasts
		if end > by {
			rest := span
			rest.Lasts = end - max(at, by)
			later = append(later, rest)
		}
		if at < by {
			first := span
			first.Lasts = min(end, by) - at
			before = append(before, first)
		}
		at = end
	}
	return sim.Calendar{Spans: append(later, before...)}
}
