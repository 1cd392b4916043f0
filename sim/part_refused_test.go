package sim_test

import (
	"math"
	"strings"
	"testing"

	"tuckline/sim"
)

// What cannot be is refused, with the place and what would be right.
func TestPartsRefused(t *testing.T) {
	for path, change := range map[string]func(*sim.Station){
		"B.heat recovery":            func(st *sim.Station) { st.HeatRecovery = -1 },
		"B.closing.heat-up":          func(st *sim.Station) { st.HeatUp = -1 },
		"B.incomplete stack":         func(st *sim.Station) { st.EmptyPockets = sim.EmptyPockets{On: true} },
		"B.rejects":                  func(st *sim.Station) { st.RejectShare = math.NaN() },
		"B.no-reads":                 func(st *sim.Station) { st.NoReads = 1.5 },
		"B.lost per stop":            func(st *sim.Station) { st.LostPerStop = -1 },
		"B.inspection.rejects after": func(st *sim.Station) { st.RejectsAfter = -1 },
		"B.reject runs.enter":        func(st *sim.Station) { st.Runs = sim.RejectRuns{Enter: 2, Length: 1} },
		"B.reject runs.share":        func(st *sim.Station) { st.Runs = sim.RejectRuns{Enter: 0.1, Share: -1, Length: 1} },
		"B.reject runs.length":       func(st *sim.Station) { st.Runs = sim.RejectRuns{Enter: 0.1, Length: 0.5} },
		"B.reject runs.stop after":   func(st *sim.Station) { st.RejectStop.After = -1 },
		"B.reject runs.reset":        func(st *sim.Station) { st.RejectStop.After = 3 },
		"B.reject runs.reset.crew": func(st *sim.Station) {
			st.RejectStop = sim.RejectStop{After: 3, Lasts: sec(1), Crew: sim.Work{Crew: "x"}}
		},
		"B.speed steps":                   func(st *sim.Station) { st.Steps = []sim.SpeedStep{{From: 1, Cycle: 1, Delay: -1}} },
		"B.consumes.m.mis-picks.per 1000": func(st *sim.Station) { st.Materials[0].MisPicks.Share = 1 },
		"B.consumes.m.mis-picks.retries":  func(st *sim.Station) { st.Materials[0].MisPicks.Retries = -1 },
		"B.consumes.m.mis-picks.lasts":    func(st *sim.Station) { st.Materials[0].MisPicks.Stops = true },
		"B.stops.rejects in a row": func(st *sim.Station) {
			st.RejectStop = sim.RejectStop{After: 3, Lasts: sec(1)}
			st.Stops = []sim.Stop{{Name: sim.RejectStopName, Every: sim.Fixed(9), Lasts: sec(1)}}
		},
		"B.stops.heat-up": func(st *sim.Station) {
			st.HeatUp = 1
			st.Stops = []sim.Stop{{Name: sim.HeatUpName, Every: sim.Fixed(9), Lasts: sec(1)}}
		},
		"B.stops.look.class": func(st *sim.Station) {
			st.Stops = []sim.Stop{{Name: "look", Every: sim.Fixed(9), Lasts: sec(1), Class: sim.Planned}}
		},
	} {
		b := one("B", "A", 1)
		b.Materials = []sim.Material{reel("m", 100, 1)}
		change(&b)
		refused(t, path, one("A", "", 1), b)
	}
}

// refused checks that the stations are refused for one reason, at this place.
func refused(t *testing.T, path string, stations ...sim.Station) {
	t.Helper()
	_, err := sim.Compile(sim.Line{Stations: stations})
	if err == nil {
		t.Errorf("%s is accepted", path)
		return
	}
	if lines := strings.Split(err.Error(), "\n"); len(lines) != 1 || !strings.HasPrefix(lines[0], path+": ") {
		t.Errorf("%s: %v", path, err)
	}
}

// A station at the beginning has no stack to wait for; on a drive only the first can have pockets, one
// has the heat recovery, and who changes the number of pieces stands before who rejects single ones.
func TestPartsRefusedByTheirPlace(t *testing.T) {
	pockets := sim.EmptyPockets{On: true, Most: 5}
	a, b := one("A", "", 1), one("B", "", 1)
	a.EmptyPockets = pockets
	refused(t, "A.incomplete stack", a)
	a.EmptyPockets, b.EmptyPockets = sim.EmptyPockets{}, pockets
	refused(t, "B.incomplete stack", coupled(a, b)...)
	b.EmptyPockets = sim.EmptyPockets{}
	a.HeatRecovery, b.HeatRecovery = 1, 1
	refused(t, "B.heat recovery", coupled(a, b)...)
	a.HeatRecovery, b.HeatRecovery = 0, 0
	a.NoReads, b.Gives = 0.1, 2
	refused(t, "B.gives", coupled(a, b)...)
}
