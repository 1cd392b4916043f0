package proof

import (
	"context"
	"errors"
	"math"
	"runtime"
	"sync"
)

// compareAll runs the cases side by side; the order of the rows is that of the cases.
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
	var all []*Row
	for _, r := range rows {
		all = append(all, r...)
	}
	return all, errors.Join(errs...)
}

// compare compares the figures of one case; misses are repeated once.
func (c *Case) compare(ctx context.Context, p Precision) ([]*Row, error) {
	var rows []*Row
	if len(c.figures) > 0 && c.figures[0].kind == sure {
		return c.compareSure()
	}
	first, err := newSampler(c, c.Name)
	if err == nil {
		err = first.toPrecision(ctx, p)
	}
	if err != nil {
		return nil, err
	}
	missed := false
	for i, f := range c.figures {
		r := compared(c, f, first.interval(i))
		r.Primary = i == 0
		missed = missed || !r.Inside
		rows = append(rows, r)
	}
	if missed {
		return rows, c.repeat(ctx, rows, first.n)
	}
	return rows, nil
}

// repeated misses get this many times the replications.
const repeatedTimes = 9

func (c *Case) repeat(ctx context.Context, rows []*Row, n int) error {
	second, err := newSampler(c, c.Name+", second")
	if err == nil {
		err = second.until(ctx, repeatedTimes*n)
	}
	if err != nil {
		return err
	}
	for i, r := range rows {
		if !r.Inside {
			r.Again = compared(c, c.figures[i], second.interval(i))
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
			Case: c, Quantity: f.quantity, Exact: f.exact, Source: f.source, Known: knownWords[f.known],
			Ours: own, Low: own, High: own, Allowance: f.allowance, Sure: true,
		}
		r.Inside = math.Abs(own-f.exact) <= max(f.allowance, f.tolerance)+last*math.Abs(f.exact)
		r.Fault = !r.Inside
		rows = append(rows, r)
	}
	return rows, nil
}
