package sim_test

import (
	"testing"

	"tuckline/sim"
)

// jam is a stop after so many cycles.
func jam(cycles, lasts float64) sim.Stop {
	return sim.Stop{Name: "jam", Every: sim.Fixed(cycles), Lasts: sec(lasts)}
}

// hot is one station of 2 s that needs so many seconds after a standstill.
func hot(heat float64, stops ...sim.Stop) sim.Line {
	line := alone(2, stops...)
	line.Stations[0].HeatRecovery = sim.Micros(heat * 1e6)
	return line
}

// After a stop of 4 s, longer than a cycle, nothing moves for 5 s; that is part of the
// cycle. After one of 2 s it goes on at once.
func TestHeatRecovery(t *testing.T) {
	course{
		line:    hot(5, jam(3, 4)),
		measure: 22 * s,
		want: `
			0  A running      # cycles end at 2, 4, 6
			6  A down (jam)
			10 A running      # 5 s, then the cycle until 17; 19, 21
			21 A down (jam)   # three cycles again
		`,
		counts: `A: cycles 6, running 17 s, restarts 1`,
	}.follow(t)
	course{
		line:    hot(5, jam(3, 2)),
		measure: 13 * s,
		want: `
			0 A running
			6 A down (jam)
			8 A running       # 10, 12: two cycles more
		`,
		counts: `A: cycles 5, restarts 0`,
	}.follow(t)
	line := hot(5, jam(3, 2))
	line.Stations[0].AfterStandstill = []sim.ScrapRule{{Cycles: 1}} // any pause
	course{
		line:    line,
		measure: 13 * s,
		want: `
			0 A running
			6 A down (jam)
			8 A running
		`,
		counts: `A: cycles 5, scrapped cycles 1`,
	}.follow(t)
}

// A cycle that is struck in its middle goes on with the heat recovery, then with the second it lacks.
func TestHeatRecoveryAmidACycle(t *testing.T) {
	course{
		line:    hot(5, jam(3.5, 4)),
		measure: 20 * s,
		want: `
			0  A running
			7  A down (jam)   # half of the fourth
			11 A running      # 5 s, then 1 s: ends at 17; the next at 19
		`,
		counts: `A: cycles 5`,
	}.follow(t)
}

// The ramp follows the heat recovery: 2 s of work on a ramp of 4 s take √(2 × 4 × 2) = 4 s, up to set speed.
func TestHeatRecoveryThenRamp(t *testing.T) {
	line := hot(5, jam(3, 4))
	line.Stations[0].Ramp = 4 * s
	course{
		line:    line,
		measure: 22 * s,
		want: `
			0  A running
			6  A down (jam)
			10 A running      # 5 s, then 4 s: 19; 21
		`,
		counts: `A: cycles 5`,
	}.follow(t)
}

// Clocks of running time age with the heat recovery.
func TestRunningClockAgesInHeatRecovery(t *testing.T) {
	course{
		line:    hot(5, sim.Stop{Name: "jam", Clock: sim.RunningClock, Every: sec(10), Lasts: sec(4)}),
		measure: 40 * s,
		want: `
			0  A running      # five cycles
			10 A down (jam)
			14 A running      # 5 s, then cycles until 21 and 23
			24 A down (jam)   # 1 s of the eighth
			28 A running      # 5 s, then the 1 s it lacks: 34; 36, 38
			38 A down (jam)
		`,
		counts: `A: cycles 10`, // 5, 21, 23, 34, 36, 38
	}.follow(t)
}

// A short stop within the heat recovery leaves the rest of it.
func TestHeatRecoveryIsInterrupted(t *testing.T) {
	course{
		line:    hot(5, jam(2, 3), sim.Stop{Name: "look", Clock: sim.CalendarClock, Every: sec(9), Lasts: sec(1)}),
		measure: 18 * s,
		want: `
			0  A running
			4  A down (jam)
			7  A running      # heat recovery until 12
			9  A down (look)  # 3 s of it are left; a pause of 1 s is no standstill
			10 A running      # until 13, the cycle until 15, the next until 17
			17 A down (jam)
		`,
		counts: `A: cycles 4`,
	}.follow(t)
}

// A cycle that is lost within its heat recovery leaves the rest of it to the next.
func TestHeatRecoveryOutlivesALostCycle(t *testing.T) {
	course{
		line:    hot(5, jam(2, 3), sim.Stop{Name: "look", Clock: sim.CalendarClock, Every: sec(9), Lasts: sec(1), Scraps: true}),
		measure: 16 * s,
		want: `
			0  A running
			4  A down (jam)
			7  A running
			9  A down (look)  # the third cycle is lost, 3 s of heat recovery are left
			10 A running      # until 13, the cycle until 15
		`,
		counts: `A: cycles 3, taken 5`, // 2, 4, 15; inside 1, lost 1
	}.follow(t)
}

// Glue that must be hot first: a planned stop from the beginning, no scrap after it, no clock ages; the
// calendar runs on.
func TestHeatUp(t *testing.T) {
	line := alone(2, jam(3, 4), sim.Stop{Name: "look", Clock: sim.CalendarClock, Every: sec(9), Lasts: sec(2)})
	a := &line.Stations[0]
	a.HeatUp, a.AfterStop = 10*s, []sim.ScrapRule{{Cycles: 1}}
	course{
		line:    line,
		measure: 19 * s,
		want: `
			0  A planned stop (heat-up)
			10 A down (look)     # began at 9
			11 A running         # one cycle is scrap, for the look
			17 A down (jam)      # three cycles
		`,
		counts: `
			A: cycles 3, scrapped cycles 1, restarts 0, planned stop 10 s, down 3 s, starved spells 0
			A: heat-up count 1, heat-up down 10 s, look count 1, look down 2 s`,
	}.follow(t)
	m := compile(t, line)
	for i, name := range m.StopNames(0) {
		if want := map[string]sim.Class{"heat-up": sim.Planned, "jam": sim.Minor, "look": sim.Minor}[name]; m.StopClasses(0)[i] != want {
			t.Errorf("%q is of class %s", name, m.StopClasses(0)[i])
		}
	}
}

// On one drive the longest heat-up hides the others; stations that stop together wait for it.
func TestHeatUpOfADrive(t *testing.T) {
	a, b := one("A", "", 2), one("B", "", 2)
	a.HeatUp, b.HeatUp = 4*s, 6*s
	c := one("C", "B", 2)
	c.StopsWith = "A"
	course{
		line:    sim.Line{Stations: append(coupled(a, b), c)},
		measure: 9 * s,
		want: `
			0 A planned stop (B heat-up), B planned stop (heat-up), C planned stop (B heat-up)
			6 A running, B running, C starved
			8 C running
		`,
		counts: `A: heat-up count 0; B: heat-up count 1, heat-up down 6 s`,
	}.follow(t)
}

// A cycle that is lost on the ramp has done 2²/(2 × 8) = 0.25 s of work; the ramp goes on from there: the
// next 2 s are done at √(2 × 8 × 2.25) = 6 s after its beginning.
func TestRampOutlivesALostCycle(t *testing.T) {
	line := alone(2, jam(2, 3), sim.Stop{Name: "look", Clock: sim.CalendarClock, Every: sec(9), Lasts: sec(1), Scraps: true})
	line.Stations[0].Ramp = 8 * s
	course{
		line:    line,
		measure: 14*s + 1,
		want: `
			0  A running
			4  A down (jam)
			7  A running      # on the ramp
			9  A down (look)
			10 A running      # 4 s more: 14
		`,
		counts: `A: cycles 3`,
	}.follow(t)
}
