package proof

import (
	"context"

	"tuckline/internal/estimate"
)

// Options say what is compared, and how narrowly.
type Options struct {
	// Full takes all cases to 0.3 %; otherwise it is the quick set, to 1 %.
	Full bool
	// Only names the cases that are compared; nil for all of the set.
	Only []string
	// Progress, if not nil, is told how many cases are finished of how many. Calls come one at a time.
	Progress func(done, all int)
}

// Outcome is everything that was compared.
type Outcome struct {
	// Full and Part say what the set was: all cases, the quick ones, or those that were named.
	Full, Part bool
	// Rows are in the order of the families and cases, the primary figure of a case first.
	Rows    []*Row
	LeftOut []LeftOut
	// Cases counts the simulated cases without an allowance, Outside those of them whose primary figure
	// missed at first.
	Cases, Outside int
	// Allowed counts the simulated cases whose primary figure has an allowance: they hardly can miss, so
	// that they are not among Cases. Missed are those of them that missed at first with it, Close those
	// that lie inside without it.
	Allowed, Missed, Close int
	// PValue is that of the count outside.
	PValue float64
	// Sure counts figures without chance, Zeros those of simulated cases that can only be 0.
	Sure, Zeros int
	// TooMany says that more cases were outside than chance explains, 1 in 1000.
	TooMany bool

	entries []entryName
}

// Expected is the number of cases outside if all is right.
func (o *Outcome) Expected() float64 { return chance * float64(o.Cases) }

// Faults are the figures that missed twice, or that chance does not excuse.
func (o *Outcome) Faults() []*Row {
	var all []*Row
	for _, r := range o.Rows {
		if r.Fault {
			all = append(all, r)
		}
	}
	return all
}

// Prove compares the cases. The result depends on the options only, not on the number of cores.
// It ends early only with the context or with a case that cannot be run.
func Prove(ctx context.Context, o Options) (*Outcome, error) {
	cases, leftOut, entries, err := catalogue()
	if err != nil {
		return nil, err
	}
	switch {
	case o.Only != nil:
		cases, leftOut, err = named(cases, leftOut, o.Only)
		entries = entriesOf(cases)
	case !o.Full:
		all := cases
		cases, err = quickOf(all)
		leftOut = append(leftOut, onlyInFull(all, cases)...)
	}
	if err != nil {
		return nil, err
	}
	precision := Quick
	if o.Full {
		precision = Full
	}
	rows, err := compareAll(ctx, cases, precision, o.Progress)
	if err != nil {
		return nil, err
	}
	out := &Outcome{Full: o.Full, Part: o.Only != nil, Rows: rows, LeftOut: leftOut, entries: entries}
	out.judge()
	return out, nil
}

// judge counts, and says what is a fault: a primary figure outside twice; another that is
// still outside when all others are looked at together.
func (o *Outcome) judge() {
	var others []*Row
	for _, r := range o.Rows {
		switch {
		case r.Sure && r.Replications > 0:
			o.Zeros++
		case r.Sure:
			o.Sure++
		case r.Primary:
			o.count(r)
		default:
			others = append(others, r)
		}
	}
	p := each(others, func(r *Row) float64 {
		if r.Again != nil {
			return r.Again.p
		}
		return r.p
	})
	for i, adjusted := range estimate.Holm(p) {
		others[i].Fault = adjusted < chance && !others[i].Inside && !others[i].Again.Inside
	}
	o.PValue = 1
	if p, ok := estimate.BinomialTest(o.Outside, o.Cases, chance); ok {
		o.PValue = p
	}
	o.TooMany = o.PValue < 0.001 && float64(o.Outside) > o.Expected()
}

// count counts the first figure of a case.
func (o *Outcome) count(r *Row) {
	r.Fault = !r.Inside && !r.Again.Inside
	outside := 0
	if !r.Inside {
		outside = 1
	}
	if r.Allowance == 0 {
		o.Cases++
		o.Outside += outside
		return
	}
	o.Allowed++
	o.Missed += outside
	if r.WithoutAllowance() {
		o.Close++
	}
}
