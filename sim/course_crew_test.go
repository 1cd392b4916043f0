package sim_test

import (
	"testing"

	"tuckline/sim"
)

// needing is a station of 1 s from supply whose jam comes after so many seconds of running
// and needs people of the fitters.
func needing(name string, every, lasts float64, people, priority int) sim.Station {
	st := one(name, "", 1)
	st.Stops = []sim.Stop{{
		Name: "jam", Every: sec(every), Clock: sim.RunningClock, Lasts: sec(lasts),
		Crew: sim.Work{Crew: "fitters", People: people, Priority: priority},
	}}
	return st
}

func fitters(n int, stations ...sim.Station) sim.Line {
	return sim.Line{Stations: stations, Crews: []sim.Crew{{Name: "fitters", People: n}}}
}

// The queue goes by priority, then by the time of the request; nobody is taken away from
// work; who is freed is given out at once.
func TestCrewQueue(t *testing.T) {
	course{
		line: fitters(1,
			needing("A", 2, 4, 1, 5), needing("B", 3, 2, 1, 5), needing("C", 3, 1, 1, 1)),
		measure: 14 * s,
		want: `
			0  A running, B running, C running
			2  A down (jam)                                        # until 6
			3  B waiting for crew (jam), C waiting for crew (jam)
			6  A running, C down (jam)                             # priority 1 before 5
			7  B down (jam), C running                             # until 9
			8  A waiting for crew (jam)                            # ran 6 to 8
			9  A down (jam), B running                             # until 13
			10 C waiting for crew (jam)
			12 B waiting for crew (jam)
			13 A running, C down (jam)
		`,
		counts: `
			fitters: requests 5, waited 4, wait time 11 s, busy 12 s  # C 3, B 4, A 1, C 3; 2 to 14
			A: jam waiting 1 s, jam down 8 s, jam count 2, waiting for crew 1 s, down 8 s
			B: jam waiting 6 s, jam down 2 s, jam count 2
			C: jam waiting 6 s, jam down 2 s, jam count 2
		`,
	}.follow(t)
}

// With equal priority and time the name decides, not the place in the line.
func TestCrewTieByName(t *testing.T) {
	course{
		line:    fitters(1, needing("B", 2, 1, 1, 5), needing("A", 2, 1, 1, 5)),
		measure: 6 * s,
		want: `
			0 B running, A running
			2 B waiting for crew (jam), A down (jam)
			3 B down (jam), A running
			4 B running
			5 A down (jam)
		`,
		counts: `fitters: requests 3, waited 1, wait time 1 s, busy 3 s`,
	}.follow(t)
}

// A stop that needs two waits until two are free; nobody who came later goes ahead.
func TestCrewTwoAtOnce(t *testing.T) {
	course{
		line: fitters(2,
			needing("X", 3, 1, 2, 5), needing("Y", 2, 4, 1, 5), needing("Z", 4, 1, 1, 5)),
		measure: 9 * s,
		want: `
			0 X running, Y running, Z running
			2 Y down (jam)                     # one of two, until 6
			3 X waiting for crew (jam)         # needs both
			4 Z waiting for crew (jam)         # one is free, but X came first
			6 X down (jam), Y running
			7 X running, Z down (jam)
			8 Y down (jam), Z running
		`,
		counts: `
			fitters: requests 4, waited 2, wait time 6 s, busy 8 s  # X 3, Z 3; Y 4 and 1, X 2 × 1, Z 1
			X: waiting for crew 3 s, down 1 s
		`,
	}.follow(t)
}

// The state follows the open stop that began first: while the jam waits, the check of the
// calendar is already worked on, but waiting goes before down only by the beginning.
func TestStateFollowsTheStopThatBeganFirst(t *testing.T) {
	a := needing("A", 3, 2, 1, 5)
	a.Stops = append(a.Stops, sim.Stop{Name: "check", Every: sec(4), Clock: sim.CalendarClock, Lasts: sec(5)})
	course{
		line:    fitters(1, a, needing("B", 2, 5, 1, 5)),
		measure: 10 * s,
		want: `
			0 A running, B running
			2 B down (jam)                  # until 7
			3 A waiting for crew (jam)      # the check begins at 4 and needs nobody
			7 A down (jam), B running       # until 9; so is the check
			9 A running, B down (jam)
		`,
		counts: `A: jam waiting 4 s, jam down 2 s, check down 5 s, waiting for crew 4 s, down 2 s`,
	}.follow(t)
}
