package study

import (
	"fmt"
	"strings"
	"time"

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
	since := (time.Duration(e.Since) * time.Microsecond).Round(time.Second)
	return fmt.Sprintf("the line locks: in replication %d, from %s after its start, %s wait for each other for ever, so there is no answer; give the places between them more room",
		e.Replication, since, strings.Join(e.Stations, ", "))
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
