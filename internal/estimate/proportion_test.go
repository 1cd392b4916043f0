package estimate

import (
	"testing"

	"pgregory.net/rapid"
)

// Exact evaluation of the closed form of Wilson 1927, apart from this program.
func TestWilson(t *testing.T) {
	for _, c := range []struct {
		hits, n   int
		low, high float64
	}{
		{0, 20, 0, 0.16112515805281938},
		{17, 400, 0.026701694991131116, 0.06700205432475019},
		{20, 20, 1 - 0.16112515805281938, 1}, // by symmetry
	} {
		got := Wilson(c.hits, c.n, 0.95)
		near(t, "low", got.Low, c.low, 1e-9)
		near(t, "high", got.High, c.high, 1e-9)
		near(t, "share", got.Mean, float64(c.hits)/float64(c.n), 1e-15)
	}
}

func TestWilsonStaysWithinZeroAndOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 1_000_000).Draw(t, "n")
		hits := rapid.IntRange(0, n).Draw(t, "hits")
		got := Wilson(hits, n, rapid.Float64Range(0.5, 0.999).Draw(t, "confidence"))
		if !(got.Low >= 0 && got.Low <= got.Mean && got.Mean <= got.High && got.High <= 1) {
			t.Fatalf("%d of %d: %+v", hits, n, got)
		}
	})
	for _, bad := range [][2]int{{0, 0}, {-1, 5}, {6, 5}} {
		if got := Wilson(bad[0], bad[1], 0.95); got.N != 0 {
			t.Errorf("%d of %d gave %+v", bad[0], bad[1], got)
		}
	}
}
