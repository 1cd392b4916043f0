package study

import (
	"fmt"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// UnfinishedError says that too few replications have finished their orders for an estimate.
type UnfinishedError struct {
	Finished, Runs int
	// Horizon is when a replication ends at the latest, in the words of Horizon.
	Horizon string
}

func (e *UnfinishedError) Error() string {
	return fmt.Sprintf("all orders are finished within %s in %d of %d runs, and an estimate needs %d, so there is no answer; write a longer run.at most, fewer or smaller orders, or run.measure for a window of fixed length",
		e.Horizon, e.Finished, e.Runs, leastReplications)
}

// unfinished is the error of runs that were to end with their orders and did not.
func unfinished(s *scenario.Scenario, records []sim.Record) error {
	if n := len(Counted(s, records)); n < leastReplications {
		return &UnfinishedError{n, len(records), Horizon(s)}
	}
	return nil
}

// Horizon is when a replication ends at the latest, after its start: "52 weeks" or "30 h".
func Horizon(s *scenario.Scenario) string { return weeksWords(s.Run.WarmUp + s.Run.Measure) }

// Counted are the replications that estimates are from: all, but of runs that are to end with their orders only those that did. What
// was not finished at the horizon has another window and other work in it, and an average over both would be of neither.
func Counted(s *scenario.Scenario, records []sim.Record) []sim.Record {
	if !s.Run.UntilOrders {
		return records
	}
	var counted []sim.Record
	for i := range records {
		if records[i].End == sim.OrdersFinished {
			counted = append(counted, records[i])
		}
	}
	return counted
}
