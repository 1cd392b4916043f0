package scenario_test

import (
	"os"
	"testing"
)

// FuzzSetLines changes any value of several lines, or of orders.
func FuzzSetLines(f *testing.F) {
	for _, set := range []string{
		"line 1.cartoner.cycle=90/min", "line 2.cartoner.cycle=75/min", "cartoner.cycle=100/min", "line 2.store.holds=0", "line 2.like=line 3",
		"line 2.blister machine.stops.minor stop.lasts.mean=5 min", "lines.line 2={like: line 1}", "lines={a: [{station: b, cycle: 1 s}]}", "line 1.store.from=line 3.machine b",
		"orders={batch: 2400 blisters, times: 3}", "orders=[{good: 60 cartons, times: without end}]", "changeover.format.lasts=1 h", "line 2=x", "line 2.cartoner={}",
		"answer.counted after=line 2.cartoner", "run.at start.line 2.store=1 blister", "product={carton: {blisters: 3}}", "line 3.machine a.lanes={rate: 90/min}", "line 1.cartoner.random numbers as=x",
	} {
		f.Add(set)
	}
	text, err := os.ReadFile(wholeWords + "lines.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, set string) {
		checkSet(t, "lines.yaml", text, set)
	})
}
