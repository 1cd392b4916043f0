package study

import (
	"context"
	"errors"
	"strings"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// Run runs the replications of a scenario and sums them up. The outcome
// depends on the scenario and the span of replications only, not on the
// number of workers. If the context is cancelled, the outcome has what is finished and
// says so; below two replications nothing can be kept and an error says that.
// A replication in which the line locks is an error: a study with a deadlock gives no estimate. So are runs that were to end with
// their orders where fewer than two did.
func Run(ctx context.Context, s *scenario.Scenario, o Options) (*Outcome, error) {
	o, err := o.filled(s)
	if err != nil {
		return nil, err
	}
	model, err := sim.Compile(s.Line)
	if err != nil {
		return nil, err
	}
	if err := CheckMeasures(o.Show, s, model); err != nil {
		return nil, err
	}
	settled, warmUp := findWarmUp(ctx, s, model, o.Workers)
	job := job{scenario: settled, options: o, model: model, ctx: ctx, warmUp: warmUp, wanted: o.count()}
	if err := job.run(); err != nil {
		return nil, err
	}
	return job.outcome(), nil
}

// job is one study on its way.
type job struct {
	scenario        *scenario.Scenario
	options         Options
	model           *sim.Model
	ctx             context.Context
	records         []sim.Record
	none, unlimited bound
	spanned         bool
	warmUp          WarmUp
	precision       Precision
	// wanted is how many replications there are to be.
	wanted int
}

// ErrNothingKept says that a study was stopped too early to say anything.
var ErrNothingKept = errors.New("stopped before two replications were finished: nothing was kept")

func (j *job) run() error {
	j.spanned = j.options.Bounds && buffered(j.scenario.Line)
	if j.spanned {
		var err error
		if j.none, j.unlimited, err = bounds(j.scenario.Line); err != nil {
			return err
		}
	}
	count := counter{total: j.runs(), tell: j.options.Progress}
	p := pass{
		from: j.options.From, to: j.options.To, workers: j.options.Workers, finished: count.finished,
		newEngine: func() engine { return j.model.NewEngine() },
		options:   j.optionsOf,
	}
	if j.options.Part || j.scenario.Run.HalfWidth == 0 {
		j.records = p.run(j.ctx)
	} else {
		j.records = j.runUntilPrecise(p)
		p.from, p.to = 1, max(1, len(j.records))
	}
	if len(j.records) < leastReplications {
		return ErrNothingKept
	}
	if err := locked(j.records); err != nil {
		return err
	}
	if err := unfinished(j.scenario, j.records); err != nil {
		return err
	}
	if j.spanned {
		p.options = j.plainOptions
		j.none, j.unlimited = runBounds(j.ctx, p, j.none, j.unlimited)
	}
	return nil
}

func (j *job) runs() int {
	if j.spanned {
		return 3 * j.options.count()
	}
	return j.options.count()
}

func (j *job) plainOptions(replication int) sim.Options {
	run := j.scenario.Run
	return sim.Options{Seed: run.Seed, Replication: replication, WarmUp: run.WarmUp, Measure: run.Measure, UntilOrders: run.UntilOrders}
}

// optionsOf adds what reports look at: the classes of level, and what waits go back to, which costs about half
// as much again in this pass and nothing in those of the span; a part is kept with all that may be asked of it later.
func (j *job) optionsOf(replication int) sim.Options {
	o := j.plainOptions(replication)
	o.Classes, o.Attribute, o.Waits, o.ShortUpTo = true, true, true, j.scenario.KeyFigures.MinorLimits()
	o.Pauses = j.options.Part || needsPauses(j.options.Show)
	if j.options.Part || needsAges(j.options.Show) {
		o.AgesAt = j.scenario.Answer.CountedAfter
	}
	return o
}

func (j *job) outcome() *Outcome {
	v := viewOf(j.scenario, j.model, j.records)
	groups, _ := v.singles()
	shifts := flat(groups)
	limiting := v.figures.Limiting()
	o := Outcome{
		Scenario: j.scenario, Model: j.model, Records: j.records, UsedUp: v.usedUp(),
		Results: v.results(j.options.Show), Shifts: shifts,
		RunningMean: v.runningTotal(), MeanShift: v.meanShifts() != nil,
		Constraint: strings.Join(v.figures.Bounds.Constraint, " and "),
		Causes:     causesOf(v, limiting),
		Classes:    classes(v.records, len(j.model.Places())),
		Ages:       allAges(v.records),
	}
	o.Interrupted = len(j.records) < j.wanted
	o.WarmUp, o.Precision = j.warmUp, j.precision
	o.Results.Warnings = append(o.Results.Warnings, j.doubts()...)
	if j.options.Trace {
		j.trace(&o)
	}
	if j.spanned {
		o.Interrupted = o.Interrupted || len(j.none.records) < len(j.records) || len(j.unlimited.records) < len(j.records)
		j.span(&o)
	}
	return &o
}
