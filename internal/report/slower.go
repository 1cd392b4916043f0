package report

import (
	"slices"

	"tuckline/sim"
)

// slowReasons are what can make a station slower than set speed while it runs. The records have the time of all together.
var slowReasons = []struct {
	word string
	has  func(*sim.Station) bool
}{
	{"steps", func(st *sim.Station) bool { return len(st.Steps) > 0 }},
	{"ramp", func(st *sim.Station) bool { return st.Ramp > 0 }},
	{"heat", func(st *sim.Station) bool { return st.HeatRecovery > 0 }},
	{"longer", func(st *sim.Station) bool { return st.Group.Every > 0 }},
	{"picks", func(st *sim.Station) bool {
		return slices.ContainsFunc(st.Materials, func(m sim.Material) bool { return m.MisPicks.Share > 0 && m.MisPicks.Retries > 0 })
	}},
	{"lost", func(st *sim.Station) bool {
		return slices.ContainsFunc(st.Stops, func(stop sim.Stop) bool { return stop.Scraps })
	}},
}

// slowerBy lists what makes a station, or one on the same drive, slower than set speed.
func (s *subject) slowerBy(name string) string {
	stations := s.Scenario.Line.Stations
	at := slices.IndexFunc(stations, func(st sim.Station) bool { return st.Name == name })
	if at < 0 {
		return ""
	}
	var words []string
	for _, reason := range slowReasons {
		if slices.ContainsFunc(stations, func(st sim.Station) bool {
			same := st.Name == name || st.Coupled != "" && st.Coupled == stations[at].Coupled
			return same && reason.has(&st)
		}) {
			words = append(words, say("slower."+reason.word, nil))
		}
	}
	return listed(words)
}
