package sim_test

import (
	"testing"

	"tuckline/sim"
)

// assembling is A (1 s), which takes one of P and so many of Q; FP and FQ feed them.
func assembling(fp, fq float64, q int64, buffers ...sim.Buffer) sim.Line {
	a := one("A", "P", 1)
	a.Also = []sim.Input{{From: "Q", Takes: q}}
	return sim.Line{Stations: []sim.Station{one("FP", "", fp), one("FQ", "", fq), a}, Buffers: buffers}
}

// A waits for all its input and takes it at once.
func TestAssemblyWaitsForAllInput(t *testing.T) {
	course{
		line: assembling(2, 3, 2,
			sim.Buffer{Name: "P", From: []string{"FP"}, Holds: 2}, sim.Buffer{Name: "Q", From: []string{"FQ"}, Holds: 3}),
		measure: 16 * s,
		want: `
			0  FP running, FQ running, A starved
			2  P 1
			3  Q 1
			4  P 2
			6  A running, Q 0        # the second of Q: A takes 1 and 2; FP's third takes the place in P
			7  A starved
			8  FP blocked            # P is full
			9  Q 1
			12 FP running, A running, Q 0
			13 A starved
			14 FP blocked
			15 Q 1
		`,
		counts: `A: cycles 2, taken 2; P: in 4, out 2; Q: in 5, out 4`,
	}.trail(t)
}

// Through a place for none a piece passes straight through only when the others are there.
func TestAssemblyPassThroughWaitsForTheOthers(t *testing.T) {
	course{
		line: assembling(2, 3, 2,
			sim.Buffer{Name: "P", From: []string{"FP"}, Holds: 0}, sim.Buffer{Name: "Q", From: []string{"FQ"}, Holds: 3}),
		measure: 13500 * sim.Micros(1000),
		want: `
			0  FP running, FQ running, A starved
			2  FP blocked                       # A lacks Q
			3  Q 1
			6  FP running, A running, Q 0       # FP's piece goes straight to A
			7  A starved
			8  FP blocked
			9  Q 1
			12 FP running, A running, Q 0
			13 A starved
		`,
		counts: `A: taken 2; FP: passed 2, holding 8 s; P: in 2, out 2, max 0`,
	}.trail(t)
}

// Hand-overs that the program puts cannot lock the line, of an assembly either.
func TestAssemblyByHandOversDoesNotLock(t *testing.T) {
	line := assembling(2, 3, 2)
	line.Stations[2].From, line.Stations[2].Also[0].From = "FP", "FQ"
	rec := compile(t, line).NewEngine().Run(sim.Options{Seed: 1, Measure: 60 * s})
	if rec.End != sim.HorizonReached {
		t.Fatalf("the run ended with %s of %q at %d", rec.End, rec.Locked, rec.EndedAt)
	}
	if taken := rec.Stations[2].Taken; taken < 9 || taken > 10 { // FQ brings two in 6 s: at 6, 12 … 54
		t.Errorf("A took %d in a minute", taken)
	}
}

// A buffer that is written with fewer places than cannot lock is refused.
func TestAssemblyPlacesThatLockAreRefused(t *testing.T) {
	line := assembling(2, 3, 2,
		sim.Buffer{Name: "P", From: []string{"FP"}, Holds: 0}, sim.Buffer{Name: "Q", From: []string{"FQ"}, Holds: 1})
	m, err := sim.Compile(line)
	if err != nil {
		return // with the number
	}
	if rec := m.NewEngine().Run(sim.Options{Seed: 1, Measure: 60 * s}); rec.End == sim.Deadlock {
		t.Errorf("the line was accepted and locks at %d: %q", rec.EndedAt, rec.Locked)
	}
}

// A waits for room before its cycle. If some input and room both lack, it is starved; if only
// room lacks, blocked.
func TestAssemblyStarvedBeforeBlocked(t *testing.T) {
	line := assembling(1, 4, 1,
		sim.Buffer{Name: "P", From: []string{"FP"}, Holds: 3}, sim.Buffer{Name: "Q", From: []string{"FQ"}, Holds: 3},
		sim.Buffer{Name: "out", From: []string{"A"}, Holds: 1})
	line.Stations[2].BlocksBefore = true
	line.Stations = append(line.Stations, one("K", "out", 10))
	course{
		line:    line,
		measure: 18 * s,
		want: `
			0  FP running, FQ running, A starved, K starved
			1  P 1
			2  P 2
			3  P 3
			4  A running                            # FQ's first; FP's fourth takes the place
			5  FP blocked, A starved, K running     # K until 15
			8  FP running, A running
			9  FP blocked, A starved, out 1         # room lacks too
			12 A blocked, Q 1                       # all input is there, room lacks
			15 FP running, A running, Q 0, out 0
			16 FP blocked, A blocked, Q 1, out 1
		`,
		counts: `A: cycles 3, blocked 5 s, starved 10 s, running 3 s; K: taken 2`, // starved 0-4, 5-8, 9-12; blocked 12-15, 16-18
	}.trail(t)
}

// Two that assemble share a store: who goes first by name takes only if all its input is there.
func TestAssemblyDoesNotKeepOthersFromAStore(t *testing.T) {
	line := assembling(2, 5, 1,
		sim.Buffer{Name: "P", From: []string{"FP"}, Holds: 5}, sim.Buffer{Name: "Q", From: []string{"FQ"}, Holds: 5})
	line.Stations = append(line.Stations, one("B", "P", 3))
	course{
		line:    line,
		measure: 11 * s,
		want: `
			0  FP running, FQ running, A starved, B starved
			2  B running              # A lacks Q; B until 5
			4  P 1
			5  P 0, Q 1               # B takes before FQ's piece comes, until 8
			6  A running, Q 0         # both could take FP's third if B were not at work
			7  A starved
			10 A running              # at 8 B took FP's fourth; FQ's second and FP's fifth
		`,
		counts: `A: taken 2; B: taken 3`,
	}.trail(t)
}
