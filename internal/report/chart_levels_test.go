package report

import "testing"

// The level of a store beside the line counts what goes past it; how many places that has is said.
func TestPlacesPastTheStore(t *testing.T) {
	o := inventedWhole()
	store := &o.Results.Buffers[1]
	line := &o.Scenario.Line.Buffers[1]
	for _, c := range []struct {
		holds, capacity int64
		want            string
	}{{720, 723, "3"}, {720, 720, ""}, {-1, -1, ""}} {
		line.Holds, store.Capacity = c.holds, c.capacity
		if got := subjectOf(o).placesPast(*store); got != c.want {
			t.Errorf("%d places of %d: got %q, want %q", c.holds, c.capacity, got, c.want)
		}
	}
	line.Holds, store.Capacity, store.Beside = 720, 723, nil
	if got := subjectOf(o).placesPast(*store); got != "" {
		t.Errorf("a store in line: %q", got)
	}
}
