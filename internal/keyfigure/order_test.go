package keyfigure

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
)

// TestOrdersByHand: 2,520,000 tablets of 40 a cycle at 60 cycles a minute are 63,000 cycles in 1050 min = 17.5 h; with
// 132 mm each they draw 8316 m of reels of pi (0.600^2 - 0.076^2) / (4 x 250e-6) - 12 = 1100.8 m and
// pi (0.300^2 - 0.076^2) / (4 x 27e-6) - 10 = 2440.0 m.
func TestOrdersByHand(t *testing.T) {
	f := Derive(readExample(t, "lowmere.yaml"))
	if len(f.Orders) != 1 || len(f.Orders[0].Times) != 1 || len(f.SetUps) != 0 {
		t.Fatalf("%+v %+v", f.Orders, f.SetUps)
	}
	time := f.Orders[0].Times[0]
	within(t, "hours", time.Hours, 17.5, 1e-9)
	within(t, "forming foil", time.Reels[0].N, 8316/1100.8, 1e-3)
	within(t, "lidding foil", time.Reels[1].N, 8316/2440.0, 1e-3)
}

// TestOrdersOfLinesSideBySide: two machines that merge make a batch in half the time of one; each of two lines makes
// it alone. 1,200,000 capsules of 30 a cycle at 50 cycles a minute are 800 min.
func TestOrdersOfLinesSideBySide(t *testing.T) {
	merged, twin := Derive(readExample(t, "brackwater-merged.yaml")), Derive(readExample(t, "brackwater-twin.yaml"))
	within(t, "merged", merged.Orders[0].Times[0].Hours, 400.0/60, 1e-9)
	within(t, "twin", twin.Orders[0].Times[0].Hours, 800.0/60, 1e-9)
	for _, f := range []Figures{merged, twin} {
		// Three batches between two format changes.
		if len(f.SetUps) != 2 || f.SetUps[0].N != 1 || f.SetUps[0].Minutes != 210 || f.SetUps[1].N != 2 || f.SetUps[1].Minutes != 60 || !f.WithoutEnd {
			t.Errorf("changeovers %+v", f.SetUps)
		}
	}
	// All that limits the twins is as in one of them, and they make twice as much.
	single := Derive(readText(t, withoutSecondLine(t)))
	within(t, "with buffers", twin.Bounds.Unlimited, 2*single.Bounds.Unlimited, 1e-6)
	within(t, "without buffers", twin.Bounds.Rigid, 2*single.Bounds.Rigid, 1e-6)
	within(t, "at set speed", twin.Bounds.AtSet, 2*single.Bounds.AtSet, 1e-6)
}

// TestConstraintOfEachLine changes one of two lines so that something else limits it.
func TestConstraintOfEachLine(t *testing.T) {
	f := Derive(readSet(t, "brackwater-twin.yaml", "line 2.cartoner.cycle=50/min", "line 2.cartoner.top speed=50/min"))
	if got := f.sentences()[0]; !strings.HasPrefix(got, "Of line 1 the constraint is blister machine, of line 2 cartoner. With buffers without limit the lines together make at most ") {
		t.Error(got)
	}
	if orders := f.Orders[0].Times; len(orders) != 1 || orders[0].Line != "" {
		t.Errorf("the machines at the head are still alike: %+v", orders)
	}
	f = Derive(readSet(t, "brackwater-twin.yaml", "line 2.blister machine.cycle=40/min"))
	if orders := f.Orders[0].Times; len(orders) != 2 || orders[1].Line != "line 2" || orders[0].Hours >= orders[1].Hours {
		t.Errorf("the second line takes longer: %+v", orders)
	}
}

// TestOrdersAsPeopleSeeThem holds the text of orders against a file.
func TestOrdersAsPeopleSeeThem(t *testing.T) {
	var all strings.Builder
	text, err := os.ReadFile("../../testdata/whole-words/orders.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []*scenario.Scenario{
		readExample(t, "lowmere.yaml"), readExample(t, "tarn-hollow.yaml"), readExample(t, "brackwater-merged.yaml"),
		readSet(t, "brackwater-twin.yaml", "line 2.blister machine.cycle=40/min"), readText(t, string(text)),
	} {
		f := Derive(s)
		all.WriteString(wrapped("", f.sentences()[0], 0))
		f.writeOrders(&all)
		all.WriteString("\n")
	}
	path := filepath.Join("testdata", "orders.txt")
	if *update {
		if err := os.WriteFile(path, []byte(all.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), all.String()); diff != "" {
		t.Error(diff)
	}
}

func within(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if got < want*(1-by) || got > want*(1+by) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

func readText(t *testing.T, text string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("orders", []byte(text), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// readSet reads an example with changes of the command line.
func readSet(t *testing.T, name string, sets ...string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read(name, readExample(t, name).Source, scenario.Options{Sets: sets})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// withoutSecondLine is the first of the twin lines alone.
func withoutSecondLine(t *testing.T) string {
	t.Helper()
	text := string(readExample(t, "brackwater-twin.yaml").Source)
	begin := strings.Index(text, "\n  line 2:")
	end := begin + 1 + strings.Index(text[begin+1:], "\n")
	return text[:begin] + text[end:]
}
