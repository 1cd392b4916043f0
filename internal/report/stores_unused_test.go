package report

import (
	"strings"
	"testing"

	"tuckline/internal/result"
)

// A hand magazine of which nothing is carried out never runs dry either: that is no good news, and the heading says why.
func TestAHandMagazineOfWhichNothingIsCarriedOut(t *testing.T) {
	s := subjectOf(inventedOutcome())
	value := func(v float64) result.Estimate { return result.Estimate{Mean: v, Low: v, High: v, N: 20} }
	for _, c := range []struct {
		back, dry float64
		byHand    bool
		says      string
	}{
		{0, 0, true, "Nothing is carried out of the magazine"},
		{12, 0, true, "never runs dry"},
		{0, 0, false, "never runs dry"},
		{0, 0.2, true, "runs dry in 20"},
	} {
		b := result.Buffer{Name: "magazine", Beside: &result.Beside{GivenBack: value(c.back), DryWindows: value(c.dry), RanDry: value(c.dry)}}
		if c.byHand {
			b.Beside.ByHand = value(30)
		}
		if got := s.storesHeading([]result.Buffer{b}); !strings.Contains(got, c.says) {
			t.Errorf("%+v: %q does not say %q", c, got, c.says)
		}
	}
}
