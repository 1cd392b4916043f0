package report

import (
	"testing"

	"tuckline/sim"
)

// Only what the station, or one on its drive, can have is named as a reason to be slower than set speed.
func TestReasonsToBeSlower(t *testing.T) {
	s := subjectOf(inventedOutcome())
	stations := s.Scenario.Line.Stations
	for i := range stations {
		stations[i].Ramp, stations[i].Steps, stations[i].HeatRecovery, stations[i].Group, stations[i].Stops = 0, nil, 0, sim.Group{}, nil
	}
	web := &stations[0]
	for _, c := range []struct {
		change func()
		want   string
	}{
		{func() {}, ""},
		{func() { web.Ramp = 15 * sim.Second }, "the ramp after each start"},
		{func() { web.HeatRecovery = 20 * sim.Second }, "the ramp after each start and heat recovery"},
		{func() { stations[1].Steps = []sim.SpeedStep{{}} }, "the ramp after each start and heat recovery"}, // of another station
		{func() { web.Coupled, stations[1].Coupled = "drive", "drive" }, "speed steps, the ramp after each start and heat recovery"},
		{func() {
			stations[1].Coupled = ""
			web.Materials = []sim.Material{{MisPicks: sim.MisPicks{Share: 0.001}}}
		}, "the ramp after each start and heat recovery"},
		{func() { web.Materials[0].MisPicks.Retries = 2; web.Stops = []sim.Stop{{Scraps: true}} }, "the ramp after each start, heat recovery, picks that are tried again and cycles lost by a stop"},
	} {
		c.change()
		if got := s.slowerBy(web.Name); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
