package study

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// jammingOrder makes 14,400 pieces, one a second, and has some eight stops of 15 min on average meanwhile: 4 h and about 2 h.
func jammingOrder(t *testing.T, run string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("orders.yaml", []byte(`tuckline: 1
run: {`+run+`}
answer: {in: pieces, per: hour}
line: [{station: filler, cycle: 1 s, takes: 1 piece, gives: 1 piece, stops: {jam: {every: {dist: exponential, mean: 1800 cycles}, lasts: {dist: exponential, mean: 15 min}}}}]
orders: [{good: 14400 pieces}]
`), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// What is not finished at the horizon is in no estimate: rates, shares, totals and key figures are those of the runs that are, which
// a run with a long horizon tells apart by when it ends. Sums of records are divided by hand.
func TestUnfinishedAreInNoEstimate(t *testing.T) {
	ask := func(run string) *Outcome {
		o, err := Run(t.Context(), jammingOrder(t, run), Options{Workers: 2})
		if err != nil {
			t.Fatal(err)
		}
		return o
	}
	short, long := ask("replications: 40, at most: 6 h"), ask("replications: 40")
	var good, down, window float64
	n := 0
	for i := range long.Records {
		if r := &long.Records[i]; r.EndedAt <= 6*sim.Hour {
			n++
			good, down, window = good+float64(r.Stations[0].Passed), down+float64(r.Stations[0].States[sim.Down]), window+float64(r.Window)
		}
	}
	if n < 10 || n > 30 {
		t.Fatalf("%d of 40 are finished within 6 h: the test needs some of both", n)
	}
	r := short.Results
	if r.Replications != n || r.Unfinished != 40-n || len(short.Records) != 40 || r.Orders.Unfinished != 40-n || r.Orders.Each[0].Ended != n {
		t.Errorf("%d finished of 40: %d and %d, %d records, %+v", n, r.Replications, r.Unfinished, len(short.Records), r.Orders)
	}
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-9*want {
			t.Errorf("%s is %v, by hand %v", what, got, want)
		}
	}
	near("pieces an hour", r.Output.PerHour.Mean, good/window*float64(sim.Hour))
	near("pieces a run", r.Output.Total.Mean, 14400)
	near("share down", r.Stations[0].States.Down.Mean, down/window)
	for _, figure := range r.KeyFigures.Line {
		if figure.Value.N > n {
			t.Errorf("%s is of %d runs", figure.Name, figure.Value.N)
		}
	}
	if r.Stations[0].Stops[0].PerHour.N != n || r.Output.PerHour.N != n {
		t.Errorf("estimates of %d and %d runs", r.Stations[0].Stops[0].PerHour.N, r.Output.PerHour.N)
	}
	// Times are quantiles over all runs, those that are not finished being later: half of 40 are the 20th.
	if ends := endings(long); n >= 20 && math.Abs(r.Orders.Finish.P50.Hours-ends[19]) > 1e-9 || n < 20 && r.Orders.Finish.P50.Within {
		t.Errorf("half are finished at %+v; the 20th ends at %v h", r.Orders.Finish.P50, ends[19])
	}
}

func endings(o *Outcome) []float64 {
	var all []float64
	for i := range o.Records {
		all = append(all, hours(o.Records[i].EndedAt))
	}
	slices.Sort(all)
	return all
}

// With a half-width asked for, others take the place of what is not finished, up to the most that may be run.
func TestPrecisionCountsFinishedRuns(t *testing.T) {
	o, err := Run(t.Context(), jammingOrder(t, "replications: {half-width: 8 %, at most: 400}, at most: 6 h"), Options{Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	r := o.Results
	if !o.Precision.Reached || r.Unfinished == 0 || r.Replications < 20 || r.Replications+r.Unfinished != len(o.Records) || o.Interrupted {
		t.Errorf("%+v, %d finished and %d not of %d", o.Precision, r.Replications, r.Unfinished, len(o.Records))
	}
}

// 14,400 s of work are 4 h: within 3 h nothing is finished, and there is no answer.
func TestNothingFinishedIsNoAnswer(t *testing.T) {
	_, err := Run(t.Context(), jammingOrder(t, "replications: 4, at most: 3 h"), Options{Workers: 2})
	var few *UnfinishedError
	if !errors.As(err, &few) || few.Finished != 0 || few.Runs != 4 {
		t.Fatalf("%v", err)
	}
	if !strings.HasPrefix(err.Error(), "all orders are finished within 3 h in 0 of 4 runs, and an estimate needs 2, so there is no answer; write a longer run.at most") {
		t.Error(err)
	}
}

// Where the orders are finished as entered but not without buffers, nothing is compared, and the span says why; a study that was
// interrupted before two replications were run at all ends says nothing of orders.
func TestSpanWithoutFinishedOrders(t *testing.T) {
	s := jammingOrder(t, "replications: 3, at most: 6 h")
	ran := func(ends ...sim.End) (records []sim.Record) {
		for i, end := range ends {
			records = append(records, sim.Record{Replication: i + 1, Window: 6 * sim.Hour, Stations: make([]sim.StationRecord, 1), End: end})
		}
		return records
	}
	done, late := sim.OrdersFinished, sim.HorizonReached
	for name, c := range map[string]struct {
		none       []sim.Record
		compared   int
		unfinished bool
	}{
		"none is finished": {ran(late, late, late), 0, true},
		"one is finished":  {ran(late, done, late), 1, true},
		"two are finished": {ran(done, done, late), 2, false},
		"only one was run": {ran(done), 1, false},
		"only one, late":   {ran(late), 0, false},
	} {
		span := spanOf(s, ran(done, done, done), bound{records: c.none}, bound{records: ran(done, done, done)})
		if span.Unfinished != c.unfinished || span.Compared != c.compared || (span.None.N > 0) != (c.compared >= 2) {
			t.Errorf("%s: %+v", name, span)
		}
	}
}
