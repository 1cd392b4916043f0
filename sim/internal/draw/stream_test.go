package draw

import (
	"math"
	"testing"
)

func TestUniformIsNeverZeroOrOne(t *testing.T) {
	if got := uniform(0); got != math.Ldexp(1, -54) {
		t.Errorf("the smallest number is %g, want 2^-54", got)
	}
	if got := uniform(math.MaxUint64); got >= 1 || got != math.Nextafter(1, 0) {
		t.Errorf("the largest number is %.17g, want the one before 1", got)
	}
	if got := uniform(1 << 63); got != 0.5 {
		t.Errorf("the middle is %.17g, want 0.5", got)
	}
}

// Neither the joint of two names, nor replication, nor seed may be mistaken for another.
func TestStreamsDiffer(t *testing.T) {
	seen := map[float64]string{}
	for label, s := range map[string]Stream{
		"a bc": NewStream(1, 0, "a", "bc"), "ab c": NewStream(1, 0, "ab", "c"), "abc": NewStream(1, 0, "abc"),
		"none": NewStream(1, 0), "empty": NewStream(1, 0, ""), "two empty": NewStream(1, 0, "", ""),
		"bc a": NewStream(1, 0, "bc", "a"), "replication": NewStream(1, 1, "abc"), "seed": NewStream(2, 0, "abc"),
		"last seed": NewStream(math.MaxUint64, 0, "abc"),
	} {
		first := s.Uniform()
		if other, twice := seen[first]; twice {
			t.Errorf("the streams %q and %q start alike", label, other)
		}
		seen[first] = label
	}
}

// A station more, or more numbers drawn elsewhere, leaves a stream as it was; a copy goes on alone.
func TestStreamsAreApart(t *testing.T) {
	alone := NewStream(7, 3, "blister machine", "stop", "jam")
	want := [3]float64{alone.Uniform(), alone.Uniform(), alone.Uniform()}

	other := NewStream(7, 3, "cartoner", "stop", "jam")
	s := NewStream(7, 3, "blister machine", "stop", "jam")
	for i := range want {
		other.Uniform()
		other.Uniform()
		if got := s.Uniform(); got != want[i] {
			t.Errorf("number %d is %g, alone it was %g", i+1, got, want[i])
		}
	}
	copied := s
	if copied.Uniform() != s.Uniform() {
		t.Error("a copy does not go on where the stream was")
	}
}

// Mean 1/2 and variance 1/12 of 100,000 numbers; bounds of five standard errors.
func TestUniformMoments(t *testing.T) {
	const n = 100_000
	s := NewStream(1, 0, "moments")
	sum, squares := 0.0, 0.0
	for range n {
		u := s.Uniform() - 0.5
		sum += u
		squares += u * u
	}
	if mean := sum / n; math.Abs(mean) > 5/math.Sqrt(12*n) {
		t.Errorf("mean is off by %g", mean)
	}
	if variance := squares / n; math.Abs(variance-1.0/12) > 5*math.Sqrt(1.0/180/n) {
		t.Errorf("variance %g, want 1/12", variance)
	}
}

func TestMicros(t *testing.T) {
	s := NewStream(1, 0, "micros")
	for _, c := range []struct {
		value float64
		want  int64
	}{{0, 1}, {0.4, 1}, {1.5, 2}, {545454.5454, 545455}, {1e30, Longest}} {
		l := Fixed(c.value)
		if got := Micros(&l, &s); got != c.want {
			t.Errorf("%g gives %d, want %d", c.value, got, c.want)
		}
	}
	if untouched := NewStream(1, 0, "micros"); s != untouched {
		t.Error("a fixed law moved the stream")
	}
	l := must(t)(Exponential(1e6))
	twin := s
	got := Micros(&l, &s)
	if want := int64(math.Round(l.Quantile(twin.Uniform()))); got != want || s != twin {
		t.Errorf("%d drawn, want %d with one number of the stream", got, want)
	}
}

// Hand computation: with share 0.5 the next piece is rejected when u > 1/2, the
// one after it when 1/4 < u <= 1/2, and so on.
func TestGap(t *testing.T) {
	for _, c := range []struct {
		u, share float64
		want     int64
	}{
		{0.51, 0.5, 0},
		{0.49, 0.5, 1},
		{0.26, 0.5, 1},
		{0.24, 0.5, 2},
		{0.5, 0, math.MaxInt64},
		{0.5, math.NaN(), math.MaxInt64},
		{0.5, -1, math.MaxInt64},
		{lowest, 1, 0},
		{highest, 1, 0},
		{lowest, 1e-300, math.MaxInt64},
	} {
		if got := Gap(c.u, c.share); got != c.want {
			t.Errorf("u %g, share %g: %d, want %d", c.u, c.share, got, c.want)
		}
	}
}

// The mean gap is (1 − share)/share: 124 at 0.8 %. Bound of five standard errors.
func TestMeanGap(t *testing.T) {
	const n, share = 200_000, 0.008
	s := NewStream(1, 0, "gap")
	sum := 0.0
	for range n {
		sum += float64(Gap(s.Uniform(), share))
	}
	bound := 5 * math.Sqrt(1-share) / share / math.Sqrt(n)
	if mean := sum / n; math.Abs(mean-124) > bound {
		t.Errorf("mean gap %g, want 124 ± %g", mean, bound)
	}
}

func TestNothingIsAllocated(t *testing.T) {
	s := NewStream(1, 0, "allocations")
	for _, l := range oneOfEach(t) {
		if n := testing.AllocsPerRun(20, func() { Micros(&l, &s) }); n != 0 {
			t.Errorf("%s: %g allocations a draw", l, n)
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	ok := must(b)
	for _, l := range []Law{
		Fixed(1), ok(Exponential(1e6)), ok(Erlang(1e6, 4)), ok(Gamma(1e6, 1.5)), ok(Lognormal(1e6, 0.8)),
		ok(Weibull(1e6, 0.8)), ok(Normal(1e6, 0.2)), ok(Uniform(1e6, 2e6)), ok(Triangular(1e6, 2e6, 4e6)),
		ok(Geometric(1e7, 1e6)), ok(EmpiricalSample([]float64{1, 2, 3, 4, 5, 6, 7, 8, 9})),
		ok(Mixture([]Component{{0.9, ok(Exponential(1e6))}, {0.1, ok(Uniform(1e6, 2e6))}})),
	} {
		b.Run(l.Kind(), func(b *testing.B) {
			s := NewStream(1, 0, "benchmark")
			b.ReportAllocs()
			for b.Loop() {
				Micros(&l, &s)
			}
		})
	}
}
