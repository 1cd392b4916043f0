package keyfigure

import (
	"strings"
	"testing"

	"tuckline/internal/quantity"
	"tuckline/sim"
)

func TestLineThatRejectsAllSaysSo(t *testing.T) {
	s := lowmere()
	s.Line.Stations[0].RejectShare = 1
	var b strings.Builder
	if err := Derive(s).Text(&b); err != nil {
		t.Fatal(err)
	}
	if want := "No good cartons come out: blister machine rejects all that it gives."; !strings.Contains(b.String(), want) {
		t.Errorf("%q is missing in\n%s", want, b.String())
	}
}

// Nothing is said of rejects where there are none, neither in the sentence nor in the row.
func TestTiedSpeedNamesRejectsOnlyWhereThereAreSome(t *testing.T) {
	s := sideBySide(2, fixedStop("s", sim.CycleClock, 600, 1))
	for share, want := range map[float64][2]string{
		0:    {"of the tied speed, which is 7 200 cartons/h.", "tied speed"},
		0.01: {"of the tied speed, which is 7 164 cartons/h with rejects taken off.", "tied speed, rejects taken off"},
	} {
		s.Line.Stations[0].RejectShare = share
		f := Derive(s)
		if text := strings.ReplaceAll(f.sentences()[1], quantity.Thin, " "); !strings.HasSuffix(text, want[0]) {
			t.Errorf("rejects %v: %q, want %q at its end", share, text, want[0])
		}
		if row := f.List()[2].Name; row != want[1] {
			t.Errorf("rejects %v: the row is %q, want %q", share, row, want[1])
		}
	}
}
