package study

import (
	"errors"
	"testing"

	"tuckline/sim"
)

func TestDeadlockNamesTheFirst(t *testing.T) {
	records := []sim.Record{
		{Replication: 1},
		{Replication: 2, End: sim.Deadlock, EndedAt: 90 * sim.Minute, Locked: []string{"cartoner", "web"}},
		{Replication: 3, End: sim.Deadlock, EndedAt: sim.Hour, Locked: []string{"web"}},
	}
	err := locked(records)
	const want = "the line locks: in replication 2, from 1h30m0s after its start, cartoner, web wait for each other for ever, so there is no answer; give the places between them more room"
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
	var lock *DeadlockError
	if !errors.As(err, &lock) || lock.Replication != 2 {
		t.Errorf("got %#v", err)
	}
	if err := locked(records[:1]); err != nil {
		t.Errorf("no deadlock, got %v", err)
	}
}
