package estimate

import (
	"testing"

	"pgregory.net/rapid"
)

// Conover, Practical Nonparametric Statistics (1971) 97: 682 of 925 plants against
// three quarters, as in the manual of R's binom.test: p = 0.3825, 95 % interval
// 0.7076683 to 0.7654066 (from memory).
func TestBinomialTestAgainstManual(t *testing.T) {
	p, ok := BinomialTest(682, 925, 0.75)
	if !ok {
		t.Fatal("no result")
	}
	near(t, "p", p, 0.3825, 0.00005)
	got := ClopperPearson(682, 925, 0.95)
	near(t, "low", got.Low, 0.7076683, 1e-7)
	near(t, "high", got.High, 0.7654066, 1e-7)
}

// Hand computation: 10 heads of 10 are as rare as 0, 2/1024; 5 of 10 are the most
// frequent; of 3 tries with 1/4, counts 2 and 3 come to 10/64.
func TestBinomialTestByHand(t *testing.T) {
	for _, c := range []struct {
		hits, n int
		share   float64
		want    float64
	}{{10, 10, 0.5, 2.0 / 1024}, {5, 10, 0.5, 1}, {2, 3, 0.25, 10.0 / 64}, {0, 4, 0, 1}, {1, 4, 0, 0}, {4, 4, 1, 1}} {
		p, ok := BinomialTest(c.hits, c.n, c.share)
		near(t, "p", p, c.want, 1e-12)
		if !ok {
			t.Errorf("%+v: no result", c)
		}
	}
	for _, c := range []struct {
		hits, n int
		share   float64
	}{{0, 0, 0.5}, {-1, 3, 0.5}, {4, 3, 0.5}, {1, 3, 1.5}, {1, 3, -0.1}} {
		if p, ok := BinomialTest(c.hits, c.n, c.share); ok || p != 0 {
			t.Errorf("%+v gave %g", c, p)
		}
		if got := ClopperPearson(c.hits, c.n, 0.95); (c.share == 0.5) != (got.N == 0) {
			t.Errorf("%+v gave %+v", c, got)
		}
	}
}

// The exact interval covers at least as often as it says: for any true share the
// chance of the counts whose interval holds it, summed term by term.
func TestClopperPearsonCovers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 120).Draw(t, "n")
		share := rapid.Float64Range(0.001, 0.999).Draw(t, "share")
		covered := 0.0
		for k := 0; k <= n; k++ {
			got := ClopperPearson(k, n, 0.95)
			if got.Low <= share && share <= got.High {
				covered += below(n, k+1, share) - below(n, k, share)
			}
		}
		if covered < 0.95-1e-9 {
			t.Fatalf("%d tries with %g: covers with %g", n, share, covered)
		}
	})
}
