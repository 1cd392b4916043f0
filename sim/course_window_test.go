package sim_test

import (
	"testing"

	"tuckline/sim"
)

// The window is [4 s, 10 s): a cycle that ends at 4 counts, one that ends at 10 does not;
// a stop counts by its beginning. Times are cut at both edges.
func TestWindowEdges(t *testing.T) {
	a := one("A", "", 2)
	a.Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(2), Lasts: sec(1)}}
	course{
		line:   sim.Line{Stations: []sim.Station{a, one("B", "A", 2.5)}},
		warmUp: 4 * s, measure: 6 * s,
		want: `
			0   A running, B starved
			2   B running              # until 4.5
			4   A blocked              # its second cycle ends at 4; two cycles: the stop is due
			4.5 A down (jam)
			5.5 A running              # until 7.5; B from 4.5 until 7
			7   B starved
			7.5 B running              # A until 9.5, B until 10
			9.5 A blocked
		`,
		counts: `
			A: cycles 3, taken 2, passed 2    # ends at 4, 7.5, 9.5; takes at 4.5 and 7.5; passes at 4.5 and 7.5
			A: input at first 1, input at last 0, output at first 0, output at last 1
			A: running 4 s, blocked 1 s, down 1 s, holding 1 s, jam count 1
			B: cycles 2, taken 2, running 5.5 s, starved 0.5 s  # ends at 4.5 and 7; 10 is outside
			A to B: in 2, out 2
		`,
	}.follow(t)
}

// A stop that begins at T0 counts, one that began before does not, although its time does.
func TestStopsCountByTheirBeginning(t *testing.T) {
	line := alone(1, sim.Stop{Name: "jam", Every: sim.Fixed(4), Lasts: sec(2)})
	want := `
		0  A running
		4  A down (jam)
		6  A running
		10 A down (jam)
		12 A running
	`
	course{
		line: line, warmUp: 4 * s, measure: 6 * s, want: cut(want, 3),
		counts: `A: cycles 4, jam count 1, jam down 2 s, running 4 s`, // 4, 7, 8, 9; 10 is outside, as is the second jam
	}.follow(t)
	course{
		line: line, warmUp: 5 * s, measure: 6 * s, want: cut(want, 4),
		counts: `A: cycles 4, jam count 1, jam down 2 s, running 4 s`, // 7 … 10; 5 to 6 and 10 to 11
	}.follow(t)
}

// cut keeps so many lines of a timeline.
func cut(want string, n int) string {
	text := ""
	for _, line := range plainLines(want)[:n] {
		text += line + "\n"
	}
	return text
}

// What lies in the buffer at the start is there at time 0 and nobody gave it.
func TestLevelAtStart(t *testing.T) {
	course{
		line:    withBuffer(one("A", "", 4), one("B", "", 1), sim.Buffer{Name: "buffer", Holds: 3, AtStart: 2}),
		measure: 7 * s,
		want: `
			0 A running, B running, buffer 1
			1 buffer 0
			2 B starved
			4 B running
			5 B starved
		`,
		counts: `buffer: in 1, out 3, at first 2, at last 0, max 1`,
	}.follow(t)
}
