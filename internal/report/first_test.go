package report

import (
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/study"
	"tuckline/sim"
)

func TestWordsOfCauses(t *testing.T) {
	o := inventedOutcome()
	o.Scenario.Line.Stations[0].Ramp = 15 * sim.Second
	ramp := study.Cause{Kind: result.LossSlower, At: []string{o.Scenario.Line.Stations[0].Name}}
	if got := subjectOf(o).causeWords(ramp, false); got != "slower than set speed: the ramp after each start" {
		t.Errorf("got %q", got)
	}
	both := []string{"blister machine 1", "blister machine 2"}
	for want, cause := range map[string]study.Cause{
		"minor stop of blister machine 1 and blister machine 2":            {Kind: result.LossStop, Stop: "minor stop", Stations: both, At: both},
		"breakdown of cartoner":                                            {Kind: result.LossStop, Stop: "breakdown", Stations: []string{"cartoner"}, At: both},
		"starved: waits for pieces, blister machine 1":                     {Kind: result.LossStarved, At: both[:1]},
		"blocked: waits for room, blister machine 1 and blister machine 2": {Kind: result.LossBlocked, At: both},
		"empty pockets, blister machine 2":                                 {Kind: result.LossPockets, At: both[1:]},
	} {
		if got := subjectOf(o).causeWords(cause, true); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	for want, kind := range map[string]result.LossKind{"starved: waits for pieces": result.LossStarved, "scrap": result.LossScrap, "slower than set speed": result.LossSlower} {
		if got := subjectOf(o).causeWords(study.Cause{Kind: kind, At: both[:1]}, false); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// A line that rejects everything has no station that limits it, and no interval to show.
func TestNoGoodPiecesAreSaid(t *testing.T) {
	o := inventedOutcome()
	for i := range o.Shifts {
		o.Shifts[i] = 0
	}
	for i := range o.RunningMean {
		o.RunningMean[i] = result.Estimate{N: i + 2}
	}
	none := result.Estimate{N: 40}
	o.Results.Output = result.Output{Unit: "cartons", PerHour: none, Total: none}
	o.Scenario.Line.Stations[0].RejectShare = 1
	o.Constraint, o.Causes = "", nil
	o.Span = study.Span{Buffered: true, None: none, Now: none, Unlimited: none}
	page := wordsOf(t, Page{Outcome: o})
	var terminal strings.Builder
	if err := Terminal(&terminal, Page{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	words := strings.Join(strings.Fields(terminal.String()), " ")
	for _, text := range []string{page, words} {
		for _, want := range []string{
			"No good cartons come out of the line in any of the 40 simulated shifts.",
			"Without any limit of buffers none would come out either.", "The blister machine rejects all that it gives.",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("%q is missing", want)
			}
		}
		for _, never := range []string{"The limit", "limited by :", "fewer than 0", "between 0 and 0", "The set the limit", "no buffer at all: 0"} {
			if strings.Contains(text, never) {
				t.Errorf("it says %q", never)
			}
		}
	}
}

// What one shift in ten makes needs ten shifts.
func TestTenthsNeedTenShifts(t *testing.T) {
	for _, n := range []int{9, 10} {
		o := inventedOutcome()
		o.Shifts, o.RunningMean, o.Records = o.Shifts[:n], o.RunningMean[:n-1], o.Records[:n]
		o.Results.Replications = n
		text := wordsOf(t, Page{Outcome: o})
		for _, tenth := range []string{"One shift in ten makes fewer than", "Eight shifts in ten", "dashed lines", "is a quantile of"} {
			if strings.Contains(text, tenth) != (n >= 10) {
				t.Errorf("%d shifts: %q", n, tenth)
			}
		}
		if strings.Contains(text, "The 9 simulated shifts made 2") != (n < 10) {
			t.Errorf("%d shifts: the range", n)
		}
	}
}

// Where the input of every shift is used up, the answer is what came out of it
// and when, not a rate over time in which nothing was left to do.
func TestAnswerOfAFiniteSupply(t *testing.T) {
	o := inventedOutcome()
	o.UsedUp = study.UsedUp{N: 40, AfterHours: about(6.412, 0.21)}
	got := strings.ReplaceAll(subjectOf(o).answer()[0], thin, " ")
	want := "The line makes 29 610 ± 190 cartons from all its input on average, what the first 2 h made not counted; nothing is left to do 6.41 ± 0.21 h after the start."
	if i := strings.Index(got, " cartons"); got[i:] != want[strings.Index(want, " cartons"):] || !strings.HasPrefix(got, "The line makes 29 ") {
		t.Errorf("got %q", got)
	}
	if strings.Contains(got, "scheduled hour") {
		t.Errorf("got %q", got)
	}
	o.Scenario.Run.WarmUp = 0
	if got := subjectOf(o).answer()[0]; strings.Contains(got, "not counted") {
		t.Errorf("got %q", got)
	}
	o.UsedUp.N = 39 // some go on to the end of the window
	if got := subjectOf(o).answer()[0]; !strings.Contains(got, "scheduled hour") {
		t.Errorf("got %q", got)
	}
}
