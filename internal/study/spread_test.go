package study

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"
)

// The spread is the standard deviation of the windows, all stations of a line of one run when it runs,
// and the share of requests that waited is that of the crew.
func TestMeasuresOfSpreadAndTogether(t *testing.T) {
	s := readText(t, scattered)
	s.Run.HalfWidth, s.Run.AtMost, s.Run.Replications = 0, 0, 30
	o, err := Run(t.Context(), s, Options{Show: []string{"spread of good output", "all stations running"}})
	if err != nil {
		t.Fatal(err)
	}
	spread, together := o.Results.Measures[0].Value, o.Results.Measures[1].Value
	if sd := stat.StdDev(o.Shifts, nil) / 8; math.Abs(spread.Mean-sd) > 1e-9*sd || !(spread.Low < sd && sd < spread.High) {
		t.Errorf("spread %+v, standard deviation an hour %v", spread, sd)
	}
	if together != o.Results.Stations[0].States.Running {
		t.Errorf("all running %+v, the only station %+v", together, o.Results.Stations[0].States.Running)
	}
}
