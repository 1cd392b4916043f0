package keyfigure

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
)

const steppedLine = `tuckline: 1
line:
  - {station: web, cycle: 60/min, gives: 4 blisters}
  - {buffer: store, holds: 720 blisters}
  - {conveyor: belt, length: 2 m, speed: 24 m/min, pitch: 62 mm, accumulating: yes}
  - {station: cartoner, cycle: 80/min, top speed: 100/min, takes: 3 blisters, gives: 1 carton, STEPS}
`

func stepped(t *testing.T, steps string, drop ...string) Figures {
	t.Helper()
	text := strings.Replace(steppedLine, "STEPS", "speed steps: "+steps, 1)
	for _, line := range strings.SplitAfter(text, "\n") {
		for _, name := range drop {
			if strings.Contains(line, name+",") {
				text = strings.Replace(text, line, "", 1)
			}
		}
	}
	s, err := scenario.Read("steps.yaml", []byte(text), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return Derive(s)
}

func TestCheckSaysWhichPlaceASpeedStepReads(t *testing.T) {
	steps := "[{from level: 40 %, back at: 30 %, run at: 90/min}, {from level: 50 %, back at: 40 %, run at: top speed}]"
	var b strings.Builder
	if err := stepped(t, steps, "conveyor: belt").Text(&b); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"speed step  90 cycles/min from 288 blisters in store, back at 216\n",
		"speed step  top speed, 100 cycles/min, from 360 blisters in store, back at 288\n",
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("%q is missing in\n%s", want, b.String())
		}
	}
	if strings.Contains(b.String(), "always on") {
		t.Error("a step that reads a store is not always on")
	}
}

// By hand: the belt holds 32 blisters; 240 a minute that take 5 s are 20 on the
// way, more than half of 32.
func TestStepThatReadsABeltIsAlwaysOn(t *testing.T) {
	f := stepped(t, "{from level: 50 %, back at: 40 %, run at: top speed}")
	want := "The speed step of cartoner from 16 blisters reads belt, where 20 are on the way at set speed: it is always on."
	if got := strings.Join(f.Warnings, "\n"); !strings.Contains(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
