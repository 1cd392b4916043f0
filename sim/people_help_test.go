package sim_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// asking is a station of 1 s that asks a crew for so many people after so many seconds of running.
func asking(name, crew string, every, lasts float64, people int) sim.Station {
	st := needing(name, every, lasts, people, 5)
	st.Stops[0].Crew.Crew = crew
	return st
}

// The operators can also do the work of the fitters. Own people go first, then those who help; one order for all; who is not enough stays
// free for his own.
func TestCrewsHelp(t *testing.T) {
	course{
		line: sim.Line{
			Stations: []sim.Station{
				asking("A", "fitters", 2, 4, 1), asking("B", "fitters", 3, 5, 1), asking("C", "operators", 4, 2, 1),
				asking("D", "fitters", 7, 1, 2), asking("E", "operators", 9, 1, 1),
			},
			Crews: []sim.Crew{{Name: "fitters", People: 1}, {Name: "operators", People: 1, CanAlso: []string{"fitters"}}},
		},
		measure: 13 * s,
		want: `
			0  A running, B running, C running, D running, E running
			2  A down (jam)               # by the fitter, until 6
			3  B down (jam)               # by the operator, until 8
			4  C waiting for crew (jam)   # the fitter is no help for him
			6  A running
			7  D waiting for crew (jam)   # for two
			8  A waiting for crew (jam), B running, C down (jam)   # C before D and A; the operator until 10
			9  E waiting for crew (jam)
			10 C running, D down (jam)    # the fitter and the operator: D asked before E
			11 A down (jam), B waiting for crew (jam), D running, E down (jam)
			12 B down (jam), E running    # the operator
		`,
		counts: `
			fitters: requests 5, waited 3, wait time 7 s, busy 7 s       # A 0 and 3, B 0 and 1, D 3; 2 to 6, 10 to 13
			operators: requests 2, waited 2, wait time 6 s, busy 10 s    # C 4, E 2; 3 to 13
		`,
	}.follow(t)
}

// Several crews can help: the first by name does, and whoever walks longest is waited for.
func TestHelpersByName(t *testing.T) {
	course{
		line: sim.Line{
			Stations: []sim.Station{asking("A", "fitters", 2, 4, 2), asking("B", "fitters", 3, 1, 1)},
			Crews: []sim.Crew{
				{Name: "fitters", People: 1, Walk: sec(1)},
				{Name: "second", People: 1, CanAlso: []string{"fitters"}},
				{Name: "first", People: 1, CanAlso: []string{"fitters"}, Walk: sec(3), Response: sec(2)},
			},
		},
		measure: 13 * s,
		want: `
			0  A running, B running
			2  A waiting for crew (jam)   # the fitter is there at 3, one of the first at 7
			3  B down (jam)               # by the second, who is there at once
			4  B running
			7  A down (jam), B down (jam)
			8  B running
			11 A running, B waiting for crew (jam)   # the fitter, just free, walks for 1 s
			12 B down (jam)
		`,
	}.follow(t)
}

// One more crew that can help, and is never needed, changes nothing.
func TestHelpersNobodyNeedsChangeNothing(t *testing.T) {
	tried := 0
	rapid.Check(t, func(t *rapid.T) {
		line := randomLine(t, coarseGrid)
		if len(line.Crews) == 0 {
			return
		}
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		o := sim.Options{Seed: rapid.Uint64().Draw(t, "seed"), Measure: 60 * s, Attribute: true, Waits: true}
		rec := m.NewEngine().Run(o)
		for i := range rec.Crews {
			if rec.Crews[i].Waited > 0 || stillWaits(&line, &rec) {
				return
			}
		}
		tried++
		var names []string
		for i := range line.Crews {
			names = append(names, line.Crews[i].Name)
		}
		more := line
		more.Crews = append(append([]sim.Crew{}, line.Crews...), sim.Crew{Name: "z helper", People: 2, CanAlso: names})
		m2, err := sim.Compile(more)
		if err != nil {
			t.Fatal(err)
		}
		rec2 := m2.NewEngine().Run(o)
		helper := rec2.Crews[len(line.Crews)]
		if helper.Busy != 0 || helper.Requests != 0 {
			t.Errorf("somebody needed the helper: %+v", helper)
		}
		rec2.Crews = rec2.Crews[:len(line.Crews)]
		if d := cmp.Diff(rec, rec2); d != "" {
			t.Error(d)
		}
	})
	if tried == 0 {
		t.Error("in every line somebody waited")
	}
}

// stillWaits says that a station waits for people at the end of the window, or a store or task may.
func stillWaits(line *sim.Line, rec *sim.Record) bool {
	for i := range rec.Stations {
		if rec.Stations[i].States[sim.Waiting] > 0 || len(line.Stations[i].Checks)+len(line.Stations[i].Materials) > 0 {
			return true
		}
	}
	return false
}
