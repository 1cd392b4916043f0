package plain

import (
	"slices"
	"testing"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

const second plan.Micros = 1_000_000

// worker is a station of a plan by hand.
func worker(name string, node, in int, takes, gives int64, cycle plan.Micros) plan.Station {
	st := plan.Station{
		Name: name, Node: node, Supply: -1, Takes: takes, Gives: gives, Group: plan.None, StartLink: plan.None,
		Pace:    plan.Pace{Fixed: cycle, Law: draw.Fixed(float64(cycle))},
		Members: []plan.Member{{Name: name, Declared: node, Takes: takes, Gives: gives}},
	}
	if in != plan.None {
		st.Ins = []plan.In{{Link: in, Takes: takes}}
	}
	return st
}

// stationNode is the node of a station that puts into a link.
func stationNode(station, rank, out int) plan.Node {
	n := plan.Node{Station: station, Link: plan.None, Rank: rank}
	if out != plan.None {
		n.Outs = []plan.Out{{Link: out}}
	}
	return n
}

// lockingPlan is a line that checking would refuse: A puts two pieces at once onto a
// belt of three places, and B takes three. With two on the belt both wait for ever.
func lockingPlan() *plan.Plan {
	return &plan.Plan{
		Stations: []plan.Station{worker("B", 0, 0, 3, 1, second), worker("A", 1, plan.None, 1, 2, second)},
		Links: []plan.Link{{
			Name: "belt", Capacity: 3, Transit: second, First: plan.None,
			Feeders: []int{1}, Takers: []int{0}, Gives: 2, Takes: 3,
		}},
		Nodes: []plan.Node{stationNode(0, 1, plan.None), stationNode(1, 0, 0)},
	}
}

// A ends at 1 and at 2; its second pair finds one place. The first pair arrives at 2: from
// then on B is starved and A blocked, only by each other.
func TestDeadlockWhenNothingWorks(t *testing.T) {
	rec := New(lockingPlan()).Run(Options{Measure: 20 * second})
	if rec.End != plan.Deadlock || !slices.Equal(rec.Locked, []string{"A", "B"}) {
		t.Fatalf("ended with %v, locked %q", rec.End, rec.Locked)
	}
	if rec.EndedAt != 2*second {
		t.Errorf("locked since %d, by hand since 2 s", rec.EndedAt)
	}
	a, b := &rec.Stations[1], &rec.Stations[0]
	if a.States[plan.Blocked] != 18*second || b.States[plan.Starved] != 20*second {
		t.Errorf("A blocked %d, B starved %d", a.States[plan.Blocked], b.States[plan.Starved])
	}
	if a.OutputInside[1] != 2 || rec.Buffers[0].Level[1] != 2 {
		t.Errorf("A holds %d, the belt %d", a.OutputInside[1], rec.Buffers[0].Level[1])
	}
}

// The same beside a station that works on: found at the end of the window.
func TestPartialDeadlockAtTheEndOfTheWindow(t *testing.T) {
	p := lockingPlan()
	p.Stations = append(p.Stations, worker("C", 2, plan.None, 1, 1, second))
	p.Nodes = append(p.Nodes, stationNode(2, 2, plan.None))
	rec := New(p).Run(Options{WarmUp: 5 * second, Measure: 10*second + second/2})
	if rec.End != plan.Deadlock || !slices.Equal(rec.Locked, []string{"A", "B"}) || rec.EndedAt != 2*second {
		t.Fatalf("ended with %v, locked %q since %d", rec.End, rec.Locked, rec.EndedAt)
	}
	if c := &rec.Stations[2]; c.Cycles != 11 || c.States[plan.Running] != rec.Window { // 5 … 15
		t.Errorf("C: %d cycles, running %d", c.Cycles, c.States[plan.Running])
	}
}

// A stop of the calendar that is still to come helps nobody: the lock is found at once.
func TestDeadlockInSpiteOfCalendarStops(t *testing.T) {
	p := lockingPlan()
	p.Stations[1].Stops = []plan.Stop{{
		Name: "check", Clock: plan.CalendarClock, Every: draw.Fixed(float64(7 * second)),
		Work: plan.Work{Lasts: draw.Fixed(float64(second)), Crew: plan.None},
	}}
	p.Stations[1].Causes = []plan.Cause{{Declared: 1}}
	rec := New(p).Run(Options{Measure: 20 * second})
	if rec.End != plan.Deadlock || rec.EndedAt != 2*second || rec.Stations[1].Stops[0].Count != 0 {
		t.Fatalf("ended with %v at %d after %d checks", rec.End, rec.EndedAt, rec.Stations[1].Stops[0].Count)
	}
}

// One place more and the same line runs.
func TestNoDeadlockWithTheLeastCapacity(t *testing.T) {
	p := lockingPlan()
	p.Links[0].Capacity = 4 // gives + takes − 1
	rec := New(p).Run(Options{Measure: 20 * second})
	if rec.End != plan.HorizonReached || rec.Stations[0].Cycles == 0 {
		t.Fatalf("ended with %v after %d cycles of B", rec.End, rec.Stations[0].Cycles)
	}
}
