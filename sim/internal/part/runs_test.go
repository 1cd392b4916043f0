package part

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// Both states of a chain of two last a geometric number of cycles, at least 1: outside runs with e, within
// with 1/L (by hand: each cycle that ends leaves with that probability, whatever was before). Chi-square at
// 99 %, fixed seed.
func TestRunsAreGeometric(t *testing.T) {
	var r runs
	p := plan.Runs{Enter: 0.2, Share: 1, Length: 5}
	r.reset(&p, func(names ...string) draw.Stream { return draw.NewStream(5, 0, names...) }, "A")
	var outside, within []int
	length, on := 0, r.on()
	for len(within) < 20_000 {
		length++
		if r.ended(); r.on() == on {
			continue
		}
		if on {
			within = append(within, length)
		} else {
			outside = append(outside, length)
		}
		length, on = 0, r.on()
	}
	for name, lengths := range map[string][]int{"outside": outside, "within": within} {
		if x, limit := distance(lengths, 0.2), (distuv.ChiSquared{K: 14}).Quantile(0.99); x > limit {
			t.Errorf("%s a run: chi-square %.1f, more than %.1f", name, x, limit)
		}
	}
}

// distance is the chi-square of lengths 1 to 14, and longer ones, against the geometric law with p.
func distance(lengths []int, p float64) float64 {
	seen, expected := make([]float64, 15), make([]float64, 15)
	for _, l := range lengths {
		seen[min(l, 15)-1]++
	}
	for k := range 14 {
		expected[k] = float64(len(lengths)) * p * math.Pow(1-p, float64(k))
	}
	expected[14] = float64(len(lengths)) * math.Pow(1-p, 14)
	return stat.ChiSquare(seen, expected)
}

// Any number of cycles at once is the same as one by one.
func TestRunsPassTogether(t *testing.T) {
	p := plan.Runs{Enter: 0.1, Share: 1, Length: 4}
	stream := func(names ...string) draw.Stream { return draw.NewStream(6, 0, names...) }
	var single, together runs
	single.reset(&p, stream, "A")
	together.reset(&p, stream, "A")
	for range 5000 {
		n := max(1, together.quiet()/2)
		if n > 1 {
			together.passed(n)
		} else {
			together.ended()
		}
		for range n {
			single.ended()
		}
		if single != together {
			t.Fatalf("one by one %+v, together %+v", single, together)
		}
	}
}

// What a register is given comes out so many shifts later, whatever comes with it.
func TestRegisterDelays(t *testing.T) {
	var r register
	for _, after := range []int64{0, 1, 3} {
		r.reset(after)
		for c := range int64(40) {
			found := (c * c) % 3 // 0, 1, 1, 0, …
			want := int64(0)
			if c >= after {
				want = ((c - after) * (c - after)) % 3
			}
			if quiet := r.quiet(); after > 0 && quiet > 0 && want > 0 {
				t.Errorf("after %d: something leaves in cycle %d, said to be quiet for %d", after, c, quiet)
			}
			if got, _ := r.shift(found, false); got != want {
				t.Errorf("after %d: %d leave in cycle %d, not %d", after, got, c, want)
			}
		}
	}
}

// What is found in a run is drawn apart from what is found outside: with equal shares, cycle by cycle in turn,
// the two differ.
func TestRunsHaveTheirOwnGaps(t *testing.T) {
	var r reject
	p := plan.Reject{Gives: 1, Share: 0.3, Runs: plan.Runs{Enter: 1, Share: 0.3, Length: 1}, Streams: "A", Signal: plan.None}
	r.reset(&p, func(names ...string) draw.Stream { return draw.NewStream(7, 0, names...) })
	same := 0
	for range 1000 {
		if outside, within := r.of(1), r.of(1); outside == within {
			same++
		}
	}
	if same > 700 { // by hand 0.7² + 0.3² = 58 % on average, ± 4.7 % at three times the standard deviation
		t.Errorf("%d of 1000 pairs are equal", same)
	}
}

// A clock that is renewed while a pocket runs through starts where the next cycle starts: after 1.5 cycles
// of 7 µs it strikes at ⌊3.5⌋ = 3 of the second.
func TestClockRenewedInAPocket(t *testing.T) {
	look := plan.Stop{Name: "look", Clock: plan.CalendarClock, Every: draw.Fixed(5), Renews: []int{0}}
	var m Machine
	m.Reset(station(everyMillionths("jam", 1.5*plan.Cycle), look), 1, 0)
	m.Pocket(0)
	m.Interrupt(3)
	m.Renew(1)
	m.Resume(0)
	m.PocketOver()
	if work := m.Start(0, 0); work != 7 || m.Strike() != plan.None {
		t.Errorf("the first cycle is struck after %d", work)
	}
	m.End()
	if work := m.Start(0, 0); work != 3 || m.Strike() != 0 {
		t.Errorf("the second cycle works %d before the stop, by hand 3", work)
	}
}
