package sim_test

import (
	"fmt"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// liner makes random lines. On a coarse grid all times are multiples of unit, so that
// much happens at the same instant.
type liner struct {
	t    *rapid.T
	unit sim.Micros
	line sim.Line
}

const (
	fineGrid   sim.Micros = 1
	coarseGrid sim.Micros = 50_000
)

// randomLine is a line of one to four stages, each of one to three stations side by side.
func randomLine(t *rapid.T, unit sim.Micros) sim.Line {
	l := &liner{t: t, unit: unit}
	l.workingTime()
	l.crews()
	var before []int
	for stage := range l.count("stages", 1, 4) {
		stations := l.stage(stage)
		if stage > 0 {
			l.connect(stage, before, stations)
		}
		before = stations
	}
	for i := range len(l.line.Stations) {
		if st := &l.line.Stations[i]; st.From != "" && (st.Coupled == "" || st.Coupled == "drive of "+st.Name) && l.chance("assembles", 6) {
			l.assemble(i)
		}
	}
	l.join()
	l.extras()
	l.relief()
	return l.line
}

func (l *liner) count(label string, low, high int) int {
	return rapid.IntRange(low, high).Draw(l.t, label)
}

func (l *liner) pieces(label string, low, high int64) int64 {
	return rapid.Int64Range(low, high).Draw(l.t, label)
}

// chance is true in one of n cases.
func (l *liner) chance(label string, n int) bool { return l.count(label, 1, n) == n }

func (l *liner) time(label string, low, high sim.Micros) sim.Micros {
	return sim.Micros(l.pieces(label, int64((low+l.unit-1)/l.unit), int64(high/l.unit))) * l.unit
}

// law is fixed, one of two values, or random without bound: in steps on the coarse grid.
func (l *liner) law(label string, low, high sim.Micros) sim.Law {
	a := l.time(label, low, high)
	switch l.count(label+" law", 0, 3) {
	case 0:
		b := l.time(label+" or", low, high)
		return l.must(sim.Empirical([]sim.Weighted{{Value: float64(a), Weight: 0.25}, {Value: float64(b), Weight: 0.75}}))
	case 1:
		if l.unit > 1 {
			return l.must(sim.Geometric(float64(max(a, l.unit)), float64(l.unit)))
		}
		return l.must(sim.Exponential(float64(max(a, 1))))
	}
	return sim.Fixed(float64(a))
}

func (l *liner) must(law sim.Law, err error) sim.Law {
	if err != nil {
		l.t.Fatal(err)
	}
	return law
}

// stage adds stations side by side and returns their indices.
func (l *liner) stage(stage int) []int {
	var all []int
	for range max(1, l.count("side by side", -1, 3)) {
		all = append(all, len(l.line.Stations))
		l.line.Stations = append(l.line.Stations, l.station(stage, len(all)))
	}
	return all
}

// connect puts something between two stages.
func (l *liner) connect(stage int, feeders, takers []int) {
	kinds := 4
	if len(feeders) == 1 {
		kinds = 5
	}
	switch l.count("kind", 1, kinds) {
	case 1:
		l.buffer(fmt.Sprintf("buffer %d", stage), l.names(feeders), takers, false)
	case 2:
		l.buffer(fmt.Sprintf("belt %d", stage), l.names(feeders), takers, true)
	case 3: // belts of their own into a store
		var belts []string
		for _, f := range feeders {
			name := fmt.Sprintf("belt %d of %s", stage, l.line.Stations[f].Name)
			l.buffer(name, l.names([]int{f}), nil, true)
			belts = append(belts, name)
		}
		l.buffer(fmt.Sprintf("store %d", stage), belts, takers, l.chance("slow store", 3))
	case 4: // a buffer in front of another
		name := fmt.Sprintf("first buffer %d", stage)
		l.buffer(name, l.names(feeders), nil, false)
		l.buffer(fmt.Sprintf("second buffer %d", stage), []string{name}, takers, false)
	case 5: // a choice, or a hand-over, maybe on one drive
		if len(takers) > 1 {
			l.split(stage, feeders[0], takers)
			return
		}
		l.line.Stations[takers[0]].From = l.line.Stations[feeders[0]].Name
		if l.chance("coupled", 2) {
			l.couple(feeders[0], takers[0])
		}
	}
}

func (l *liner) names(stations []int) []string {
	var names []string
	for _, i := range stations {
		names = append(names, l.line.Stations[i].Name)
	}
	return names
}

// join lets some stations stop together.
func (l *liner) join() {
	for i := range l.line.Stations {
		other := l.count("with", 0, 4*len(l.line.Stations))
		if other < len(l.line.Stations) && other != i {
			l.line.Stations[i].StopsWith = l.line.Stations[other].Name
		}
	}
}
