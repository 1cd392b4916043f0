package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"tuckline/internal/result"
)

// Question 9: a guarantee of 85 %, a run of 8 h. The worked check: a line that stops every 12 min for 2 min (CV 1.5) truly runs 85.7 %, has
// a standard deviation of 3.8 points in 8 h and passes about 58 % of the time, by the renewal central limit theorem; the run
// length for ±1 point is 437 h, so that none of some days is enough for 90 % power.
func TestQuestion9(t *testing.T) {
	a := acceptance(t, `tuckline acceptance scenarios/first-line.yaml --replications 400 --truly "80 %" --truly "90 %" `+
		`--set "agreement={efficiency: 85 %, run: 8 h}" --set "run.confidence=99 %" `+
		`--set "blister machine.rejects=0 %" --set "store.holds=0" --set "cartoner.stops={}" --set "cartoner.cycle=150/min" `+
		`--set "blister machine.stops={stop: {every: {dist: exponential, mean: 12 min running}, lasts: {dist: lognormal, mean: 2 min, cv: 1.5}}}"`)
	e := a.AsEntered
	within(t, "spread of the runs", e.Shown.SD, 0.034, 0.042)
	within(t, "spread by the formula", e.Formula.SD, 0.0375, 0.0385)
	within(t, "true efficiency, lower end", e.True.Low, 0, 12.0/14)
	within(t, "true efficiency, upper end", e.True.High, 12.0/14, 1)
	within(t, "passes, lower end", e.Passing.Low, 0, 0.58)
	within(t, "passes, upper end", e.Passing.High, 0.58, 1)
	within(t, "a line of 80 % passes", a.Curve[0].Passing.Mean, 0, 0.2)
	within(t, "a line of 90 % passes", a.Curve[1].Passing.Mean, 0.9, 1)
	if l := a.RunLength; l.Power != 0.9 || !l.Asked {
		t.Errorf("no run length for 90 %%: %+v", l)
	}
}

// acceptance types an acceptance study and reads its results.
func acceptance(t *testing.T, command string) result.Acceptance {
	t.Helper()
	out := filepath.Join(t.TempDir(), "results")
	typed(t, command, "--out", out)
	text, err := os.ReadFile(filepath.Join(out, "results.json"))
	if err != nil {
		t.Fatal(err)
	}
	var a result.Acceptance
	if err := json.Unmarshal(text, &a); err != nil {
		t.Fatal(err)
	}
	return a
}

// Question 17, its other half: what does serialisation do to OEE, split in availability, performance and quality? The packs that it rejects
// are lost in quality alone; print-and-check is not the machine that limits the line, so that its time is as before.
func TestQuestion17OEE(t *testing.T) {
	command := ` --replications 16 --show OEE --show availability --show performance --show quality --show "no-reads"`
	before, after := ask(t, "tuckline run scenarios/tarn-hollow.yaml"+command), ask(t, "tuckline run scenarios/tarn-hollow-serialised.yaml"+command)
	of := func(a answer, name string) float64 { return a.measure(t, name, "line").Mean }
	for _, name := range []string{"availability", "performance"} {
		within(t, name+" after, less that before", of(after, name)-of(before, name), -0.0005, 0.0005)
	}
	within(t, "quality after", of(after, "quality")-of(before, "quality"), -0.05, -0.002)
	// What is lost of the output is lost of quality, and OEE falls by the same share.
	share := after.mean(t, "good_output") / before.mean(t, "good_output")
	within(t, "quality after of that before", of(after, "quality")/of(before, "quality"), share-1e-3, share+1e-3)
	within(t, "OEE after of that before", of(after, "OEE")/of(before, "OEE"), share-1e-3, share+1e-3)
}

// Question 18: our report says 61 %, the model says more: why? Steps from one way of counting to the other, each the work of one choice,
// which close to the last digit; the rest is no matter of counting. By hand: from set speed 50 to top speed 60 the OEE falls to 5/6.
func TestQuestion18(t *testing.T) {
	a := ask(t, `tuckline run scenarios/mossgill.yaml --show OEE --set "key figures.as reported.OEE=61 %"`)
	steps := a.KeyFigures.Steps
	want := []string{"", "material counts as", "planned run time from", "minor stop shorter than", result.StepData}
	if len(steps) != len(want) {
		t.Fatalf("%d steps: %+v", len(steps), steps)
	}
	sum := steps[0].OEE.Mean
	for i, step := range steps {
		if step.Choice != want[i] {
			t.Errorf("step %d is %q, not %q", i, step.Choice, want[i])
		}
		sum += step.Points.Mean
	}
	if math.Abs(sum-0.61) > 1e-12 {
		t.Errorf("the steps come to %v, not to 61 %%", sum)
	}
	if own := a.measure(t, "OEE", "line"); steps[0].OEE.Mean != own.Mean || steps[0].Is != "own" || steps[3].Is != "reported" {
		t.Errorf("the chain goes from %+v to %+v, the OEE is %+v", steps[0], steps[3], own)
	}
	within(t, "top speed against set speed", steps[2].OEE.Mean/steps[1].OEE.Mean, 5.0/6-1e-9, 5.0/6+1e-9)
	within(t, "points of the threshold", steps[3].Points.Mean, 0, 0)
	greaterShare(t, "minor stops from 30 s to 5 min are no longer performance", steps[3].Performance.Low, steps[2].Performance.High)
}

func greaterShare(t *testing.T, what string, more, than float64) {
	t.Helper()
	if more <= than {
		t.Errorf("%s: %v is not more than %v", what, more, than)
	}
}
