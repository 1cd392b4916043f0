package proof

import (
	"testing"

	"tuckline/sim"
)

func allCases(t *testing.T) []*Case {
	t.Helper()
	cases, _, err := Cases()
	if err != nil {
		t.Fatal(err)
	}
	return cases
}

func caseOf(t *testing.T, name string) *Case {
	t.Helper()
	for _, c := range allCases(t) {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("there is no case %s", name)
	return nil
}

// Reading fails if a row is used for nothing; here every value must have its source, every case
// its words and whatever is left out its reason.
func TestEveryValueHasItsSource(t *testing.T) {
	cases, leftOut, err := Cases()
	if err != nil {
		t.Fatal(err)
	}
	seen, figures := map[string]bool{}, 0
	for _, c := range cases {
		if seen[c.Name] {
			t.Errorf("%s: the name is used twice, and with it the seed", c.Name)
		}
		seen[c.Name] = true
		if c.Model == "" {
			t.Errorf("%s: nothing says what it is", c.Name)
		}
		for _, f := range c.figures {
			figures++
			if f.source == "" || knownWords[f.known] == "" {
				t.Errorf("%s, %s: source %q, known %q", c.Name, f.quantity, f.source, f.known)
			}
		}
	}
	for _, l := range leftOut {
		if l.Case == "" || l.Reason == "" {
			t.Errorf("left out without a reason: %+v", l)
		}
	}
	t.Logf("%d cases, %d figures, %d left out", len(cases), figures, len(leftOut))
}

// A warm-up is at least 20 times the longest mean repair, unless a new line is asked for.
func TestWarmUpOfEveryCase(t *testing.T) {
	fromNew := 0
	for _, c := range allCases(t) {
		if c.figures[0].kind == sure {
			continue
		}
		if c.warmUp == 0 || c.measure == 1 {
			fromNew++
			continue
		}
		for i := range c.line.Stations {
			for k := range c.line.Stations[i].Stops {
				repair := c.line.Stations[i].Stops[k].Lasts.Mean()
				if float64(c.warmUp) < 20*repair-1 {
					t.Errorf("%s: a warm-up of %v µs, a repair of %v", c.Name, c.warmUp, repair)
				}
			}
		}
		if c.measure < 10*c.warmUp {
			t.Errorf("%s: the window is short beside the warm-up", c.Name)
		}
	}
	if fromNew != 28 {
		t.Errorf("%d cases begin with a new line, the sources ask for 28", fromNew)
	}
}

// Every line can be compiled, and the names of the slow cases are names of cases; each family has
// quick ones.
func TestLinesAndSets(t *testing.T) {
	slowSeen, quickIn := 0, map[string]bool{}
	for _, c := range allCases(t) {
		if c.figures[0].kind != sure {
			if _, err := sim.Compile(c.line); err != nil {
				t.Errorf("%s: %v", c.Name, err)
			}
		}
		if slow[c.Name] {
			slowSeen++
		} else {
			quickIn[c.Family] = true
		}
	}
	if slowSeen != len(slow) {
		t.Errorf("%d of %d slow cases exist", slowSeen, len(slow))
	}
	for _, f := range families {
		if !quickIn[f.file] {
			t.Errorf("the quick set has no case of %s", f.title)
		}
	}
}
