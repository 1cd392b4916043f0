package keyfigure

import (
	"strings"
	"testing"
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
