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

// A stack that comes while a pocket runs through waits for its end, in the one place (2 × 1 − 1) between A and B.
func TestEmptyPocketDelaysAStack(t *testing.T) {
	course{
		line:    pocketing(3.5, 1, 5),
		measure: 8_500_000,
		want: `
			0   A running, B running   # pockets until 1, 2, 3, 4
			3.5 A to B 1
			4   A to B 0               # B works until 5, then pockets until 6, 7; from 7 on the second stack
		`,
		// A works on: 3.5, 7. A last pocket from 8 on is under way.
		counts: `A: passed 2, blocked 0 s; B: cycles 2, empty pockets 6, taken 2, input at last 0`,
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
	// A pocket 0 to 1, stacks 1 to 2 for C and 2 to 3 for the place before it. Then room lacks; input too, if A makes
	// no more than two.
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 8 * s})
	if b := rec.Stations[1]; b.EmptyPockets != 1 || b.States[sim.Blocked] != 5*s {
		t.Errorf("%d empty pockets, blocked for %d µs", b.EmptyPockets, b.States[sim.Blocked])
	}
	line.Stations[0].Supply = 2
	rec = compile(t, line).NewEngine().Run(sim.Options{Measure: 8 * s})
	if b := rec.Stations[1]; b.EmptyPockets != 1 || b.States[sim.Starved] != 5*s {
		t.Errorf("%d empty pockets, starved for %d µs", b.EmptyPockets, b.States[sim.Starved])
	}
}

// What it lacks while it is stopped does not starve it, so that the level does not hold its pockets either.
func TestEmptyPocketAfterAStopBehindAStartLevel(t *testing.T) {
	line := startLevel(4, 1, 3)
	b := &line.Stations[1]
	b.EmptyPockets = sim.EmptyPockets{On: true, Most: 1}
	b.Stops = []sim.Stop{{Name: "check", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(0.5)}}
	for _, b.LoadsWhileStopped = range []bool{false, true} {
		course{
			line:    line,
			measure: 6 * s,
			want: `
				0   A running, B running, store 2
				1   store 1
				2   store 0
				3   B down (check)
				3.5 B running         # a pocket until 4.5
				4   store 1
				4.5 store 0           # the stack, until 5.5, then a pocket
			`,
			counts: `B: cycles 4, empty pockets 1`,
		}.follow(t)
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
			24 A to B 1
			26 A to B 0                          # the stack, until 27
		`,
		counts: `B: cycles 2, empty pockets 3, restarts 3`,
	}.follow(t)
}

// While a stack waits for its pocket the next one is collected: A is never blocked by B, which is faster.
// With takes − 1 = 2 places A would hold the third piece from 3 to 4, and each stack would be late anew.
func TestNextStackIsCollectedBesideOneThatWaits(t *testing.T) {
	line := pocketing(1, 2, 2)
	line.Stations[1].Takes = 3
	rec := compile(t, line).NewEngine().Run(sim.Options{Measure: 12_500_000})
	// Stacks are complete at 3, 6, 9, 12. Pockets 0 to 2 and 2 to 4, stacks 4 to 6 and 6 to 8, a pocket 8 to 10, stacks
	// 10 to 12 and from 12 on.
	a, b := rec.Stations[0], rec.Stations[1]
	if a.Passed != 12 || a.States[sim.Blocked] != 0 {
		t.Errorf("A passes %d and is blocked for %d µs", a.Passed, a.States[sim.Blocked])
	}
	if b.Cycles != 3 || b.EmptyPockets != 3 || b.Taken != 12 || b.States[sim.Starved] != 0 {
		t.Errorf("B: %d cycles, %d empty pockets, %d taken, starved for %d µs", b.Cycles, b.EmptyPockets, b.Taken, b.States[sim.Starved])
	}
}

// The faster B is, the less it holds A up: at 21 stacks a minute as at 20, A makes its 60 pieces a minute and B
// 20 stacks, 1200 an hour. By hand: a stack comes every 3 s and waits for its pocket at most one cycle, 60/21 s, which is
// less than the next takes.
func TestAFasterStackerLosesNothing(t *testing.T) {
	for _, rate := range []float64{20, 21, 30, 60} {
		line := pocketing(1, 60/rate, 2)
		line.Stations[1].Takes = 3
		rec := compile(t, line).NewEngine().Run(sim.Options{WarmUp: sim.Minute, Measure: sim.Hour})
		if b := rec.Stations[1]; b.Passed < 1199 || b.Passed > 1201 { // one at either end of the window
			t.Errorf("at %v a minute it makes %d", rate, b.Passed)
		}
		if a := rec.Stations[0]; a.States[sim.Blocked] != 0 {
			t.Errorf("at %v a minute A is blocked for %d µs", rate, a.States[sim.Blocked])
		}
	}
}

// The places before empty pockets, by hand: 2 × takes − 1, what is given at once less the one that passes straight
// through if that is more, beside what is reserved before a cycle. Without pockets the smallest that cannot lock.
func TestPlacesBeforeEmptyPockets(t *testing.T) {
	for _, c := range []struct {
		gives, takes    int64
		before, pockets bool
		want            int64
		stacks          bool
	}{
		{1, 1, false, true, 1, true},
		{1, 3, false, true, 5, true},
		{4, 3, false, true, 5, true}, // gives − 1 is only 3
		{8, 3, false, true, 7, false},
		{4, 3, true, true, 9, true},
		{1, 3, false, false, 2, false},
		{4, 3, false, false, 3, false},
		{4, 3, true, false, 6, false},
	} {
		line := pocketing(1, 1, 1)
		a, b := &line.Stations[0], &line.Stations[1]
		a.Gives, a.BlocksBefore, b.Takes = c.gives, c.before, c.takes
		if !c.pockets {
			b.EmptyPockets = sim.EmptyPockets{}
		}
		if p := compile(t, line).Places()[0]; p.Capacity != c.want || p.Stacks != c.stacks {
			t.Errorf("%+v: %d places, stacks %v", c, p.Capacity, p.Stacks)
		}
		line.Buffers = []sim.Buffer{{Name: "store", From: []string{"A"}, Holds: sim.Smallest}}
		b.From = "store"
		if p := compile(t, line).Places()[0]; p.Capacity != c.want {
			t.Errorf("%+v: a smallest buffer has %d places", c, p.Capacity)
		}
		if line.Buffers[0].Holds = max(c.gives, c.takes) - 1; line.Buffers[0].Holds > 0 && !c.before {
			if p := compile(t, line).Places()[0]; p.Capacity != line.Buffers[0].Holds { // what is written holds what is written
				t.Errorf("%+v: a written buffer has %d places", c, p.Capacity)
			}
		}
	}
}
