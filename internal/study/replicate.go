package study

import (
	"context"
	"sync"
	"sync/atomic"

	"tuckline/sim"
)

// engine runs one replication after the other; it belongs to one goroutine.
type engine interface {
	Run(sim.Options) sim.Record
}

// pass runs a span of replications of one model, each as a task of its own.
type pass struct {
	from, to, workers int
	// newEngine makes the engine of one goroutine.
	newEngine func() engine
	// options are those of one replication.
	options func(replication int) sim.Options
	// finished is told after each replication; calls may come from several goroutines.
	finished func()
}

// run returns the finished records in order of replication. A cancelled
// context lets the replications under way end and starts no other, so the rest may have gaps.
func (p pass) run(ctx context.Context) []sim.Record {
	n := p.to - p.from + 1
	slots := make([]*sim.Record, n)
	var next atomic.Int64
	var group sync.WaitGroup
	for range min(p.workers, n) {
		group.Go(func() {
			e := p.newEngine()
			for i := int(next.Add(1)) - 1; i < n && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				record := e.Run(p.options(p.from + i))
				slots[i] = &record
				p.finished()
			}
		})
	}
	group.Wait()
	return kept(slots)
}

func kept(slots []*sim.Record) []sim.Record {
	records := make([]sim.Record, 0, len(slots))
	for _, one := range slots {
		if one != nil {
			records = append(records, *one)
		}
	}
	return records
}
