package plain

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim/internal/plan"
)

// Few timers are scanned, many play a tournament: both give what a search through all gives.
func TestCalendarFindsTheFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 3*scanned).Draw(t, "timers")
		var c calendar
		c.reset(n)
		times := slices.Repeat([]plan.Micros{plan.Never}, n)
		for range rapid.IntRange(1, 40).Draw(t, "changes") {
			i := rapid.IntRange(0, n-1).Draw(t, "timer")
			times[i] = rapid.SampledFrom([]plan.Micros{plan.Never, 0, 1, 2, 3, 5, 8}).Draw(t, "time")
			c.set(i, times[i])
			first := slices.Min(times)
			at, timer, more := c.first()
			if at != first || first != plan.Never && timer != slices.Index(times, first) {
				t.Fatalf("first is %d of timer %d, of %v", at, timer, times)
			}
			if !more && first != plan.Never && slices.Contains(times[timer+1:], first) {
				t.Fatalf("another timer is due at %d, of %v", at, times)
			}
			from := rapid.IntRange(0, n-1).Draw(t, "from")
			want := slices.Index(times[from:], first)
			if want >= 0 {
				want += from
			}
			if got := c.due(from, first); first != plan.Never && got != want {
				t.Fatalf("due from %d on is %d, not %d, of %v", from, got, want, times)
			}
		}
	})
}

// A set lists its members in order, across words.
func TestSetMembers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 200).Draw(t, "size")
		in := map[int]bool{}
		s := newSet(n)
		for range rapid.IntRange(0, 30).Draw(t, "changes") {
			i := rapid.IntRange(0, n-1).Draw(t, "member")
			if in[i] = rapid.Bool().Draw(t, "add"); in[i] {
				s.add(i)
			} else {
				s.remove(i)
			}
		}
		var want []int
		for i := range n {
			if in[i] != s.has(i) {
				t.Fatalf("has %d: %v", i, s.has(i))
			}
			if in[i] {
				want = append(want, i)
			}
		}
		if s.any() != (len(want) > 0) {
			t.Fatalf("any %v, members %v", s.any(), want)
		}
	})
}
