package study

import (
	"context"
	"fmt"
	"slices"

	"tuckline/internal/estimate"
	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// AcceptanceOptions say how closely the chance to pass an agreed run is looked at.
type AcceptanceOptions struct {
	// Runs is how many agreed runs are simulated for each true efficiency; 0 means 400, fewer where the agreed run is
	// longer than 8 h or the line has many cycles, 100 at least.
	Runs int
	// Workers is how many replications run at a time; zero means one a core.
	Workers int
	// Truly are the true efficiencies of the curve, 0 to 1; none means seven around the agreed one.
	Truly []float64
	// Power is the wanted probability to pass, for which the run length is looked for; 0 means 90 %.
	Power float64
	// Progress, if not nil, is told how many runs are finished. It is called by one goroutine at a time.
	Progress func(done, total int)
}

// AcceptanceOutcome is the outcome of an acceptance study.
type AcceptanceOutcome struct {
	Scenario *scenario.Scenario
	Model    *sim.Model
	Results  result.Acceptance
}

// What is taken where nothing is asked for. The hours of long runs hold the true efficiency of a line with stops of minutes
// to about one point.
const (
	usualRuns, leastRuns = 400, 100
	usualPower           = 0.9
	longHours            = 1600
	longRuns             = 20
	lengthRuns           = 150
	// longestRun is the longest run that is simulated, in agreed runs; a run is looked at at each half of one.
	longestRun = 8
)

// aroundAgreed are the true efficiencies of the curve beside the agreed one, in points.
var aroundAgreed = []float64{-6, -4, -2, 0, 2, 4, 6}

// Accept finds how likely a line passes its agreed run, for true efficiencies around the agreed one. The line is made better and
// worse by multiplying how often every stop comes by one factor, found so that its long-run efficiency is the true one. A cancelled
// context is an error: a part of a curve answers nothing.
func Accept(ctx context.Context, s *scenario.Scenario, o AcceptanceOptions) (*AcceptanceOutcome, error) {
	a, err := newAcceptance(ctx, s, o)
	if err != nil {
		return nil, err
	}
	if err := a.findFactors(); err != nil {
		return nil, err
	}
	if err := a.runCurve(); err != nil {
		return nil, err
	}
	if err := a.runLengths(); err != nil {
		return nil, err
	}
	return &AcceptanceOutcome{Scenario: s, Model: a.model, Results: a.results}, nil
}

// acceptance is one such study on its way.
type acceptance struct {
	agreedLine
	ctx     context.Context
	options AcceptanceOptions
	count   counter
	figures keyfigure.Figures
	// long are the long-run efficiencies by factor, in rising order.
	long []longRun
	// entered is the line as entered, points the others, by rising true efficiency.
	entered result.AcceptancePoint
	points  []result.AcceptancePoint
	results result.Acceptance
}

func newAcceptance(ctx context.Context, s *scenario.Scenario, o AcceptanceOptions) (*acceptance, error) {
	if s.Agreement.Efficiency == 0 {
		return nil, &InputError{"the scenario has no agreement: write what the run must show, such as agreement: {efficiency: 85 %, run: 8 h}"}
	}
	hash, warned := s.Hash(), append([]string{}, s.Warnings...)
	if len(s.Line.Orders.List) > 0 {
		warned = append(warned, "The orders of the scenario are left out: an acceptance run makes one product and has no changeover.")
	}
	s = withoutOrders(s)
	model, err := sim.Compile(s.Line)
	if err != nil {
		return nil, err
	}
	a := &acceptance{agreedLine: agreedLine{scenario: s, model: model}, ctx: ctx, options: o.filledFor(s), figures: keyfigure.Derive(s)}
	a.count.tell = o.Progress
	if a.full = a.figures.Bounds.AtSet; s.Agreement.OfTopSpeed {
		a.full = keyfigure.AtTop(s)
	}
	if !(a.full > 0) {
		return nil, &InputError{"no good " + s.Answer.Unit + " can come out of this line, so that an efficiency means nothing"}
	}
	if err := a.options.check(); err != nil {
		return nil, err
	}
	if a.works(a.agreedRun()) == 0 {
		return nil, &InputError{"the agreed run lies in a time in which the calendar lets the line stand: let it begin later or last longer, such as agreement: {efficiency: 85 %, run: 8 h}"}
	}
	a.results = result.Acceptance{
		Format: result.Format, Title: s.Title, ScenarioHash: hash, Seed: s.Run.Seed, Confidence: s.Run.Confidence,
		LongRunHours: hours(longRuns * a.longLasts()), Curve: []result.AcceptancePoint{}, Warnings: warned,
		Agreement: result.AgreedRun{
			Efficiency: s.Agreement.Efficiency, Of: speedWord(scenario.Counting{AtTopSpeed: s.Agreement.OfTopSpeed}),
			RunHours: hours(s.Agreement.Run), ScheduledFromHours: hours(s.Agreement.From), Unit: s.Answer.Unit,
			FullPerHour: 60 * a.full, Needed: s.Agreement.Efficiency * a.full * minutes(a.works(a.agreedRun())), Runs: a.options.Runs,
		},
	}
	return a, nil
}

// filledFor puts what is usual where nothing was asked for.
func (o AcceptanceOptions) filledFor(s *scenario.Scenario) AcceptanceOptions {
	o.Workers = Options{Workers: o.Workers}.workers()
	if o.Runs == 0 {
		share := effort(s) * min(1, float64(8*sim.Hour)/float64(s.Agreement.Run))
		o.Runs = max(leastRuns, int(usualRuns*share))
	}
	if o.Power == 0 {
		o.Power = usualPower
	}
	if len(o.Truly) == 0 {
		for _, points := range aroundAgreed {
			if e := s.Agreement.Efficiency + points/100; e > 0 && e < 1 {
				o.Truly = append(o.Truly, e)
			}
		}
	}
	o.Truly = slices.Compact(slices.Sorted(slices.Values(o.Truly)))
	return o
}

func (o AcceptanceOptions) check() error {
	if o.Runs < leastReplications {
		return &InputError{"one run has no chance to pass that could be told: at least 2 are needed, 400 are better"}
	}
	if o.Power <= 0.5 || o.Power >= 1 {
		return &InputError{fmt.Sprintf("a power of %.4g %%: write more than 50 %% and less than 100 %%", 100*o.Power)}
	}
	for _, e := range o.Truly {
		if e <= 0 || e >= 1 {
			return &InputError{fmt.Sprintf("a true efficiency of %.4g %%: write more than 0 %% and less than 100 %%", 100*e)}
		}
	}
	return nil
}

// runCurve simulates the agreed runs of each line.
func (a *acceptance) runCurve() error {
	a.count.expect((1 + len(a.points)) * a.options.Runs)
	for i := range a.points {
		if err := a.passes(&a.points[i]); err != nil {
			return err
		}
	}
	if err := a.passes(&a.entered); err != nil {
		return err
	}
	a.results.AsEntered, a.results.Curve = a.entered, append(a.results.Curve, a.points...)
	if i := a.station(); i >= 0 {
		r := keyfigure.RenewalOf(&a.scenario.Line.Stations[i], &a.figures.Stations[i], 1)
		a.results.Formula = result.Formula{
			Station: a.scenario.Line.Stations[i].Name, UpMinutes: r.Up, DownMinutes: r.Down,
			UpCV: cvOf(r.UpVariance, r.Up), DownCV: cvOf(r.DownVariance, r.Down),
		}
	}
	return nil
}

// passes simulates the agreed runs of a line of one true efficiency.
func (a *acceptance) passes(p *result.AcceptancePoint) error {
	shown, err := a.efficiencies("acceptance", p.Factor, a.agreedRun(), a.options.Runs)
	if err != nil {
		return err
	}
	p.Passing = a.passing(shown)
	p.Shown = estimateOf(shown, a.results.Confidence)
	p.Formula = a.formula(p.True.Mean, p.Factor)
	return nil
}

// passing is the share of runs that show at least the agreed efficiency.
func (a *acceptance) passing(shown []float64) result.Estimate {
	hits := 0
	for _, e := range shown {
		if e >= a.scenario.Agreement.Efficiency {
			hits++
		}
	}
	return result.Estimate(estimate.Wilson(hits, len(shown), a.results.Confidence))
}

// station is the one whose stops the formula takes: that which limits the line, or -1.
func (a *acceptance) station() int {
	if limiting := a.figures.Limiting(); len(limiting) > 0 {
		return limiting[0]
	}
	return -1
}

// formula is what the asymptotic renewal formula says of a line of one true efficiency.
func (a *acceptance) formula(e, factor float64) result.PointFormula {
	var f result.PointFormula
	i := a.station()
	if i < 0 {
		return f
	}
	agreed := a.scenario.Agreement
	r := keyfigure.RenewalOf(&a.scenario.Line.Stations[i], &a.figures.Stations[i], factor)
	if f.SD, f.Applies = r.Spread(e, minutes(a.works(a.agreedRun()))); !f.Applies {
		return f
	}
	f.Passing, _ = r.Passing(e, agreed.Efficiency, minutes(a.works(a.agreedRun())))
	if length, ok := r.MinutesFor(e, agreed.Efficiency, a.options.Power); ok {
		f.RunHours = length / 60
	}
	return f
}
