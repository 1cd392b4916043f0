package proof

import (
	"context"
	"math"
	"strings"
	"testing"

	"tuckline/internal/reference"
)

// Each family has a quick case; whoever is in the set takes little, or the least of its family; what
// is recorded are cases that exist.
func TestQuickSet(t *testing.T) {
	cases := allCases(t)
	works, err := worksOf(cases)
	if err != nil {
		t.Fatal(err)
	}
	quick, err := quickOf(cases)
	if err != nil {
		t.Fatal(err)
	}
	in, ofFamily := map[string]bool{}, map[string]int{}
	for _, c := range quick {
		in[c.Name] = true
		ofFamily[c.Family]++
		if works[c] > mostWork {
			for _, other := range cases {
				if other.Family == c.Family && works[other] < works[c] {
					t.Errorf("%s takes %.3g, %s only %.3g", c.Name, works[c], other.Name, works[other])
				}
			}
		}
	}
	for _, c := range cases {
		if !in[c.Name] && works[c] <= mostWork {
			t.Errorf("%s takes only %.3g and is left out", c.Name, works[c])
		}
	}
	for _, f := range families {
		if ofFamily[f.file] == 0 {
			t.Errorf("the quick set has no case of %s", f.title)
		}
	}
	if left := onlyInFull(cases, quick); len(left)+len(quick) != len(cases) {
		t.Errorf("%d and %d of %d cases", len(quick), len(left), len(cases))
	}
	recorded, err := reference.Read(strings.NewReader(replicationsFile))
	if err != nil {
		t.Fatal(err)
	}
	simulated := 0
	for _, c := range cases {
		if c.figures[0].kind != sure {
			simulated++
		}
	}
	if len(recorded) != simulated {
		t.Errorf("%d cases are recorded, %d are simulated", len(recorded), simulated)
	}
}

// What is recorded is near to what a case takes: to 1 % it is within a factor of 2 of the estimate.
func TestRecordedReplicationsHold(t *testing.T) {
	cases := allCases(t)
	works, err := worksOf(cases)
	if err != nil {
		t.Fatal(err)
	}
	names := map[string]bool{}
	for _, name := range some {
		names[name] = true
	}
	for _, c := range cases {
		if !names[c.Name] || c.figures[0].kind == sure {
			continue
		}
		s, err := newSampler(c, c.Name, 2)
		if err == nil {
			err = s.toPrecision(context.Background(), Quick)
		}
		if err != nil {
			t.Fatal(err)
		}
		taken := float64(s.n) * c.replicationWork()
		if off := math.Abs(math.Log2(taken / works[c])); off > 1 {
			t.Errorf("%s took %.3g to come to 1 %%, estimated %.3g", c.Name, taken, works[c])
		}
	}
}
