package sim_test

import (
	"testing"

	"tuckline/sim"
)

// A and B stop together, C through B. A stop of one stops the others when their cycle
// ends; they are down with that stop as cause and count none of their own; their clocks stand still.
func TestStopsWith(t *testing.T) {
	a, b, c := one("A", "", 2), one("B", "", 4), one("C", "", 3.5)
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(2.5), Lasts: sec(4)}}
	b.Stops = []sim.Stop{{Name: "b", Every: sec(7), Clock: sim.RunningClock, Lasts: sec(1)}}
	a.StopsWith, c.StopsWith = "B", "B"
	line := withBuffer(a, b, sim.Buffer{Name: "buffer", Holds: 3})
	line.Stations = append(line.Stations, c)
	course{
		line:    line,
		measure: 21 * s,
		want: `
			0    A running, B starved, C running
			2    B running                        # until 6
			4    buffer 1
			5    A down (jam)                     # half of its third cycle
			6    B down (A jam)
			7    C down (A jam)                   # its second cycle has ended
			9    A running, B running, C running, buffer 0   # A until 10
			10   buffer 1
			12   A down (B b), B down (b), buffer 2   # B ran from 2 to 6 and from 9 to 12: 7 s; A's fourth has ended
			12.5 C down (B b)                     # its third has ended
			13   A running, B running, C running  # B works its last second
			14   buffer 1
			15   A down (jam), buffer 2           # 5 cycles: the sixth has started
			16.5 C down (A jam)
			18   B down (A jam)
			19   A running, B running, C running, buffer 1
		`,
		counts: `
			A: cycles 5, taken 6, jam count 2, jam down 8 s, down 9 s, running 12 s
			B: cycles 3, b count 1, b down 1 s, down 5 s, starved 2 s  # 6 to 9, 12 to 13, 18 to 19
			C: cycles 4, down 5 s
		`,
	}.follow(t)
}

// A change of material of one stops the others too.
func TestMaterialStopsTheGroup(t *testing.T) {
	a, b := one("A", "", 2), one("B", "", 3)
	a.Materials = []sim.Material{reel("reel", 200, 3)}
	b.StopsWith = "A"
	course{
		line:    sim.Line{Stations: []sim.Station{a, b}},
		measure: 12 * s,
		want: `
			0  A running, B running
			4  A down (reel)
			6  B down (A reel)
			7  A running, B running
			11 A down (reel)
		`,
		counts: `A: reel count 2; B: cycles 3, down 1 s`, // B ends at 3, 6, 10
	}.follow(t)
}
