package part

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

func station(stops ...plan.Stop) *plan.Station {
	return &plan.Station{
		Name: "A", Takes: 1, Gives: 1, Stops: stops,
		Pace: plan.Pace{Fixed: 7, Law: draw.Fixed(7), RampAfter: 7},
	}
}

func everyMillionths(name string, millionths float64) plan.Stop {
	return plan.Stop{Name: name, Every: draw.Fixed(millionths), Work: plan.Work{Lasts: draw.Fixed(1), Crew: plan.None}}
}

// In a cycle of duration D a stop strikes after ⌊D × fraction⌋: of 7 µs a third is 2, the next
// third from there on ends at ⌊14/3⌋ = 4; what is left of a millionth is kept.
func TestStrikeRoundsDown(t *testing.T) {
	var m Machine
	m.Reset(station(everyMillionths("jam", 333_333)), 1, 0)
	if work := m.Start(0, 0); work != 2 { // 2.33
		t.Errorf("first strike after %d µs, by hand 2", work)
	}
	m.Strike()
	if work := m.Resume(0); work != 2 { // 4.67, at 4
		t.Errorf("second strike %d µs later, by hand 2", work)
	}
	m.Strike()
	if work := m.Resume(0); work != 2 { // 999,999 millionths: 6.99, at 6
		t.Errorf("third strike %d µs later, by hand 2", work)
	}
	m.Strike()
	if work := m.Resume(0); work != 1 || m.Strike() != plan.None {
		t.Errorf("%d µs to the end of the cycle, by hand 1", work)
	}
}

// Three whole cycles: nothing strikes at the end of the third, the fourth is struck before any work.
func TestStrikeAtTheEndOfACycle(t *testing.T) {
	var m Machine
	m.Reset(station(everyMillionths("jam", 3*plan.Cycle)), 1, 0)
	for c := range 3 {
		if work := m.Start(0, 0); work != 7 || m.Strike() != plan.None {
			t.Errorf("cycle %d is struck after %d", c+1, work)
		}
		m.End()
	}
	if work := m.Start(0, 0); work != 0 || m.Strike() != 0 {
		t.Errorf("the fourth cycle works %d before the stop, by hand 0", work)
	}
	if work := m.Resume(0); work != 7 || m.Strike() != plan.None {
		t.Errorf("the fourth cycle works %d after the stop, by hand 7", work)
	}
}

// Which pieces are rejected does not depend on how many a cycle gives: gaps count pieces.
func TestRejectsAreGapsOfPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.SampledFrom([]float64{0.01, 0.3, 0.9, 1}).Draw(t, "share")
		gives := rapid.Int64Range(2, 6).Draw(t, "gives")
		seed := rapid.Uint64().Draw(t, "seed")
		rejected := func(gives, cycles int64) []int64 {
			var r reject
			r.reset(&plan.Reject{Share: share, Gives: gives, Streams: "A"}, func(names ...string) draw.Stream {
				return draw.NewStream(seed, 0, names...)
			})
			var total []int64
			sum := int64(0)
			for range cycles {
				if r.quiet() > 0 {
					r.passed(1)
				} else {
					sum += gives - r.of(gives)
				}
				total = append(total, sum)
			}
			return total
		}
		singly, together := rejected(1, 20*gives), rejected(gives, 20)
		for c := range together {
			if want := singly[int64(c+1)*gives-1]; together[c] != want {
				t.Fatalf("%d rejected after %d cycles of %d, singly %d", together[c], c+1, gives, want)
			}
		}
	})
}

// A reel of 350 at 100 a cycle serves 3 cycles, then the rest and the next 4, then 3 and so on: the
// k-th change comes after ⌊3.5 k⌋ cycles.
func TestStockCarriesTheRestOver(t *testing.T) {
	pl := station()
	pl.Stocks = []plan.Stock{{Name: "reel", Full: 350, PerCycle: 100, Refill: 350, Work: plan.Work{Lasts: draw.Fixed(1)}}}
	var m Machine
	m.Reset(pl, 1, 0)
	var changes []int
	for c := range 22 {
		for m.UsedUp() >= 0 {
			changes = append(changes, c)
			m.Change(m.UsedUp(), false)
		}
		m.Start(0, 0)
		m.Strike()
		m.End()
	}
	if want := []int{3, 7, 10, 14, 17, 21}; !slices.Equal(changes, want) {
		t.Errorf("changes after %d cycles, by hand %d", changes, want)
	}
}

// A part-used reel starts uniformly between 1 and full, whatever the seed.
func TestPartUsedStockIsUniform(t *testing.T) {
	const full, n = 1000, 20_000
	pl := plan.Stock{Name: "reel", Full: full, PerCycle: 1, Refill: full, PartUsed: true}
	sum, low, high := 0.0, int64(full), int64(0)
	for r := range n {
		var s stock
		s.reset(&pl, func(names ...string) draw.Stream { return draw.NewStream(3, r, names...) })
		sum += float64(s.left)
		low, high = min(low, s.left), max(high, s.left)
	}
	mean, sd := (1+full)/2.0, math.Sqrt((full*full-1)/12.0) // of a discrete uniform law
	if half := 4 * sd / math.Sqrt(n); math.Abs(sum/n-mean) > half || low < 1 || high > full {
		t.Errorf("mean %.2f, exact %.1f ± %.2f; between %d and %d", sum/n, mean, half, low, high)
	}
}

// The time on a ramp and the work in it are inverse; on a ramp of 10 s a second of work takes
// √20 s, the sixth second from 10 s to 11 s.
func TestRampTimeAndWork(t *testing.T) {
	p := pace{plan: &plan.Pace{Ramp: 10 * second}, ramp: 0}
	if got := p.onRamp(second); got != 4_472_136 { // √20 = 4.4721360
		t.Errorf("the first second takes %d µs", got)
	}
	p.ramp = 5 * float64(second)
	if got := p.onRamp(second); got != second || p.ramp >= 0 {
		t.Errorf("the sixth second takes %d µs", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		p := pace{plan: &plan.Pace{Ramp: plan.Micros(rapid.Int64Range(1, 60_000_000).Draw(t, "ramp"))}}
		from := rapid.Float64Range(0, 1e8).Draw(t, "from")
		in := plan.Micros(rapid.Int64Range(0, 100_000_000).Draw(t, "in"))
		w := p.work(from, in)
		if back := p.time(from+w) - p.time(from); math.Abs(back-float64(in)) > 1e-3 {
			t.Errorf("%g of work takes %f µs, not %d", w, back, in)
		}
	})
}
