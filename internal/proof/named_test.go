package proof

import (
	"context"
	"errors"
	"strings"
	"testing"
)

// What is left out is said for the cases that were asked for, and for no other.
func TestLeftOutOfNamedCases(t *testing.T) {
	for name, want := range map[string]string{
		"ACC-2":         "ACC-2, prob_full_buffer_outlasts_upstream_stop",
		"LANES-1":       "",
		"REEL-5":        "",
		"DET-1":         "",
		"SCRAPUP-DET-1": "",
		"KNRUN-1":       "",
		"TWO-1":         "",
	} {
		o, err := Prove(context.Background(), Options{Only: []string{name}})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got := strings.Join(each(o.LeftOut, func(l LeftOut) string { return l.Case }), "; ")
		if got != want || o.LeftOut == nil {
			t.Errorf("%s: left out %q, want %q", name, got, want)
		}
	}
}

// A name that is left out says why; one that does not exist says which is near; all of them at once.
func TestNamesThatCannotBeCompared(t *testing.T) {
	_, err := Prove(context.Background(), Options{Only: []string{"TWO1", "RESID-1", "TWO-1", "ACC-2, prob_full_buffer_outlasts_upstream_stop"}})
	if !errors.Is(err, ErrCaseName) {
		t.Fatalf("%v", err)
	}
	const want = `there is no case "TWO1"; did you mean "TWO-1"?
"RESID-1" is left out of the proof: pure arithmetic on a law: no command tells how much of a repair is left
"ACC-2, prob_full_buffer_outlasts_upstream_stop" is left out of the proof: pure arithmetic that no command uses`
	if err.Error() != want {
		t.Errorf("%s\nwant\n%s", err, want)
	}
}

// Each verdict says what was compared: a count, a value within the rounding or the allowance of a
// line of pieces, one that is drawn.
func TestVerdictsOfFiguresWithoutChance(t *testing.T) {
	for _, c := range []struct {
		row  Row
		want string
	}{
		{Row{Sure: true, Inside: true}, "exact"},
		{Row{Sure: true}, "FAULT: not exact"},
		{Row{Sure: true, Inside: true, says: toTheAllowance}, "agrees to the allowance"},
		{Row{Sure: true, Inside: true, says: noneAbove}, "none above"},
		{Row{Sure: true, says: noneAbove}, "FAULT: some above"},
		{Row{Sure: true, Inside: true, Tolerance: 0.003, says: agrees}, "agrees to 0.003"},
		{Row{Inside: true, Allowance: 0.1, Exact: 1, Low: 1.05, High: 1.2}, "inside with the allowance"},
		{Row{Inside: true, Allowance: 0.1, Exact: 1, Low: 0.95, High: 1.2}, "inside, without the allowance too"},
		{Row{Sure: true, says: agrees}, "FAULT: does not agree"},
	} {
		if got := c.row.Verdict(); got != c.want {
			t.Errorf("%+v: %q, want %q", c.row, got, c.want)
		}
	}
	o := compareSome(t, []string{"ACC-2"}, nil)
	for i, want := range []string{"exact", "exact", toTheAllowance} {
		if got := o.Rows[i].Verdict(); got != want {
			t.Errorf("ACC-2, %s: %q, want %q", o.Rows[i].Quantity, got, want)
		}
	}
}

// Where nothing is simulated there is nothing to count, expect or be outside of.
func TestAnswerWithoutSimulatedCases(t *testing.T) {
	o := compareSome(t, []string{"REEL-5"}, nil)
	if got := strings.Join(o.Answer(), " "); got != "5 figures computed without an interval; no case was simulated. Every figure agrees: no fault was found." {
		t.Error(got)
	}
	o = compareSome(t, []string{"REEL-5"}, func(c *Case) { c.figures[0].exact *= 1.01 })
	if got := strings.Join(o.Answer(), " "); got != "5 figures computed without an interval; no case was simulated. 1 figure is a fault: see the line marked so." {
		t.Error(got)
	}
	if got := compareSome(t, []string{"REEL-5", "DET-1", "TWO-1"}, nil).Answer(); len(got) != 4 {
		t.Error(got)
	}
}
