package study

import (
	"context"
	"fmt"

	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// bound is one end of the span: a line and the records of its replications.
type bound struct {
	model   *sim.Model
	records []sim.Record
}

// bounds compiles both ends of the span.
func bounds(line sim.Line) (none, unlimited bound, err error) {
	if none.model, err = sim.Compile(withoutBuffers(line)); err != nil {
		return none, unlimited, fmt.Errorf("the line without buffers cannot be run:\n%w", err)
	}
	if unlimited.model, err = sim.Compile(withoutLimit(line)); err != nil {
		return none, unlimited, fmt.Errorf("the line with buffers without limit cannot be run:\n%w", err)
	}
	return none, unlimited, nil
}

// spanOf compares the replications that all three lines have finished, orders included where runs end with them.
func spanOf(s *scenario.Scenario, now []sim.Record, none, unlimited bound) Span {
	span := Span{Buffered: true, Shared: len(stuckOnFirst(s.Line)) > 0}
	a, b, c := paired(Counted(s, now), Counted(s, none.records), Counted(s, unlimited.records))
	span.Compared = len(a)
	if len(a) < leastReplications {
		a, _, _ = paired(now, none.records, unlimited.records)
		span.Unfinished = len(a) >= leastReplications
		return span
	}
	rate := func(records []sim.Record) ([]float64, result.Estimate) {
		col := columns{records: records, confidence: s.Run.Confidence}
		return col.column(func(r *sim.Record) float64 { return total(s)(r) / scheduledHours(r) }), col.perHour(GoodPieces(s))
	}
	nowTotals, nowRate := rate(a)
	noneTotals, noneRate := rate(b)
	unlimitedTotals, unlimitedRate := rate(c)
	span.Now, span.None, span.Unlimited = nowRate, noneRate, unlimitedRate
	if span.Worse() {
		return span
	}
	// Without a gain that can be told from chance there is nothing to recover; N is then 0.
	if share, ok := estimate.Recovered(noneTotals, nowTotals, unlimitedTotals, s.Run.Confidence); ok {
		span.Recovered = result.Estimate(share)
	}
	return span
}

// paired keeps the replications that all three have.
func paired(now, none, unlimited []sim.Record) (a, b, c []sim.Record) {
	index := func(records []sim.Record) map[int]int {
		at := make(map[int]int, len(records))
		for i := range records {
			at[records[i].Replication] = i
		}
		return at
	}
	inNone, inUnlimited := index(none), index(unlimited)
	for i := range now {
		n, okNone := inNone[now[i].Replication]
		u, okUnlimited := inUnlimited[now[i].Replication]
		if okNone && okUnlimited {
			a, b, c = append(a, now[i]), append(b, none[n]), append(c, unlimited[u])
		}
	}
	return a, b, c
}

// runBounds runs both ends of the span with the seed and replications of the study.
func runBounds(ctx context.Context, p pass, none, unlimited bound) (bound, bound) {
	for _, end := range []*bound{&none, &unlimited} {
		p.newEngine = func() engine { return end.model.NewEngine() }
		end.records = p.run(ctx)
	}
	return none, unlimited
}

// span puts the span into the outcome; an end of it that locks gives none, with a warning.
func (j *job) span(o *Outcome) {
	for _, end := range []bound{j.none, j.unlimited} {
		if err := locked(end.records); err != nil {
			o.Span = Span{Buffered: true, Locked: true}
			o.Results.Warnings = append(o.Results.Warnings, "The span from no buffer to buffers without limit is not shown; at one end of it "+err.Error()+".")
			return
		}
	}
	o.Span = spanOf(j.scenario, j.records, j.none, j.unlimited)
	if n := o.Span.Compared; j.scenario.Run.UntilOrders && o.Span.None.N > 0 && n < o.Results.Replications {
		o.Results.Warnings = append(o.Results.Warnings, fmt.Sprintf("The span from no buffer to buffers without limit compares the %d of %d runs in which all orders are finished at both ends of it and as entered.", n, len(j.records)))
	}
}
