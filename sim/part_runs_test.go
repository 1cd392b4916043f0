package sim_test

import (
	"testing"

	"tuckline/sim"
)

// Of rejects in and outside runs those in runs are counted apart: every other cycle is in a run,
// and all are rejected.
func TestRejectsInRunsAreCounted(t *testing.T) {
	line := alone(1)
	line.Stations[0].Runs, line.Stations[0].RejectShare = everyOther, 1
	course{
		line: line, measure: 10_500_000, want: `0 A running`,
		counts: `A: cycles 10, rejected 10, in runs 5`,
	}.follow(t)
}

// They are counted where they leave: what leaves in cycles 4 to 10 was found in cycles 1 to 7, of
// which 2, 4 and 6 were in runs.
func TestRejectsInRunsLeaveLater(t *testing.T) {
	line := alone(1)
	a := &line.Stations[0]
	a.Runs, a.RejectShare, a.RejectsAfter = everyOther, 1, 3
	course{
		line: line, measure: 10_500_000, want: `0 A running`,
		counts: `A: cycles 10, rejected 7, in runs 3`,
	}.follow(t)
}

// In a run without rejects none is counted.
func TestQuietRunsHaveNoRejects(t *testing.T) {
	line := alone(1)
	line.Stations[0].Runs, line.Stations[0].RejectShare = sim.RejectRuns{Enter: 1, Share: 0, Length: 1}, 1
	course{
		line: line, measure: 5_500_000, want: `0 A running`,
		counts: `A: cycles 5, rejected 3, in runs 0`,
	}.follow(t)
}
