package study

import (
	"context"
	"math"
	"testing"

	"tuckline/internal/result"
)

// Two orders of 1,000 blisters make 333 cartons of 3 each and leave a blister, which the cartoner rejects: 2/3 of a carton to 666
// good ones. Yield 666 / (666 + 2/3) = 99.9 %. The bundler closes a bundle with the carton that is left of bundles of 4, which is
// no loss.
func TestPartInputIsRejected(t *testing.T) {
	s := read(t, `tuckline: 1
product: {name: A, blister: {tablets: 10}, carton: {blisters: 3}, bundle: {cartons: 4}}
run: {replications: 2}
answer: {in: cartons, counted after: cartoner, per: shift}
line:
  - {station: blister machine, cycle: 60/min, gives: 4 blisters}
  - {buffer: store, holds: 500 blisters}
  - {station: cartoner, cycle: 60/min, takes: 3 blisters, gives: 1 carton}
  - {station: bundler, cycle: 20/min, takes: 4 cartons, gives: 1 bundle}
orders: [{batch: 1000 blisters, product: A, times: 2}]
changeover: {same product: {lasts: 10 min}}
`)
	out, err := Run(context.Background(), s, Options{Workers: 1, Show: []string{"rejects", "yield", "good output"}})
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]result.Measure{}
	for _, m := range out.Results.Measures {
		got[m.Name+" of "+m.Of] = m
	}
	for name, want := range map[string]float64{
		"good output of cartons": 666, "rejects of line": 2.0 / 3, "yield of line": 666 / (666 + 2.0/3),
		"rejects of cartoner, part input at the end of an order": 2,
	} {
		if m, there := got[name]; !there || math.Abs(m.Value.Mean-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", name, m.Value.Mean, want)
		}
	}
	if unit := got["rejects of cartoner, part input at the end of an order"].Unit; unit != "blisters" {
		t.Errorf("in %q", unit)
	}
}
