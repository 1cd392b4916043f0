package sim_test

import (
	"testing"

	"tuckline/sim"
)

// pocketing is A before B, which runs so many pockets in a row through empty.
func pocketing(a, b float64, most int64) sim.Line {
	second := one("B", "A", b)
	second.EmptyPockets = sim.EmptyPockets{On: true, Most: most}
	return sim.Line{Stations: []sim.Station{one("A", "", a), second}}
}

// One pocket, then B waits. An empty pocket is a cycle long and runs.
func TestEmptyPocketThenWait(t *testing.T) {
	course{
		line:    pocketing(3, 1, 1),
		measure: 9 * s,
		want: `
			0 A running, B running   # a pocket until 1
			1 B starved
			3 B running              # a stack until 4, a pocket until 5
			5 B starved
			6 B running              # 7, 8
			8 B starved
		`,
		counts: `B: cycles 2, taken 2, passed 2, empty pockets 3, running 5 s, starved 4 s, starved spells 3, restarts 1`, // 1 to 3 is longer than a cycle,
	}.follow(t)
}

// A stack that comes while a pocket runs through waits for its end.
func TestEmptyPocketDelaysAStack(t *testing.T) {
	course{
		line:    pocketing(3.5, 1, 5),
		measure: 8_500_000,
		want: `
			0   A running, B running   # pockets until 1, 2, 3, 4
			3.5 A blocked
			4   A running              # B works until 5, then pockets until 6, 7, 8
			7.5 A blocked
			8   A running
		`,
		counts: `A: passed 2; B: cycles 1, empty pockets 7, taken 2, input at last 1`,
	}.follow(t)
}

// A stack that comes at the very instant is in time, whatever the order of names.
func TestNoEmptyPocketForAStackInTime(t *testing.T) {
	line := pocketing(2, 1, 1)
	line.Stations[0].Name, line.Stations[1].From = "C", "C"
	for _, l := range []sim.Line{pocketing(2, 1, 1), line} {
		rec := compile(t, l).NewEngine().Run(sim.Options{Measure: 10 * s})
		// A pocket 0 to 1, cycles 2 to 3, 4 to 5 … 8 to 9 with a pocket after each; that until 10 is outside.
		if b := rec.Stations[1]; b.EmptyPockets != 4 || b.Cycles != 4 || b.States[sim.Starved] != s {
			t.Errorf("%d pockets, %d cycles, starved for %d µs", b.EmptyPockets, b.Cycles, b.States[sim.Starved])
		}
		if a := rec.Stations[0]; a.States[sim.Blocked] != 0 {
			t.Errorf("blocked for %d µs", a.States[sim.Blocked])
		}
	}
}

// A pocket ages no clock and uses no material: B stops after two stacks, and changes the reel after three.
func TestEmptyPocketAgesNothing(t *testing.T) {
	line := pocketing(3, 1, 1)
	b := &line.Stations[1]
	b.Stops = []sim.Stop{jam(2.5, 0.5)}
	b.Materials = []sim.Material{reel("reel", 300, 0.5)}
	course{
		line:    line,
		measure: 12_500_000,
		want: `
			0    A running, B running
			1    B starved
			3    B running           # the first, until 4; a pocket until 5
			5    B starved
			6    B running           # the second, until 7
			8    B starved
			9    B running
			9.5  B down (jam)        # half of the third
			10   B running           # until 10.5
			10.5 B down (reel)
			11   B running           # a pocket until 12, when the fourth comes
		`,
		counts: `B: cycles 3`,
	}.follow(t)
}

// A stop of the calendar interrupts a pocket, which goes on afterwards; one that scraps ends it. A pocket has
// no input that could be lost.
func TestEmptyPocketIsInterrupted(t *testing.T) {
	line := pocketing(10, 2, 1)
	look := sim.Stop{Name: "look", Clock: sim.CalendarClock, Every: sec(1), Lasts: sec(3)}
	line.Stations[1].Stops = []sim.Stop{look}
	course{
		line:    line,
		measure: 6 * s,
		want: `
			0 A running, B running
			1 B down (look)
			4 B running          # the second half of the pocket
			5 B down (look)      # begins when it ends
		`,
		counts: `B: empty pockets 1, cycles 0, taken 0, input at last 0`,
	}.follow(t)
	line.Stations[1].Stops[0].Scraps = true
	course{
		line:    line,
		measure: 6 * s,
		want: `
			0 A running, B running
			1 B down (look)
			4 B starved          # one pocket in a row has begun
			5 B down (look)
		`,
		counts: `B: empty pockets 0, taken 0`,
	}.follow(t)
}

// A station that its start level holds runs no pocket; nor does one that lacks room for what it gives.
func TestNoEmptyPocketBehindAStartLevel(t *testing.T) {
	line := withBuffer(one("A", "", 1), one("B", "", 1), sim.Buffer{
		Name: "buffer", Holds: 5, Start: sim.Level{On: true, Level: 2},
	})
	line.Stations[1].EmptyPockets = sim.EmptyPockets{On: true, Most: 3}
	course{
		line:    line,
		measure: 5_500_000,
		want: `
			0 A running, B starved
			1 buffer 1
			2 B running           # two have come: one is taken
		`,
		counts: `B: empty pockets 0, cycles 3`,
	}.follow(t)
	line = pocketing(1, 1, 5)
	line.Stations[1].BlocksBefore = true
	line.Stations = append(line.Stations, one("C", "B", 10))
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 8 * s})
	if b := rec.Stations[1]; b.EmptyPockets != 1 || b.States[sim.Starved] != 5*s {
		// A pocket 0 to 1, stacks 1 to 2 for C and 2 to 3 for the place before it. Then input and room both lack.
		t.Errorf("%d empty pockets, starved for %d µs", b.EmptyPockets, b.States[sim.Starved])
	}
}

// Supply that comes to its end: the pockets that may still run, then the end.
func TestEmptyPocketsAtTheEnd(t *testing.T) {
	line := pocketing(2, 1, 2)
	line.Stations[0].Supply = 2
	course{
		line:    line,
		measure: 20 * s,
		want: `
			0 A running, B running   # two pockets, the second ends as the first stack comes
			4 A starved              # stacks at 2 and 4, two pockets from 5 on
			7 B starved
		`,
		end: "input used up",
	}.follow(t)
}

// A pocket after a standstill has its heat recovery, and the next cycle has none.
func TestEmptyPocketRecoversHeat(t *testing.T) {
	line := pocketing(8, 1, 1)
	line.Stations[1].HeatRecovery = 2 * s
	line.Stations = append(line.Stations, one("C", "B", 12))
	course{
		line:    line,
		measure: 26_500_000,
		want: `
			0  A running, B running, C starved   # a pocket until 1
			1  B starved
			8  B running                         # 2 s, then until 11
			11 C running                         # until 23; a pocket of B until 12
			12 B starved
			16 B running                         # 2 s, then until 19
			19 B blocked
			23 B running                         # no stack: a pocket, 2 s and 1 s, until 26
			24 A blocked
			26 A running
		`,
		counts: `B: cycles 2, empty pockets 3, restarts 3`,
	}.follow(t)
}
