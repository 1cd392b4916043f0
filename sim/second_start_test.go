package sim_test

import (
	"testing"

	"tuckline/sim"
)

// startLevel is A and B with a store between them from which B starts at 3 pieces.
func startLevel(a, b float64, at int64) sim.Line {
	return withBuffer(one("A", "", a), one("B", "", b),
		sim.Buffer{Name: "store", Holds: 10, AtStart: at, Start: sim.Level{On: true, Level: 3}})
}

// At time 0 and after it has been starved for more than no time B waits for 3 pieces; what it
// lacks for no time it takes at once.
func TestStartLevel(t *testing.T) {
	course{
		line:    startLevel(2, 1, 0),
		measure: 17 * s,
		want: `
			0  A running, B starved
			2  store 1
			4  store 2
			6  B running         # the third is there: takes one
			7  store 1
			9  store 0           # at 8 one taken, one put
			11 B starved         # at 10 it lacked one for no time: took it at once
			12 store 1
			14 store 2
			16 B running
		`,
		counts: `B: taken 6, starved 11 s`, // 6, 7, 8, 9, 10, 16
	}.trail(t)
}

// At time 0 it counts what is there at the start.
func TestStartLevelAtTimeZero(t *testing.T) {
	course{
		line:    startLevel(2, 5, 2),
		measure: 3 * s,
		want: `
			0 A running, B starved, store 2
			2 B running
		`,
	}.trail(t)
	course{
		line:    startLevel(2, 5, 3),
		measure: 3 * s,
		want: `
			0 A running, B running, store 2
			2 store 3
		`,
	}.trail(t)
}

// It counts what has arrived, not what is in transit.
func TestStartLevelCountsWhatHasArrived(t *testing.T) {
	line := startLevel(1, 5, 0)
	line.Buffers[0].Transit = 3 * s
	course{
		line:    line,
		measure: 6500 * sim.Micros(1000),
		want: `
			0 A running, B starved
			1 store 1
			2 store 2
			3 store 3
			4 store 4          # the first arrives
			5 store 5
			6 B running        # the third arrives; B takes one, A puts one
		`,
	}.trail(t)
}

// It acts after all moves of the instant: at 6 A puts three, C takes one of them, and two are
// not enough for B.
func TestStartLevelAfterAllMoves(t *testing.T) {
	a, b, c := one("A", "", 3), one("B", "store", 1), one("C", "store", 3)
	a.Gives, c.Priority = 3, 1
	course{
		line: sim.Line{
			Stations: []sim.Station{a, b, c},
			Buffers:  []sim.Buffer{{Name: "store", From: []string{"A"}, Holds: 10, Start: sim.Level{On: true, Level: 3}}},
		},
		measure: 9500 * sim.Micros(1000),
		want: `
			0 A running, B starved, C starved
			3 B running, C running, store 1      # both have waited since time 0
			4 store 0
			5 B starved
			6 store 2                            # C has not been starved: takes one at once
			9 B running, store 3                 # 2 − 1 + 3 = 4 after C and A; B takes one
		`,
	}.trail(t)
}

// When no more input can come the level no longer applies: the last two are worked.
func TestStartLevelLapsesWithTheSupply(t *testing.T) {
	line := startLevel(2, 1, 0)
	line.Stations[0].Supply = 7
	course{
		line:    line,
		measure: 20 * s,
		want: `
			0  A running, B starved
			2  store 1
			4  store 2
			6  B running
			7  store 1
			9  store 0
			11 B starved
			12 store 1
			14 A starved, B running   # the seventh and last: two are there, B takes one
			15 store 0
			16 B starved
		`,
		counts: `A: passed 7; B: cycles 7`,
		end:    "input used up",
	}.trail(t)
}

// So it does behind a station between: nothing more can come when that one is empty too.
func TestStartLevelLapsesBehindAnother(t *testing.T) {
	a, m, b := one("A", "", 2), one("M", "A", 1), one("B", "store", 1)
	a.Supply = 2
	course{
		line: sim.Line{
			Stations: []sim.Station{a, m, b},
			Buffers:  []sim.Buffer{{Name: "store", From: []string{"M"}, Holds: 10, Start: sim.Level{On: true, Level: 3}}},
		},
		measure: 10 * s,
		want: `
			0 A running, M starved, B starved
			2 M running
			3 M starved, store 1
			4 A starved, M running    # the second and last
			5 M starved, B running    # two are there
			6 store 0
			7 B starved
		`,
		end: "input used up",
	}.trail(t)
}

// A stop while it waits for the level changes nothing: it waits on.
func TestStartLevelThroughAStop(t *testing.T) {
	line := startLevel(2, 1, 0)
	line.Stations[1].Stops = []sim.Stop{{Name: "check", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(2)}}
	course{
		line:    line,
		measure: 6500 * sim.Micros(1000),
		want: `
			0 A running, B starved
			2 store 1
			3 B down (check)
			4 store 2
			5 B starved
			6 B running
		`,
	}.trail(t)
}

// What it lacks while it is stopped does not starve it, whether it takes its input then or waits for the end: no level holds
// it. At 6 it is starved and waits for 3 pieces.
func TestStartLevelIsNotArmedByAStop(t *testing.T) {
	line := startLevel(4, 1, 3)
	line.Stations[1].Stops = []sim.Stop{{Name: "check", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(2)}}
	for loads, four := range map[bool]string{false: "4 store 1\n5 B running, store 0", true: "5 B running # it took its input at 4"} {
		line.Stations[1].LoadsWhileStopped = loads
		course{
			line:    line,
			measure: 7500 * sim.Micros(1000),
			want: `
			0 A running, B running, store 2
			1 store 1
			2 store 0
			3 B down (check)
			` + four + `
			6 B starved
		`,
		}.trail(t)
	}
}
