package report

import (
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// By hand: at 72 cycles/min a tool that is closed for 0.45 of the cycle seals for
// 0.45 · 60/72 = 0.375 s. Every sentence that states an output then says so, with the numbers.
func TestEveryOutputSaysThatItIsOutsideTheQualifiedDwell(t *testing.T) {
	const outside = "outside the qualified dwell (blister machine: 0.375 s at 72 cycles/min, 0.4 s to 0.6 s is qualified)"
	o := inventedOutcome()
	cycle := 60e6 / 72
	o.Scenario.Line.Stations[0].Cycle = sim.Fixed(cycle)
	o.Scenario.Stations[0].SetCycle, o.Scenario.Stations[0].TopCycle = cycle, cycle
	o.Scenario.Stations[0].Sealing = scenario.Sealing{DwellShare: 0.45, DwellMin: 400_000, DwellMax: 600_000}
	o.Results.Measures = []result.Measure{{Name: "good output", Of: "cartons", Per: "shift", Value: about(29640, 341)}}
	var terminal strings.Builder
	if err := Terminal(&terminal, Page{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	page, shown := wordsOf(t, Page{Outcome: o}), strings.Join(strings.Fields(terminal.String()), " ")
	for _, want := range []string{"per scheduled hour, ", "one in ten more than 30 500, all ", "with the same random numbers, ", "All output here is ", "in the long run, ", "30 500 cartons, ", "Output asked for is "} {
		if !strings.Contains(page, want+outside) {
			t.Errorf("the page does not say %q", want+outside)
		}
	}
	for _, want := range []string{"per scheduled hour, ", "one in ten more than 30 500, all ", "with the same random numbers, ", "Output asked for is "} {
		if !strings.Contains(shown, want+outside) {
			t.Errorf("the terminal does not say %q:\n%s", want+outside, shown)
		}
	}
	for _, inside := range []int{60, 67} { // 0.45 s, 0.403 s
		cycle := 60e6 / float64(inside)
		o.Scenario.Line.Stations[0].Cycle = sim.Fixed(cycle)
		o.Scenario.Stations[0].SetCycle, o.Scenario.Stations[0].TopCycle = cycle, cycle
		if strings.Contains(wordsOf(t, Page{Outcome: o}), "outside the qualified dwell (") {
			t.Errorf("at %d cycles/min it is called outside", inside)
		}
	}
}
