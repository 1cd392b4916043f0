package proof

import (
	"context"
	"math"
	"testing"

	"tuckline/internal/estimate"
)

// The seed is FNV-1a, 64 bits, of the name: offset 14695981039346656037, prime 1099511628211.
func TestSeedOfAName(t *testing.T) {
	for name, want := range map[string]uint64{"": 14695981039346656037, "a": 0xaf63dc4c8601ec8c, "foobar": 0x85944171f73967e8} { // test vectors of the FNV page, from memory
		if got := seedOf(name); got != want {
			t.Errorf("%q: %x, want %x", name, got, want)
		}
	}
}

func TestWantedWidth(t *testing.T) {
	for _, c := range []struct {
		p    Precision
		f    figure
		want float64
	}{
		{Full, figure{exact: 0.8}, 0.0024},
		{Quick, figure{exact: 0.8}, 0.008},
		{Full, figure{exact: 0.04, share: true}, 0.002},
		{Full, figure{exact: 0.04}, 0.00012},
		{Full, figure{exact: 0.06, share: true}, 0.00018},
		{Full, figure{exact: 5, kind: spread}, 0.25},
		{Quick, figure{exact: -2}, 0.02},
		{Full, figure{}, math.Inf(1)},
	} {
		if got := c.p.wanted(&c.f); math.Abs(got-c.want) > 1e-12 && got != c.want {
			t.Errorf("%+v of %+v: %v, want %v", c.p, c.f, got, c.want)
		}
	}
}

// By hand: parts 1 and 3 of wholes 2 and 2 are 0.5 ± t × 0.5 with t(1, 0.995) = 63.6567 (any table).
func TestQuotientByHand(t *testing.T) {
	s := &sampler{c: &Case{figures: []*figure{{}}}, n: 2, parts: [][]float64{{0, 2}}, whole: [][]float64{{2, 2}}}
	if got := s.interval(0); got.Mean != 0.5 || math.Abs(got.HalfWidth()-63.6567*0.5) > 1e-3 {
		t.Errorf("%+v", got)
	}
	// A whole that goes with its part leaves no doubt about the ratio.
	s.parts, s.whole = [][]float64{{1, 3}}, [][]float64{{2, 6}}
	if got := s.interval(0); got.Mean != 0.5 || got.HalfWidth() != 0 {
		t.Errorf("%+v", got)
	}
}

// By hand: counts 10, 12, 14 at the later edge have variance 4, 5, 5, 8 at the first have 3; over
// 2 s that is a growth of 0.5 a second.
func TestGrowthByHand(t *testing.T) {
	c := &Case{figures: []*figure{{kind: slope}}, measure: 1e6, later: 3e6, unit: 1e6}
	s := &sampler{c: c, n: 3, parts: [][]float64{{10, 12, 14}}, whole: [][]float64{{5, 5, 8}}}
	if got := s.interval(0); math.Abs(got.Mean-0.5) > 1e-12 {
		t.Errorf("%+v", got)
	}
}

// Widths are what was wanted, whatever the values: the same case with another exact value takes the
// same replications as long as the wanted width is the same.
func TestReplicationsUntilNarrow(t *testing.T) {
	for _, name := range []string{"TWO-1", "TRANS-1, over an interval", "BER2-4"} {
		c := caseOf(t, name)
		s, err := newSampler(c, c.Name, 2)
		if err == nil {
			err = s.toPrecision(context.Background(), Quick)
		}
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range c.figures {
			if half := s.interval(i).HalfWidth(); half > Quick.wanted(f) {
				t.Errorf("%s, %s: ± %v, wanted %v", name, f.quantity, half, Quick.wanted(f))
			}
		}
	}
}

func TestPValueByHand(t *testing.T) {
	// 2 standard errors with 1 degree of freedom: 1 − 2 arctan(2)/π = 0.2952.
	own := estimate.Interval{Mean: 3, SD: math.Sqrt2, N: 2}
	if got := pValue(own, &figure{exact: 1}); math.Abs(got-0.2952) > 1e-4 {
		t.Errorf("%v", got)
	}
	if got := pValue(own, &figure{exact: 1, allowance: 2}); got != 1 {
		t.Errorf("with an allowance: %v", got)
	}
	if got := pValue(estimate.Interval{Mean: 1, N: 5}, &figure{exact: 0}); got != 0 {
		t.Errorf("a sure miss: %v", got)
	}
}
