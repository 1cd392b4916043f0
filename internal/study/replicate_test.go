package study

import (
	"context"
	"sync/atomic"
	"testing"

	"tuckline/sim"
)

// counting is an engine whose record tells which replication it was.
type counting struct{ after func(replication int) }

func (c counting) Run(o sim.Options) sim.Record {
	if c.after != nil {
		c.after(o.Replication)
	}
	return sim.Record{Replication: o.Replication}
}

func countingPass(from, to, workers int, after func(int)) pass {
	return pass{
		from: from, to: to, workers: workers, finished: func() {},
		newEngine: func() engine { return counting{after} },
		options:   func(r int) sim.Options { return sim.Options{Replication: r} },
	}
}

func TestRecordsComeInOrder(t *testing.T) {
	for _, workers := range []int{1, 2, 7, 100} {
		records := countingPass(11, 40, workers, nil).run(t.Context())
		if len(records) != 30 {
			t.Fatalf("%d workers: %d records, want 30", workers, len(records))
		}
		for i := range records {
			if records[i].Replication != 11+i {
				t.Errorf("%d workers: record %d is of replication %d, want %d", workers, i, records[i].Replication, 11+i)
			}
		}
	}
}

func TestOneEngineAGoroutine(t *testing.T) {
	var engines atomic.Int64
	p := countingPass(1, 50, 3, nil)
	p.newEngine = func() engine {
		engines.Add(1)
		return counting{}
	}
	p.run(t.Context())
	if n := engines.Load(); n != 3 {
		t.Errorf("%d engines for 3 workers", n)
	}
}

// A cancelled context lets the replication under way end and starts no other.
func TestCancelKeepsWhatIsFinished(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	records := countingPass(1, 1000, 1, func(r int) {
		if r == 5 {
			cancel()
		}
	}).run(ctx)
	if len(records) != 5 || records[4].Replication != 5 {
		t.Errorf("%d records are kept, want the first 5", len(records))
	}
}

func TestProgressCountsEveryRun(t *testing.T) {
	last := 0
	c := counter{total: 40, tell: func(done, total int) {
		if done != last+1 || total != 40 {
			t.Errorf("told %d of %d after %d", done, total, last)
		}
		last = done
	}}
	p := countingPass(1, 40, 4, nil)
	p.finished = c.finished
	p.run(t.Context())
	if last != 40 {
		t.Errorf("told of %d runs, want 40", last)
	}
}
