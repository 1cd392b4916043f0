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
	seen := map[string]bool{}
	for _, c := range cases {
		if seen[c.Name] {
			t.Errorf("%s: the name is used twice, and with it the seed", c.Name)
		}
		seen[c.Name] = true
		if c.Model == "" {
			t.Errorf("%s: nothing says what it is", c.Name)
		}
		for _, f := range c.figures {
			if f.source == "" || f.knownWords() == "" {
				t.Errorf("%s, %s: source %q, known %q", c.Name, f.quantity, f.source, f.known)
			}
		}
	}
	for _, l := range leftOut {
		if l.Case == "" || l.Reason == "" {
			t.Errorf("left out without a reason: %+v", l)
		}
	}
}

// A warm-up is at least 20 times the longest mean repair, time between stops or busy period, unless a
// new line is asked for.
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
			s := &c.line.Stations[i]
			for k := range s.Stops {
				if longest := max(s.Stops[k].Lasts.Mean(), apart(&s.Stops[k], s)); float64(c.warmUp) < 20*longest-1 {
					t.Errorf("%s: a warm-up of %v µs, a repair or time between stops of %v", c.Name, c.warmUp, longest)
				}
			}
		}
		if busy := busyPeriod(c); float64(c.warmUp) < 20*busy-1 {
			t.Errorf("%s: a warm-up of %v µs, a busy period of %v", c.Name, c.warmUp, busy)
		}
		oneCycle := sim.Micros(c.line.Stations[0].Cycle.Mean())
		if c.measure < 10*c.warmUp && c.measure != oneCycle {
			t.Errorf("%s: the window is short beside the warm-up", c.Name)
		}
	}
	if fromNew != 28 {
		t.Errorf("%d cases begin with a new line, the sources ask for 28", fromNew)
	}
}

// busyPeriod is the mean time for which the servers behind unlimited room are busy without a break: of one
// server service / (1 − load); 0 of other lines. A service with stops takes their repairs as well.
func busyPeriod(c *Case) float64 {
	if c.Family != "queues" || c.line.Buffers[0].Holds != sim.Unlimited || len(c.line.Stations) != 2 {
		return 0
	}
	server := &c.line.Stations[1]
	service := server.Cycle.Mean()
	for k := range server.Stops {
		service *= 1 + server.Stops[k].Lasts.Mean()/server.Stops[k].Every.Mean()
	}
	return service / (1 - service/c.line.Stations[0].Cycle.Mean())
}

// Every line can be compiled.
func TestLinesCompile(t *testing.T) {
	for _, c := range allCases(t) {
		if c.figures[0].kind != sure {
			if _, err := sim.Compile(c.line); err != nil {
				t.Errorf("%s: %v", c.Name, err)
			}
		}
	}
}
