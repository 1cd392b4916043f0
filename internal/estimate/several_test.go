package estimate

import (
	"testing"

	"pgregory.net/rapid"
)

// Hand computation: sorted 0.005 · 4, 0.01 · 3, 0.03 · 2, then 0.04 · 1 is held up by 0.06.
func TestHolm(t *testing.T) {
	got := Holm([]float64{0.01, 0.04, 0.03, 0.005})
	for i, want := range []float64{0.03, 0.06, 0.06, 0.02} {
		near(t, "adjusted", got[i], want, 1e-15)
	}
	if got := Holm(nil); len(got) != 0 {
		t.Errorf("nothing gave %v", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SliceOfN(rapid.Float64Range(0, 1), 1, 20).Draw(t, "p")
		adjusted := Holm(p)
		for i := range p {
			if adjusted[i] < p[i] || adjusted[i] > 1 || adjusted[i] > p[i]*float64(len(p))+1 {
				t.Fatalf("%v became %v", p, adjusted)
			}
			for j := range p {
				if p[i] < p[j] && adjusted[i] > adjusted[j] {
					t.Fatalf("%v became %v: the order changed", p, adjusted)
				}
			}
		}
	})
}

// Three differences at 97 % together are three at 99 % each; the paired interval of
// Law (see interval_test.go) is one of them with the sign turned.
func TestSimultaneous(t *testing.T) {
	a := []float64{126.97, 124.31, 126.68, 122.66, 127.23}
	b := []float64{118.21, 120.22, 122.45, 122.68, 119.4}
	got := Simultaneous(a, [][]float64{b, a, b[:4]}, 0.97)
	want := Paired(b, a, 0.99)
	near(t, "low", got[0].Low, want.Low, 1e-9)
	near(t, "high", got[0].High, want.High, 1e-9)
	if got[1].HalfWidth() != 0 || got[1].N != 5 || got[2].N != 0 {
		t.Errorf("%+v", got)
	}
	single := Simultaneous(a, [][]float64{b}, 0.9)[0]
	near(t, "low of one", single.Low, -8.31, 0.01)
	near(t, "high of one", single.High, -1.65, 0.01)
	if none := Simultaneous(a, nil, 0.9); len(none) != 0 {
		t.Errorf("nothing gave %v", none)
	}
}
