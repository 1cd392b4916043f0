package study

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// longRun is the long-run efficiency of the line with a factor on all its stop rates.
type longRun struct {
	factor     float64
	efficiency result.Estimate
}

// The factors with which the search begins, and how far it goes. What needs fewer stops than the least factor is out of reach.
const (
	leastFactor = 1.0 / 64
	mostFactor  = 256
	// firstLook is how many long runs a first look takes.
	firstLook = longRuns / 5
)

var firstFactors = []float64{leastFactor, 0.25, 0.5, 1, 2, 4}

// findFactors finds the factor of each true efficiency: a first look with short runs, then long runs at what it says, and between these
// the factor is read off by the straight line of 1/efficiency over the factor, on which a machine that stops while it runs lies
// exactly.
func (a *acceptance) findFactors() error {
	wanted := a.options.Truly
	a.count.expect((len(wanted)+1)*longRuns + len(firstFactors)*firstLook)
	if err := a.lookFirst(); err != nil {
		return err
	}
	rough := a.long
	a.long = nil
	if err := a.lookLong(1); err != nil {
		return err
	}
	var reached []float64
	if a.stops() {
		for _, e := range wanted {
			if factor := factorOf(rough, e); factor >= leastFactor && factor <= mostFactor {
				reached = append(reached, e)
				if err := a.lookLong(factor); err != nil {
					return err
				}
			}
		}
	}
	a.entered = result.AcceptancePoint{True: a.longAt(1), Factor: 1}
	for _, e := range reached {
		factor := factorOf(a.long, e)
		near := a.longAt(factor)
		half := (near.High - near.Low) / 2
		a.points = append(a.points, result.AcceptancePoint{
			Factor: factor, True: result.Estimate{Mean: e, Low: e - half, High: e + half, SD: near.SD, N: near.N},
		})
	}
	a.sayUnreached(wanted, reached, rough)
	return nil
}

// sayUnreached names the true efficiencies that no factor gives.
func (a *acceptance) sayUnreached(wanted, reached []float64, rough []longRun) {
	if !a.stops() {
		a.results.Warnings = append(a.results.Warnings, "No station has a stop whose rate could be multiplied: only the line as entered is shown.")
		return
	}
	for _, e := range wanted {
		if !slices.Contains(reached, e) {
			a.results.Warnings = append(a.results.Warnings, fmt.Sprintf(
				"A true efficiency of %.4g %% is out of reach: with hardly a stop the line comes to %.4g %%, the rest goes to rejects, scrap, changes of material and pace.",
				100*e, math.Round(1000*rough[0].efficiency.Mean)/10))
		}
	}
}

// lookFirst looks at a few factors with short runs, and at larger ones until the lowest true efficiency is passed.
func (a *acceptance) lookFirst() error {
	for _, factor := range firstFactors {
		if err := a.look(factor, firstLook); err != nil {
			return err
		}
		if !a.stops() {
			return nil
		}
	}
	for factor := 8.0; factor <= mostFactor && a.long[len(a.long)-1].efficiency.Mean > a.options.Truly[0]; factor *= 2 {
		if err := a.look(factor, firstLook); err != nil {
			return err
		}
	}
	return nil
}

func (a *acceptance) lookLong(factor float64) error { return a.look(factor, longRuns) }

// look simulates long runs with a factor and puts their efficiency in its place.
func (a *acceptance) look(factor float64, runs int) error {
	if slices.ContainsFunc(a.long, func(l longRun) bool { return l.factor == factor }) {
		return nil
	}
	agreed := a.scenario.Agreement
	lasts := a.longLasts()
	shown, err := a.efficiencies("long run", factor, spell{max(agreed.From, a.scenario.ScheduledWarmUp(), sim.Hour) + 4*sim.Hour, lasts}, runs)
	if err != nil {
		return err
	}
	a.long = append(a.long, longRun{factor, estimateOf(shown, a.results.Confidence)})
	slices.SortFunc(a.long, func(x, y longRun) int { return cmp.Compare(x.factor, y.factor) })
	return nil
}

// longAt is the long run nearest to a factor.
func (a *acceptance) longAt(factor float64) result.Estimate {
	return slices.MinFunc(a.long, func(x, y longRun) int {
		return cmp.Compare(math.Abs(math.Log(x.factor/factor)), math.Abs(math.Log(y.factor/factor)))
	}).efficiency
}

// factorOf reads the factor of a true efficiency off long runs, the two around it or the two next to it; 0 where there are
// fewer, or where the line does not get worse with more stops.
func factorOf(long []longRun, e float64) float64 {
	if len(long) < 2 {
		return 0
	}
	i := 0
	for i < len(long)-2 && long[i+1].efficiency.Mean > e {
		i++
	}
	low, high := long[i], long[i+1]
	from, to := 1/low.efficiency.Mean, 1/high.efficiency.Mean
	if !(to > from) || math.IsInf(to, 1) {
		return 0
	}
	return low.factor + (1/e-from)/(to-from)*(high.factor-low.factor)
}
