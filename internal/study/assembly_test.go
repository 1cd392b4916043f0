package study

import (
	"testing"

	"tuckline/internal/scenario"
)

// leaflets makes 1 leaflet a second and is the slower input of the cartoner, which takes
// two for a carton. Nothing is left to chance.
const leaflets = `tuckline: 1
run: {warm-up: 990 s, measure: 9900 s, replications: 2}
line:
  - {station: blister machine, cycle: 1 s, gives: 4 blisters}
  - {buffer: store, holds: 100 blisters}
  - station: leaflet folder
    from: supply
    cycle: 1 s
    gives: 1 leaflet
    after stop: {scrap: 20 cycles}
    stops: {jam: {every: 900 cycles, lasts: 90 s}}
  - {buffer: leaflets, holds: 100 leaflets}
  - {station: cartoner, takes: {store: 3 blisters, leaflets: 2 leaflets}, gives: 1 carton, cycle: 0.5 s}
`

// By hand: the folder makes 900 cycles in 990 s and loses 20 of them, so that ten rounds give
// 8,800 leaflets or 4,400 cartons and scrap 200 leaflets or 100 cartons in 2.75 hours; 4,400 of 4,500 are good.
func TestSideInputsOfAnAssemblyLosePiecesOfTheAnswer(t *testing.T) {
	s, err := scenario.Read("leaflets.yaml", []byte(leaflets), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	o := mustRun(t, s, Options{Show: []string{"scrap", "yield"}})
	if got := o.Results.Output.Total.Mean; got != 4400 {
		t.Errorf("%v cartons, want 4400", got)
	}
	want := []float64{100 / 2.75, 200 / 2.75, 4400.0 / 4500}
	if len(o.Results.Measures) != len(want) {
		t.Fatalf("measures %+v", o.Results.Measures)
	}
	for i, m := range o.Results.Measures {
		if d := m.Value.Mean - want[i]; d > 1e-12 || d < -1e-12 {
			t.Errorf("%s: got %v, want %v", m.Name, m.Value.Mean, want[i])
		}
	}
}
