package estimate

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// 20 · 1.4 = 28, 28 · 1.4 = 39.2, 40 · 1.4 = 56, 56 · 1.4 = 78.4, 79 · 1.4 = 110.6.
func TestLooks(t *testing.T) {
	noisy := make([]float64, 200)
	for i := range noisy {
		noisy[i] = float64(i%2) - 0.5
	}
	p := NewPrecision(0.01, 0.95, 150)
	var at []int
	for !p.Done() {
		at = append(at, p.Wanted())
		p = p.Look(noisy)
	}
	if want := []int{20, 28, 40, 56, 79, 111, 150}; !slices.Equal(at, want) || p.Looks != 7 || p.Reached || p.Interval.N != 150 {
		t.Errorf("looked at %v, want %v; %+v", at, want, p)
	}
	if after := p.Look(noisy); after != p || after.Wanted() != 0 {
		t.Errorf("looked on after the end: %+v", after)
	}
}

// Ten values of Law (see summary_test.go), repeated: with t = 1.729 the half-width of
// 20 is 0.1147 of the mean, with t = 1.703 that of 28 is 0.0863; at most 0.1/1.1 =
// 0.0909 is asked for, so the second look ends it (computed apart from this program).
func TestPrecisionStops(t *testing.T) {
	sample := slices.Repeat(tenOfLaw, 20)
	p := NewPrecision(0.10, 0.9, 200)
	for !p.Done() {
		if before := p.Look(sample[:p.Wanted()-1]); before != p {
			t.Fatalf("looked at too few: %+v", before)
		}
		p = p.Look(sample)
	}
	if !p.Reached || p.Interval.N != 28 || p.Looks != 2 || p.Interval != Of(sample[:28], 0.9) {
		t.Errorf("%+v", p)
	}
}

func TestPrecisionEdges(t *testing.T) {
	if p := NewPrecision(0.1, 0.95, 0); p.Wanted() != 2 {
		t.Errorf("%+v", p)
	}
	if p := NewPrecision(0.1, 0.95, 10).Look(make([]float64, 10)); !p.Reached || p.Looks != 1 {
		t.Errorf("ten zeros: %+v", p)
	}
	rapid.Check(t, func(t *rapid.T) {
		most := rapid.IntRange(2, 400).Draw(t, "most")
		sample := rapid.SliceOfN(rapid.Float64Range(-5, 50), most, most).Draw(t, "sample")
		p := NewPrecision(rapid.Float64Range(0.001, 1).Draw(t, "relative"), 0.95, most)
		for !p.Done() {
			last := p
			p = p.Look(sample)
			if p.Looks != last.Looks+1 || p.Interval.N <= last.Interval.N {
				t.Fatalf("%+v after %+v", p, last)
			}
		}
		if p.Interval.N > most {
			t.Fatalf("%+v, at most %d", p, most)
		}
	})
}
