package sim_test

import (
	"testing"

	"tuckline/sim"
)

// everyTry is the share of picks that fail: so near to all that no seed here sees another.
const everyTry = 1 - 1e-12

// blanks is a magazine whose picks fail.
func blanks(full, retries int64) sim.Material {
	return sim.Material{
		Name: "blanks", Amount: full, PerCycle: 1, Refill: full, Lasts: sec(2),
		MisPicks: sim.MisPicks{Share: everyTry, Retries: retries},
	}
}

// Three tries, a second each, and the cycle lacks its blank: its pieces are rejected. No other
// reject is drawn.
func TestMisPickedForGood(t *testing.T) {
	line := alone(1)
	a := &line.Stations[0]
	a.Gives, a.Materials, a.RejectShare = 2, []sim.Material{blanks(100, 2)}, 1
	course{
		line:    line,
		measure: 10 * s,
		want:    `0 A running`,
		counts:  `A: cycles 3, given 6, rejected 6, mis-picked 6, passed 0, blanks used 9, blanks wasted 9, blanks failed picks 9`,
	}.follow(t)
}

// Each try uses a blank: seven serve two cycles, and one try of the third.
func TestMisPicksUseTheStock(t *testing.T) {
	line := alone(1)
	line.Stations[0].Materials = []sim.Material{blanks(7, 2)}
	course{
		line:    line,
		measure: 10 * s,
		want: `
			0 A running       # until 3, 6; one try until 7
			7 A down (blanks)
			9 A running
		`,
		counts: `A: cycles 3, mis-picked 3, blanks used 7, blanks failed picks 7, blanks added 7, blanks at last 7`,
	}.follow(t)
}

// A pick that fails for good stops the station, and asks for somebody. A cycle that is scrap is scrap first, and
// stops it too.
func TestMisPicksStop(t *testing.T) {
	line := alone(1)
	a := &line.Stations[0]
	a.Materials, a.AfterStop = []sim.Material{blanks(100, 1)}, []sim.ScrapRule{{Cycles: 1}}
	a.Materials[0].MisPicks.Stops = true
	a.Materials[0].MisPicks.Lasts, a.Materials[0].MisPicks.Crew = sec(3), sim.Work{Crew: "operators"}
	line.Crews = []sim.Crew{{Name: "operators", People: 1}}
	course{
		line:    line,
		measure: 9 * s,
		want: `
			0 A running
			2 A down (blanks mis-picked)  # two tries
			5 A running
			7 A down (blanks mis-picked)
		`,
		counts: `
			A: cycles 2, scrapped cycles 1, rejected 1, mis-picked 1, blanks mis-picked count 2
			A: blanks used 4, blanks wasted 4, blanks failed picks 4
			operators: requests 2`,
	}.follow(t)
}

// A tries longer than the cycle that is set: with a group the longer cycle counts once. Two materials
// add up. Cycle clocks age by the cycle, whatever it took.
func TestMisPicksLengthenTheCycle(t *testing.T) {
	line := alone(1, jam(1.5, 1))
	a := &line.Stations[0]
	a.Group = sim.Group{Every: 2, Adds: s / 2}
	leaflets := blanks(100, 2)
	leaflets.Name = "leaflets"
	a.Materials = []sim.Material{blanks(100, 1), leaflets} // 1 + 1 + 2 = 4 s; the second 4.5 s
	course{
		line:    line,
		measure: 9 * s,
		want: `
			0    A running      # until 4
			6.25 A down (jam)   # half of the second
			7.25 A running      # until 9.5
		`,
		counts: `A: cycles 1, mis-picked 1`,
	}.follow(t)
}

// On one drive the member whose blank is missing rejects what comes to it.
func TestMisPicksOfAMember(t *testing.T) {
	a, b, c := one("A", "", 1), one("B", "", 1), one("C", "", 1)
	a.Runs = everyOther
	b.Materials = []sim.Material{blanks(100, 0)}
	c.NoReads = 1
	course{
		line:    sim.Line{Stations: coupled(a, b, c)},
		measure: 4_500_000,
		want:    `0 A running, B running, C running`,
		counts: `
			A: given 4, rejected 2, mis-picked 0
			B: taken 2, rejected 2, mis-picked 2
			C: taken 0, rejected 0`,
	}.follow(t)
}

// Two that fail in one cycle stop the station one after the other, by name.
func TestMisPicksStopByName(t *testing.T) {
	line := alone(1)
	leaflets, first := blanks(100, 0), blanks(100, 0)
	leaflets.Name = "leaflets"
	for _, m := range []*sim.Material{&leaflets, &first} {
		m.MisPicks.Stops, m.MisPicks.Lasts = true, sec(1)
	}
	line.Stations[0].Materials = []sim.Material{leaflets, first}
	course{
		line:    line,
		measure: 3_500_000,
		want: `
			0 A running
			1 A down (blanks mis-picked)
			2 A down (leaflets mis-picked)
			3 A running
		`,
		counts: `A: mis-picked 1`,
	}.follow(t)
}
