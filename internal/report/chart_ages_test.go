package report

import (
	"math"
	"testing"

	"tuckline/internal/result"
	"tuckline/sim"
)

// aged are a hundred pieces of 3 min, fifty of 7 min and one of 5 h.
func aged() *sim.Ages {
	ages := &sim.Ages{}
	ages.Add(3*sim.Minute, 100)
	ages.Add(7*sim.Minute, 50)
	ages.Add(5*sim.Hour, 1)
	return ages
}

// By hand: the oldest hundredth begins behind 7 min, so the step is 0.5 min, the next round one above
// 7/30; 100 and 50 of 151 pieces, and one in the last.
func TestBinsOfAges(t *testing.T) {
	bins := ageBins(aged())
	if bins[0].to != 0.5 || len(bins) != 31 {
		t.Fatalf("%d bins of %v min", len(bins), bins[0].to)
	}
	shares := map[int]float64{}
	for i, b := range bins {
		if b.share > 0 {
			shares[i] = b.share
		}
	}
	// 3 min lies at the edge of two bins, and a class is within 1 %.
	if got := shares[5] + shares[6]; math.Abs(got-100.0/1.51) > 1e-9 {
		t.Errorf("3 min: %v", shares)
	}
	if got := shares[13] + shares[14]; math.Abs(got-50.0/1.51) > 1e-9 {
		t.Errorf("7 min: %v", shares)
	}
	if math.Abs(shares[30]-1/1.51) > 1e-9 {
		t.Errorf("5 h: %v", shares)
	}
}

func TestAgesAreShownWhereAskedFor(t *testing.T) {
	o := inventedOutcome()
	o.Ages = aged()
	if one, err := agesSection(subjectOf(o)); one != nil || err != nil {
		t.Errorf("nobody asked and there is %+v (%v)", one, err)
	}
	o.Results.Measures = []result.Measure{
		{Name: "time in line", Of: "mean", Per: "piece, in seconds", Value: about(205, 16)},
		{Name: "time in line", Of: "P95", Per: "piece, in seconds", Value: about(1110, 120)},
	}
	says(t, wordsOf(t, Page{Outcome: o}), "Good cartons have been in the line for 3.42 ± 0.27 min on average; one in twenty for more than 18.5 ± 2.0 min", "more than 15 min 0.66", "2.5 to 3 min")
}
