package sim_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/sim"
)

// A repair over the end of a shift: the fitter finishes it in overtime; the next shift is fully there.
func TestRepairOverTheEndOfAShift(t *testing.T) {
	line := fitters(1, needing("A", 8, 6, 1, 5), needing("B", 11, 2, 1, 5))
	line.Calendar = calendar(hours(0, "w", 10), hours(1, "w", 100))
	course{
		line:    line,
		measure: 20 * s,
		want: `
			0  A running, B running
			8  A down (jam)               # until 14, by the one of the first shift
			11 B down (jam)               # by the one of the second
			13 B running
			14 A running
		`,
		counts: `fitters: present 20 s, busy 8 s, overtime 4 s, waited 0`,
	}.follow(t)
}

// A shift ends in the middle of a cycle: it is frozen and goes on the next morning. After that standstill the first two cycles are
// scrap, the frozen one included.
func TestCycleOverTheNight(t *testing.T) {
	a := one("A", "", 4)
	a.AfterStandstill = []sim.ScrapRule{{LongerThan: 5 * s, Cycles: 2}}
	line := sim.Line{Stations: []sim.Station{a, one("B", "A", 1)}}
	line.Calendar = calendar(hours(0, "wo", 10, 20))
	course{
		line:    line,
		measure: 50 * s,
		want: `
			0  A running, B starved
			4  B running
			5  B starved
			8  B running
			9  B starved
			10 A off shift, B off shift    # 2 of the 4 s are done
			30 A running, B starved        # until 32 and 36 the two that are scrap
			40 A off shift, B off shift    # the third of the morning ends at 40: B does not take it any more
		`,
		counts: `
			A: cycles 5, scrapped cycles 2, passed 2, output at last 1, running 20 s, off shift 30 s
			B: cycles 2, off shift 30 s, restarts 1
			run: scheduled 20 s, window 50 s
		`,
	}.follow(t)
}

// People by shift: two on the first, none on the second, one on the third. Work that begins at the end of the first is finished.
func TestPeopleByShift(t *testing.T) {
	line := fitters(2, needing("A", 4, 3, 2, 5), needing("B", 9, 2, 1, 5), needing("C", 12, 1, 1, 5))
	line.Crews[0].ByShift = []int{2, 0, 1}
	line.Calendar = calendar(hours(0, "w", 10), hours(1, "w", 10), hours(2, "w", 10))
	course{
		line:    line,
		measure: 32 * s,
		want: `
			0  A running, B running, C running
			4  A down (jam)               # both of them
			7  A running
			9  B down (jam)               # until 11, one in overtime
			11 A waiting for crew (jam), B running
			12 C waiting for crew (jam)
			20 B waiting for crew (jam)   # after 9 s of running; A asked first, and one is not enough: all wait for the first shift
			30 A down (jam)               # until 33
		`,
		counts: `
			fitters: present 34 s  # 20, 0, 10, 4
			fitters: busy 12 s, overtime 1 s, requests 3, waited 1, wait time 19 s
			C: waiting for crew 20 s
		`,
	}.follow(t)
}

// Times of the line that are no working time, state by state, with the edges of the window inside of them: a break from 8 to 12, tidying
// from 20 to 23, and the night from 23 to 40.
func TestStatesByTheHour(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{one("A", "", 3)},
		Calendar: calendar(hours(0, "wbwlo", 8, 4, 8, 3, 17)),
	}
	course{
		line:    line,
		warmUp:  10 * s,
		measure: 20 * s,
		want: `
			0  A running
			8  A planned stop
			12 A running
			20 A planned stop
			23 A off shift
		`,
		counts: `
			A: planned stop 5 s, running 8 s, off shift 7 s, cycles 3  # ends at 13, 16 and 19
			run: scheduled 13 s, window 20 s
		`,
	}.follow(t)
}

// A stop of the calendar, every 12 s, begins at night: its work is done then, and the line does not notice.
func TestCalendarStopAtNight(t *testing.T) {
	a := one("A", "", 1)
	a.Stops = []sim.Stop{
		{Name: "check", Every: sec(12), Clock: sim.CalendarClock, Lasts: sec(3)},
	}
	course{
		line:    sim.Line{Stations: []sim.Station{a}, Calendar: calendar(hours(0, "wo", 10, 10))},
		measure: 40 * s,
		want: `
			0  A running
			10 A off shift       # the check is from 12 to 15
			20 A running
			27 A down (check)    # 15 + 12
			30 A off shift       # when it is over at 30
		`,
		counts: `A: check count 2, check down 6 s, down 3 s, off shift 20 s, cycles 17`,
	}.follow(t)
}

// Finished output leaves in a break, and belts run on: what B holds at 4 goes onto the belt when the piece before it has left that,
// but C takes nothing until 10.
func TestBeltRunsOnInABreak(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{one("A", "", 2), one("B", "belt", 1)},
		Buffers:  []sim.Buffer{{Name: "belt", From: []string{"A"}, Holds: 9, Transit: 3 * s, Conveyor: true}},
		Calendar: calendar(hours(0, "wbw", 4, 6, 100)),
	}
	course{
		line:    line,
		measure: 13 * s,
		want: `
			0  A running, B starved
			2  belt 1
			4  A planned stop, B planned stop, belt 2   # the second piece leaves A just then
			10 A running, B running, belt 1             # both have arrived, at 5 and at 7
			11 belt 0
			12 B starved, belt 1
		`,
		counts: `A: cycles 3, passed 3, planned stop 6 s; B: cycles 2, taken 2`,
	}.follow(t)
}

// The whole shifts in the window, with what was passed on in each: one piece a second while the line works.
func TestShiftsInTheWindow(t *testing.T) {
	line := sim.Line{
		Stations: []sim.Station{one("A", "", 1)},
		Calendar: calendar(hours(0, "wbw", 10, 5, 10), hours(1, "w", 20), hours(0, "o", 15)), // 60 s
	}
	e := compile(t, line).NewEngine()
	for _, c := range []struct {
		from, to sim.Micros
		want     []sim.ShiftRecord
	}{
		// The first shift is from 0 to 25, with a break from 10 to 15: pieces leave at 1 to 10 and at 16 to 24. The one of 25 counts in
		// the second shift, which ends at 45, and so does that of 45: no shift begins before 60. It is not in a window that ends at 45.
		{0, 45 * s, []sim.ShiftRecord{
			{Shift: 0, Begin: 0, Scheduled: 25 * s, Passed: []int64{19}},
			{Shift: 1, Begin: 25 * s, Scheduled: 20 * s, Passed: []int64{20}},
		}},
		{1, 50 * s, []sim.ShiftRecord{{Shift: 1, Begin: 25 * s, Scheduled: 20 * s, Passed: []int64{21}}}},
		{1, 85 * s, []sim.ShiftRecord{
			{Shift: 1, Begin: 25 * s, Scheduled: 20 * s, Passed: []int64{21}},
			{Shift: 0, Begin: 60 * s, Scheduled: 25 * s, Passed: []int64{19}},
		}},
		{45 * s, 60 * s, nil},
		{60 * s, 84 * s, nil},
		{60 * s, 105 * s, []sim.ShiftRecord{
			{Shift: 0, Begin: 60 * s, Scheduled: 25 * s, Passed: []int64{19}},
			{Shift: 1, Begin: 85 * s, Scheduled: 20 * s, Passed: []int64{20}},
		}},
		// From one night to the next: all that the 60 s make, 40 pieces, are in the two shifts.
		{50 * s, 110 * s, []sim.ShiftRecord{
			{Shift: 0, Begin: 60 * s, Scheduled: 25 * s, Passed: []int64{19}},
			{Shift: 1, Begin: 85 * s, Scheduled: 20 * s, Passed: []int64{21}},
		}},
	} {
		got := e.Run(sim.Options{WarmUp: c.from, Measure: c.to - c.from, Every: 7 * s})
		if d := cmp.Diff(c.want, got.Shifts); d != "" {
			t.Errorf("%d to %d: %s", c.from, c.to, d)
		}
		if n := int((c.to - c.from) / (7 * s)); len(got.Series) != n {
			t.Errorf("%d intervals, not %d", len(got.Series), n)
		}
	}
}
