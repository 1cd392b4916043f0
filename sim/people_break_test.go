package sim_test

import (
	"testing"

	"tuckline/sim"
)

// hours are spans of so many seconds, one word each: w works, b is a break of line and crews, r one of crews only, l a time in which
// the line stands and crews work, u one in which the line works and nobody is there, o off shift.
func hours(shift int, words string, lasts ...float64) []sim.Span {
	var all []sim.Span
	for i, lasts := range lasts {
		span := sim.Span{Lasts: sim.Micros(lasts * 1e6), Shift: shift}
		switch words[i] {
		case 'b':
			span.Name, span.Line, span.Crews = "break", sim.LineStands, sim.CrewsRest
		case 'r':
			span.Crews = sim.CrewsRest
		case 'l':
			span.Name, span.Line = "tidy", sim.LineStands
		case 'u':
			span.Crews = sim.CrewsAway
		case 'o':
			span.Line, span.Crews, span.Shift = sim.LineOff, sim.CrewsAway, -1
		}
		all = append(all, span)
	}
	return all
}

func calendar(spans ...[]sim.Span) sim.Calendar {
	var c sim.Calendar
	for _, s := range spans {
		c.Spans = append(c.Spans, s...)
	}
	return c
}

// A break in the middle of a repair: the repair is finished, and the fitter has his whole break afterwards; the next request waits
// for him.
func TestBreakAmidARepair(t *testing.T) {
	line := fitters(1, needing("A", 4, 6, 1, 5), needing("B", 11, 2, 1, 5))
	line.Calendar = calendar(hours(0, "wrw", 8, 5, 100))
	course{
		line:    line,
		measure: 22 * s,
		want: `
			0  A running, B running
			4  A down (jam)               # until 10; the break is from 8 to 13
			10 A running                  # until 14; the fitter has his break of 5 s until 15
			11 B waiting for crew (jam)
			14 A waiting for crew (jam)
			15 B down (jam)               # until 17
			17 A down (jam), B running    # until 23
		`,
		counts: `
			fitters: present 15 s          # 0 to 8 and 15 to 22: what he works from 8 to 10 is overtime
			fitters: busy 13 s, overtime 2 s, requests 3, waited 2, wait time 7 s
			run: scheduled 22 s
		`,
	}.follow(t)
}

// Of two fitters one is at work when the break begins: the other has it with all others.
func TestBreakOfOneOfTwo(t *testing.T) {
	line := fitters(2, needing("A", 4, 6, 1, 5), needing("B", 9, 2, 1, 5), needing("C", 14, 1, 1, 5))
	line.Calendar = calendar(hours(0, "wrw", 8, 5, 100))
	course{
		line:    line,
		measure: 16 * s,
		want: `
			0  A running, B running, C running
			4  A down (jam)               # until 10
			9  B waiting for crew (jam)   # the other fitter has his break from 8 to 13
			10 A running                  # the first has his until 15
			13 B down (jam)
			14 A waiting for crew (jam), C waiting for crew (jam)   # the one who is there works until 15
			15 A down (jam), B running, C down (jam)                # A before C by name: both are there now
		`,
		counts: `
			fitters: present 20 s, overtime 2 s   # 2 × 8, one of them from 13 to 15, two from 15 to 16
			fitters: busy 10 s                    # A 6, B 2, A 1, C 1
		`,
	}.follow(t)
}

// One of two stays in breaks: who is free then. The one who is at work has his break afterwards.
func TestOneStaysInBreaks(t *testing.T) {
	line := fitters(2, needing("A", 4, 6, 1, 5), needing("B", 9, 2, 1, 5))
	line.Crews[0].InBreaks = 1
	line.Calendar = calendar(hours(0, "wrw", 8, 5, 100))
	course{
		line:    line,
		measure: 16 * s,
		want: `
			0  A running, B running
			4  A down (jam)
			9  B down (jam)               # by the one who stays
			10 A running                  # the other has his break until 15
			11 B running
			14 A down (jam)
		`,
		counts: `fitters: present 25 s, overtime 2 s, busy 10 s  # 16, 5 in the break, 2 from 13 to 15, 2 × 1`,
	}.follow(t)
}

// Both are at work when the break begins and one is to stay: the first who is free does, the other has his break when he is.
func TestFirstWhoIsFreeStays(t *testing.T) {
	line := fitters(2, needing("A", 4, 5, 1, 5), needing("B", 5, 7, 1, 5), needing("C", 10, 1, 1, 5))
	line.Crews[0].InBreaks = 1
	line.Calendar = calendar(hours(0, "wrw", 8, 5, 100))
	course{
		line:    line,
		measure: 20 * s,
		want: `
			0  A running, B running, C running
			4  A down (jam)               # until 9
			5  B down (jam)               # until 12
			9  A running
			10 C down (jam)               # by the one of A
			11 C running
			12 B running                  # the one of B has his break until 17
			13 A down (jam)               # until 18
			17 B down (jam)               # he is just back
			18 A running
		`,
	}.follow(t)
}

// Relief comes for the breaks, also for work that is not its own, and finishes what it has begun.
func TestReliefInBreaks(t *testing.T) {
	line := fitters(1, needing("A", 9, 6, 1, 5), needing("B", 14, 2, 1, 5))
	line.Crews = append(line.Crews, sim.Crew{Name: "relief", InBreaks: 1, Relief: true, CanAlso: []string{"fitters"}})
	line.Calendar = calendar(hours(0, "wrw", 8, 5, 100))
	course{
		line:    line,
		measure: 20 * s,
		want: `
			0  A running, B running
			9  A down (jam)               # by the relief, until 15, though its time is over at 13
			14 B down (jam)               # the fitter is back
			15 A running
			16 B running
		`,
		counts: `
			fitters: present 15 s, busy 2 s, overtime 0, requests 2, waited 0  # 8, and 13 to 20
			relief: present 5 s, busy 6 s, overtime 2 s, requests 0
		`,
	}.follow(t)
}

// A refill that is asked for in a break waits for its end: the magazine runs empty.
func TestRefillAskedForInABreak(t *testing.T) {
	a := one("A", "", 1)
	a.Materials = []sim.Material{{
		Name: "leaflets", Amount: 12, PerCycle: 1, Refill: 10, Lasts: sec(2), Crew: sim.Work{Crew: "fitters"},
		Alarm: sim.Level{On: true, Level: 2},
	}}
	line := fitters(1, a)
	line.Calendar = calendar(hours(0, "wrw", 8, 8, 100))
	course{
		line:    line,
		measure: 20 * s,
		want: `
			0  A running
			12 A waiting for crew (leaflets)   # asked for at 10, with 2 left
			16 A down (leaflets)
			18 A running
		`,
		counts: `
			fitters: requests 1, waited 1, wait time 6 s, busy 2 s
			A: leaflets late 1, leaflets lateness 6 s
		`,
	}.follow(t)
}

// Two breaks one after the other, and one repair over both: he owes both.
func TestRepairOverTwoBreaks(t *testing.T) {
	line := fitters(1, needing("A", 4, 12, 1, 5), needing("B", 17, 1, 1, 5))
	line.Calendar = calendar(hours(0, "wrwrw", 8, 2, 3, 2, 100)) // breaks from 8 to 10 and from 13 to 15
	course{
		line:    line,
		measure: 22 * s,
		want: `
			0  A running, B running
			4  A down (jam)               # until 16; then 4 s of breaks
			16 A running
			17 B waiting for crew (jam)
			20 A waiting for crew (jam), B down (jam)
			21 A down (jam), B running
		`,
		counts: `fitters: overtime 4 s, present 14 s  # 0 to 8, 10 to 13, 15 to 16, 20 to 22`,
	}.follow(t)
}

// Other work stands still in breaks: the person is in his break too, and goes on with it afterwards.
func TestOtherWorkStandsStillInBreaks(t *testing.T) {
	line := fitters(1, needing("A", 1000, 1, 1, 5))
	line.Crews[0].ElsewhereShare, line.Crews[0].ElsewhereSpell = 0.5, 7*s
	run := func(calendar sim.Calendar, measure sim.Micros) sim.CrewRecord {
		line.Calendar = calendar
		return compile(t, line).NewEngine().Run(sim.Options{Seed: 3, Measure: measure}).Crews[0]
	}
	whole := run(sim.Calendar{}, 300*s)
	parts := run(calendar(hours(0, "wrw", 20, 5, 25)), 335*s) // seven breaks of 5 s
	if whole.Elsewhere == 0 || whole.Elsewhere != parts.Elsewhere || parts.Present != 300*s {
		t.Errorf("at other work for %d of 300 s without breaks, %d of as much with them; present %d", whole.Elsewhere, parts.Elsewhere, parts.Present)
	}
}
