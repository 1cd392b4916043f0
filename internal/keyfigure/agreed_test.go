package keyfigure

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/scenarios"
)

// TestAgreedByHand: the blister machine is the slowest: 50 cycles/min of 4 blisters, 2 in a carton, are 100 cartons/min, 120 at its
// top speed of 60; the cartoner makes 125. 85 % of 6000/h are 5100, 95 % of 7200/h are 6840.
func TestAgreedByHand(t *testing.T) {
	text, err := scenarios.FS.ReadFile("mossgill.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		sets []string
		full float64
		says string
	}{
		{nil, 100, "85.0 % of 6 000/h at set speed of the slowest station = 5 100 good cartons/h; with buffers without limit the line makes 5 361 on average run 8 h scheduled, from 1 h after the start;"},
		{[]string{"agreement={efficiency: 95 %, of: top speed, run: 90 min, scheduled from: 0 h}"}, 120, "95.0 % of 7 200/h at top speed of the slowest station = 6 840 good cartons/h; with buffers without limit the line makes 5 361 on average, which is less run 1.5 h scheduled, from 0 h after the start;"},
	} {
		s, err := scenario.Read("mossgill.yaml", text, scenario.Options{Sets: c.sets})
		if err != nil {
			t.Fatal(err)
		}
		f := Derive(s)
		closeTo(t, "full output", f.Agreed.Full, c.full, 1e-9)
		var b strings.Builder
		if err := f.Text(&b); err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(strings.Fields(b.String()), " "); !strings.Contains(got, c.says) {
			t.Errorf("%q is missing in\n%s", c.says, b.String())
		}
	}
	if f := Derive(readExample(t, "lowmere.yaml")); f.Agreed != nil {
		t.Errorf("nothing is agreed at Lowmere, not %+v", f.Agreed)
	}
}
