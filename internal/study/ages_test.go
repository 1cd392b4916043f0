package study

import (
	"reflect"
	"testing"

	"tuckline/sim"
)

// The ages of two replications, put together class by class; one that followed none adds none.
func TestAgesOfAllReplications(t *testing.T) {
	records := []sim.Record{
		{Ages: &sim.Ages{Count: 3, Sum: 30, Classes: []int64{1, 2}}},
		{},
		{Ages: &sim.Ages{Count: 4, Sum: 100, Classes: []int64{0, 1, 0, 3}}},
	}
	want := &sim.Ages{Count: 7, Sum: 130, Classes: []int64{1, 3, 0, 3}}
	if got := allAges(records); !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if got := allAges(records[1:2]); got != nil {
		t.Errorf("got %+v where none were followed", got)
	}
}
