package proof

import (
	"context"
	"errors"
	"math"
	"runtime"
	"slices"
	"sync"
)

// compareAll compares the cases side by side; then those that missed are repeated one after the
// other, each on all cores. The order of the rows is that of the cases.
func compareAll(ctx context.Context, cases []*Case, p Precision, progress func(done, all int)) ([]*Row, error) {
	rows, errs := make([][]*Row, len(cases)), make([]error, len(cases))
	next := make(chan int)
	var wait sync.WaitGroup
	var lock sync.Mutex
	done := 0
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := range next {
				rows[i], errs[i] = cases[i].compare(ctx, p)
				lock.Lock()
				if done++; progress != nil {
					progress(done, len(cases))
				}
				lock.Unlock()
			}
		})
	}
	for i := range cases {
		next <- i
	}
	close(next)
	wait.Wait()
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	for i, c := range cases {
		errs[i] = c.repeat(ctx, rows[i])
	}
	return slices.Concat(rows...), errors.Join(errs...)
}

// compare compares the figures of one case.
func (c *Case) compare(ctx context.Context, p Precision) ([]*Row, error) {
	if c.figures[0].kind == sure {
		return c.compareSure()
	}
	s, err := newSampler(c, c.Name, 1)
	if err == nil {
		err = s.toPrecision(ctx, p)
	}
	if err != nil {
		return nil, err
	}
	var rows []*Row
	for i, f := range c.figures {
		r := compared(c, f, s.interval(i))
		r.Primary = i == 0 && !r.Sure
		rows = append(rows, r)
	}
	return rows, nil
}

// repeatedTimes is how many times the replications of a miss its repetition has.
const repeatedTimes = 9

// repeat repeats a case if one of its figures missed.
func (c *Case) repeat(ctx context.Context, rows []*Row) error {
	if !slices.ContainsFunc(rows, func(r *Row) bool { return !r.Inside && !r.Sure }) {
		return nil
	}
	s, err := newSampler(c, c.Name+", second", runtime.GOMAXPROCS(0))
	if err == nil {
		err = s.until(ctx, repeatedTimes*rows[0].Replications)
	}
	if err != nil {
		return err
	}
	for i, r := range rows {
		if !r.Inside && !r.Sure {
			r.Again = compared(c, c.figures[i], s.interval(i))
		}
	}
	return nil
}

// last is for the last digit of a double, where a tolerance is met exactly.
const last = 1e-14

func (c *Case) compareSure() ([]*Row, error) {
	var rows []*Row
	for _, f := range c.figures {
		own, err := f.compute()
		if err != nil {
			return nil, err
		}
		r := &Row{
			Case: c, Quantity: f.quantity, Exact: f.exact, Source: f.source, Known: f.knownWords(), Published: f.published,
			Ours: own, Low: own, High: own, Allowance: f.allowance, Tolerance: f.tolerance, Drawn: f.drawn, Sure: true, says: f.says,
		}
		off := math.Abs(own-f.exact) - last*math.Abs(f.exact)
		r.Inside = off <= max(f.allowance, f.tolerance)
		switch {
		case !r.Inside || r.says != "":
		case off > f.tolerance:
			r.says = toTheAllowance
		case off > rounding*math.Abs(f.exact):
			r.says = agrees
		}
		r.Fault = !r.Inside
		rows = append(rows, r)
	}
	return rows, nil
}
