package sim_test

import (
	"testing"

	"tuckline/sim"
)

// loading is A (2 s), which hands over to K (1 s); K takes its input in any state.
func loading() sim.Line {
	k := one("K", "A", 1)
	k.LoadsWhileStopped = true
	return sim.Line{Stations: []sim.Station{one("A", "", 2), k}}
}

// Under a stop of the calendar an empty K takes A's piece; it works when the stop is over.
func TestLoadsUnderACalendarStop(t *testing.T) {
	line := loading()
	line.Stations[1].Stops = []sim.Stop{{Name: "check", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(4)}}
	course{
		line:    line,
		measure: 15 * s,
		want: `
			0  A running, K starved
			2  K running
			3  K down (check)     # until 7; takes A's piece at 4
			6  A blocked          # K has taken one and is not empty
			7  K running
			8  A running          # K takes A's piece
			9  K starved
			10 K down (check)     # 7 + 3, until 14; takes A's piece at once
			12 A blocked
			14 K running
		`,
		counts: `K: taken 4, cycles 3, input at last 1, passed 3; A: blocked 5 s`, // the end at 15 is outside; 6 to 8, 12 to 15
	}.trail(t)
}

// Without it K takes nothing under the stop.
func TestDoesNotLoadUnderACalendarStop(t *testing.T) {
	line := loading()
	line.Stations[1].LoadsWhileStopped = false
	line.Stations[1].Stops = []sim.Stop{{Name: "check", Every: sec(3), Clock: sim.CalendarClock, Lasts: sec(4)}}
	course{
		line:    line,
		measure: 8500 * sim.Micros(1000),
		want: `
			0 A running, K starved
			2 K running
			3 K down (check)
			4 A blocked
			7 A running, K running
			8 K starved
		`,
	}.trail(t)
}

// Under the stop of another station of its group.
func TestLoadsUnderAStopOfItsGroup(t *testing.T) {
	line := loading()
	x := one("X", "", 1)
	x.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(3), Lasts: sec(5)}}
	line.Stations[1].StopsWith = "X"
	line.Stations = append(line.Stations, x)
	course{
		line:    line,
		measure: 10500 * sim.Micros(1000),
		want: `
			0  A running, K starved, X running
			2  K running
			3  K down (X jam), X down (jam)   # until 8
			6  A blocked                      # K took A's piece at 4
			8  K running, X running
			9  A running
			10 K starved
		`,
		counts: `K: taken 3, cycles 3; X: jam count 1`, // 2 to 3, 8 to 9, 9 to 10
	}.trail(t)
}

// During a change of material.
func TestLoadsDuringAChangeOfMaterial(t *testing.T) {
	line := loading()
	line.Stations[1].Materials = []sim.Material{reel("blanks", 200, 5)}
	course{
		line:    line,
		measure: 16 * s,
		want: `
			0  A running, K starved
			2  K running
			3  K starved
			4  K running
			5  K down (blanks)    # two cycles; until 10
			8  A blocked          # K took A's piece at 6
			10 K running
			11 A running          # K takes A's piece: the fourth cycle
			12 K down (blanks)
			15 A blocked          # K took A's piece at 13
		`,
		counts: `K: taken 5, cycles 4, blanks count 2, input at last 1`,
	}.trail(t)
}

// While it holds finished output it is not empty and takes nothing.
func TestLoadsOnlyWhenEmpty(t *testing.T) {
	line := loading()
	line.Stations[1].Stops = []sim.Stop{{Name: "check", Every: sec(4), Clock: sim.CalendarClock, Lasts: sec(9)}}
	line.Stations = append(line.Stations, one("slow", "K", 6))
	course{
		line:    line,
		measure: 14500 * sim.Micros(1000),
		want: `
			0  A running, K starved, slow starved
			2  K running
			3  K starved, slow running    # until 9
			4  K down (check)             # takes A's piece at 4, until 13
			6  A blocked
			9  slow starved
			13 K running
			14 A running, slow running
		`,
		counts: `K: taken 3, cycles 2`,
	}.trail(t)
}
