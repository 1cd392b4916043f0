package keyfigure

import (
	"testing"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// calendarStop is down for a share of the calendar.
func calendarStop(share float64) []sim.Stop {
	return []sim.Stop{fixedStop("q", sim.CalendarClock, minutes(10*(1-share)), 10*share)}
}

// Stations side by side lose their own parts of the flow, which add up. Hand
// computation: k equal machines with every/(every+lasts) = 0.9 lose a tenth
// of the flow together, whatever k is; without limit they make as much.
func TestCalendarStopsSideBySideAddUp(t *testing.T) {
	for k := 1; k <= 5; k++ {
		b := Derive(sideBySide(k, calendarStop(0.1)[0])).Bounds
		near(t, "efficiency", b.RigidEfficiency, 0.9)
		near(t, "without limit", b.Unlimited, b.Rigid)
	}
}

// Two machines of 60 and 20 a minute with a tenth and a half of the calendar lost, and a packer
// that loses a fifth. Hand computation: (60 × 0.9 + 20 × 0.5) × 0.8.
func TestUnlikeMachinesSideBySideBeforeOne(t *testing.T) {
	s := sideBySide(2, calendarStop(0.1)[0])
	s.Stations[1].SetCycle *= 3
	s.Line.Stations[1].Stops = calendarStop(0.5)
	s.Line.Stations[2].Stops = calendarStop(0.2)
	s.Stations[2].SetCycle = float64(sim.Minute) / 80
	b := Derive(s).Bounds
	near(t, "tied", b.Tied, 80)
	near(t, "rigid", b.Rigid, 64*0.8)
}

// One branch stops by the calendar, the other after cycles: each keeps its own. Hand
// computation: 60 × 0.5 + 60/(1 + 1).
func TestStopsOfUnlikeClocksSideBySide(t *testing.T) {
	s := sideBySide(2, fixedStop("s", sim.CycleClock, 60, 1))
	s.Line.Stations[0].Stops = calendarStop(0.5)
	b := Derive(s).Bounds
	near(t, "rigid", b.Rigid, 60)
	near(t, "bound", b.Unlimited, 60)
}

// rows is k rows of two machines into one store, and a packer.
func rows(k int) *scenario.Scenario {
	b := &build{}
	var ends []string
	for i := range k {
		name := string(rune('a' + i))
		b.station(sim.Station{Name: name + "1", Takes: 1, Gives: 1}, scenario.Station{}, 60, 0)
		b.station(sim.Station{Name: name + "2", From: name + "1", Takes: 1, Gives: 1}, scenario.Station{}, 60, 0)
		ends = append(ends, name+"2")
	}
	b.store("store", 100, ends...)
	b.station(sim.Station{Name: "packer", From: "store", Takes: 1, Gives: 1}, scenario.Station{}, 60*float64(k), 0)
	b.Answer.CountedAfter = []int{2 * k}
	return &b.Scenario
}

// In two rows side by side the stops of one row meet, those of two rows do not. Hand
// computation, a tenth of the calendar lost at each of two stations: 120 × 0.9 if they stand in
// unlike rows, 60 × 0.81 + 60 if in one.
func TestRowsSideBySide(t *testing.T) {
	for _, c := range []struct {
		one, other int
		want       float64
	}{{0, 1, 60*0.81 + 60}, {0, 3, 108}, {1, 2, 108}, {0, 2, 108}} {
		s := rows(2)
		s.Line.Stations[c.one].Stops, s.Line.Stations[c.other].Stops = calendarStop(0.1), calendarStop(0.1)
		near(t, s.Line.Stations[c.one].Name+" and "+s.Line.Stations[c.other].Name, Derive(s).Bounds.Rigid, c.want)
	}
}

// Stations that stop together stop all the pieces that any of them passes. Hand computation:
// side by side 120 × 0.9 × 0.8; a machine and the packer behind both, the same; and a row is
// a row whether or not it stops together.
func TestStopsTogetherSideBySide(t *testing.T) {
	for _, c := range []struct {
		one, other int
		want       float64
	}{{0, 2, 120 * 0.72}, {0, 4, 120 * 0.72}, {0, 1, 60*0.72 + 60}} {
		s := rows(2)
		s.Line.Stations[c.one].Stops, s.Line.Stations[c.other].Stops = calendarStop(0.1), calendarStop(0.2)
		s.Line.Stations[c.one].StopsWith = s.Line.Stations[c.other].Name
		near(t, s.Line.Stations[c.one].Name+" with "+s.Line.Stations[c.other].Name, Derive(s).Bounds.Rigid, c.want)
	}
}

// Where pieces come in turn, one branch that stands holds the other. Hand computation: 40 × 0.8
// of pieces of which 95 in 100 are good; by room 60 × 0.8 + 18.
func TestBranchesInTurnStandTogether(t *testing.T) {
	for rule, want := range map[sim.SendRule]float64{sim.InTurn: 38 * 0.8, sim.FirstWithRoom: 60*0.8 + 18} {
		s := branched(rule)
		s.Line.Stations[1].Stops = calendarStop(0.2)
		near(t, sendRules[rule], Derive(s).Bounds.Rigid, want)
	}
}

// Ways cross where each of two rows sends on to a third as well. Two machines of 60 and 60, the
// first into a store of its own for one packer of 30 and one that both share. Every station
// but one runs always: what that loses is its part, whatever the ways. Hand computation.
func TestEachStationLosesItsPartWhereWaysCross(t *testing.T) {
	for i, share := range []float64{0.5, 0.5, 0.25, 0.75, 1} {
		b := &build{}
		b.station(sim.Station{Name: "left", Takes: 1, Gives: 1, Sends: sim.Sends{To: []string{"own", "common"}, Rule: sim.FirstWithRoom}}, scenario.Station{}, 60, 0)
		b.station(sim.Station{Name: "right", Takes: 1, Gives: 1}, scenario.Station{}, 60, 0)
		b.store("own", 10, "left")
		b.store("common", 10, "left", "right")
		b.station(sim.Station{Name: "small", From: "own", Takes: 1, Gives: 1}, scenario.Station{}, 30, 0)
		b.station(sim.Station{Name: "large", From: "common", Takes: 1, Gives: 1}, scenario.Station{}, 90, 0)
		b.store("end", 10, "small", "large")
		b.station(sim.Station{Name: "packer", From: "end", Takes: 1, Gives: 1}, scenario.Station{}, 120, 0)
		b.Answer.CountedAfter = []int{4}
		b.Line.Stations[i].Stops = calendarStop(0.1)
		near(t, b.Line.Stations[i].Name, Derive(&b.Scenario).Bounds.Rigid, 120*(1-0.1*share))
	}
}

// A folder beside the main flow stands before all cartons, that of one of two cartoners before
// its half. Hand computation.
func TestWhatIsPutInStandsInTheRow(t *testing.T) {
	s := assembled()
	plain := Derive(s).Bounds
	for i := range s.Line.Stations {
		old := s.Line.Stations[i].Stops
		s.Line.Stations[i].Stops = append(calendarStop(0.1), old...)
		near(t, s.Line.Stations[i].Name, Derive(s).Bounds.Rigid, 0.9*plain.Rigid)
		s.Line.Stations[i].Stops = old
	}
	b := &build{}
	b.station(sim.Station{Name: "blister machine", Takes: 1, Gives: 4}, scenario.Station{}, 30, 0)
	b.store("store", 240, "blister machine")
	for _, one := range []string{"1", "2"} {
		b.station(sim.Station{Name: "folder " + one, Takes: 1, Gives: 1}, scenario.Station{}, 30, 0)
		b.station(sim.Station{Name: "cartoner " + one, From: "store", Takes: 2, Gives: 1, Also: []sim.Input{{From: "folder " + one, Takes: 1}}}, scenario.Station{}, 30, 0)
	}
	b.Answer.CountedAfter = []int{2, 4}
	b.Line.Stations[1].Stops = calendarStop(0.1)
	near(t, "one folder of two", Derive(&b.Scenario).Bounds.Rigid, 60*0.95)
}
