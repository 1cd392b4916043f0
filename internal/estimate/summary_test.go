package estimate

import (
	"slices"
	"testing"
)

// Ten values of Law, Simulation Modeling and Analysis, ch. 9: at 90 % a relative
// half-width of 0.10 needs 33, an absolute one of 0.10 needs 48 replications
// (exact evaluation of the printed formulas apart from this program).
var tenOfLaw = []float64{1.2, 1.5, 1.68, 1.89, 0.95, 1.49, 1.58, 1.55, 0.5, 1.09}

func TestNeeded(t *testing.T) {
	now := Of(tenOfLaw, 0.9)
	if got := NeededRelative(now, 0.10, 0.9); got != 33 {
		t.Errorf("relative: %d, want 33", got)
	}
	if got := Needed(now, 0.10, 0.9); got != 48 {
		t.Errorf("absolute: %d, want 48", got)
	}
	if got := Needed(now, 10, 0.9); got != 10 {
		t.Errorf("already enough: %d, want 10", got)
	}
	for what, got := range map[string]int{
		"no interval": Needed(Of([]float64{3}, 0.9), 1, 0.9), "no width": Needed(now, 0, 0.9),
		"mean 0": NeededRelative(Of([]float64{-1, 1}, 0.9), 0.1, 0.9), "beyond the bound": Needed(now, 1e-9, 0.9),
	} {
		if got != 0 {
			t.Errorf("%s: %d, want 0", what, got)
		}
	}
}

func TestDoubts(t *testing.T) {
	even := make([]float64, 40)
	for i := range even {
		even[i] = 100 + float64(i%5)
	}
	lopsided := slices.Repeat([]float64{1}, 20)
	lopsided[7], lopsided[12] = 50, 50 // skewness 2.888, 25 · 2.888² = 208.5
	for _, c := range []struct {
		what   string
		sample []float64
		wanted float64
		want   []string
	}{
		{"nothing", nil, 0, []string{"0 replications: no interval can be given; run at least 10."}},
		{"one", []float64{5}, 0.01, []string{"1 replication: no interval can be given; run at least 10."}},
		{"five", even[:5], 0, []string{"Only 5 replications: too few to see whether the interval can be trusted; run at least 10."}},
		{"enough", even, 0.01, nil},
		{"all equal", slices.Repeat([]float64{3}, 12), 0.01, nil},
		{"wide", tenOfLaw, 0.10, []string{"The interval reaches ± 18 % of the mean, ± 10 % was asked for; about 33 replications would reach it, 10 were run."}},
		{"lopsided", lopsided, 0, []string{"The results of the 20 replications are lopsided; about 209 would be needed for an interval that can be trusted."}},
	} {
		var got []string
		for _, d := range Summarise(c.sample, 0.9, c.wanted).Doubts {
			got = append(got, d.String())
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s:\ngot  %q\nwant %q", c.what, got, c.want)
		}
	}
}
