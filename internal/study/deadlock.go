package study

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

// DeadlockError names the stations that wait for each other for ever.
type DeadlockError struct {
	Replication int
	Stations    []string
	// Since is the time from the start of the replication.
	Since sim.Micros
}

func (e *DeadlockError) Error() string {
	return fmt.Sprintf("the line locks: in replication %d %s wait for each other from %.2f h on, so there is no answer; give the buffers between them more places",
		e.Replication, strings.Join(e.Stations, ", "), hours(e.Since))
}

// locked is the deadlock of the first replication that has one.
func locked(records []sim.Record) error {
	for i := range records {
		if r := &records[i]; r.End == sim.Deadlock {
			return &DeadlockError{r.Replication, r.Locked, r.EndedAt}
		}
	}
	return nil
}
