package study

import (
	"fmt"
	"runtime"

	"tuckline/internal/scenario"
)

// Options say which replications are run and what is looked at beside them.
type Options struct {
	// From and To are the first and the last replication, counted from 1. Zero
	// means from the first, or to the number that the scenario asks for.
	From, To int
	// Part says that From and To were chosen by hand: a part has a fixed number of
	// replications, whatever half-width the scenario asks for.
	Part bool
	// Workers is how many replications run at a time; zero means one a core.
	Workers int
	// Progress, if not nil, is told how many runs are finished. It is called by one goroutine at a time.
	Progress func(done, total int)
	// Bounds asks for the span: the same replications without buffers and with
	// buffers without limit.
	Bounds bool
	// Trace asks for the trace of the first replication.
	Trace bool
	// Show are measures in the words of the list of measures.
	Show []string
}

// InputError says that what was asked for cannot be done, and what could be.
type InputError struct{ Text string }

func (e *InputError) Error() string { return e.Text }

// filled puts the numbers of the scenario where none were given.
func (o Options) filled(s *scenario.Scenario) (Options, error) {
	if o.From == 0 {
		o.From = 1
	}
	if o.To == 0 {
		o.To = s.Run.Replications
	}
	o.Workers = o.workers()
	if o.Part && s.Run.HalfWidth > 0 {
		return o, &InputError{"a part takes a fixed number of replications, but run.replications asks for a half-width: add --set run.replications=N, the same N for all parts"}
	}
	if o.From < 1 || o.To < o.From {
		return o, &InputError{fmt.Sprintf("replications %d-%d: write the first and the last, counted from 1, as in 1-40", o.From, o.To)}
	}
	if o.count() < leastReplications {
		return o, &InputError{"one replication has no interval: at least 2 are needed, 20 or more are better"}
	}
	return o, nil
}

func (o Options) count() int { return o.To - o.From + 1 }

// workers is how many replications run at a time.
func (o Options) workers() int {
	if o.Workers <= 0 {
		return runtime.GOMAXPROCS(0)
	}
	return o.Workers
}
