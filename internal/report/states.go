package report

import (
	"html/template"

	"tuckline/internal/result"
	"tuckline/sim"
)

// stateLook is how one state looks and is called everywhere.
type stateLook struct {
	State sim.State
	// Key names it in the page: its colour is the variable --KEY.
	Key string
	// Light and Dark are its colours on white and on near-black paper.
	Light, Dark template.CSS
	of          func(result.States) result.Estimate
}

// looks are in the order of the stack. The colours of lost time are from the
// palette of Okabe and Ito 2008, Color Universal Design.
var looks = []stateLook{
	{sim.Running, "running", "#DCE7E4", "#22343D", func(s result.States) result.Estimate { return s.Running }},
	{sim.Starved, "starved", "#56B4E9", "#56B4E9", func(s result.States) result.Estimate { return s.Starved }},
	{sim.Blocked, "blocked", "#E69F00", "#E69F00", func(s result.States) result.Estimate { return s.Blocked }},
	{sim.Down, "down", "#D55E00", "#D55E00", func(s result.States) result.Estimate { return s.Down }},
	{sim.Waiting, "waiting", "#D55E00", "#D55E00", func(s result.States) result.Estimate { return s.Waiting }},
	{sim.Changeover, "changeover", "#CC79A7", "#CC79A7", func(s result.States) result.Estimate { return s.Changeover }},
	{sim.PlannedStop, "planned", "#999999", "#999999", func(s result.States) result.Estimate { return s.Planned }},
	{sim.OffShift, "off-shift", "#FFFFFF", "#14181B", func(s result.States) result.Estimate { return s.OffShift }},
}

// Word is the word of the state.
func (l stateLook) Word() string { return say("state."+l.Key, nil) }

func lookOf(s sim.State) stateLook {
	for _, l := range looks {
		if l.State == s {
			return l
		}
	}
	return looks[0]
}

// looksIn are the states that occur at one of the stations.
func looksIn(stations []result.Station) []stateLook {
	var found []stateLook
	for _, l := range looks {
		for _, s := range stations {
			if l.of(s.States).Mean > 0 || l.State == sim.Running {
				found = append(found, l)
				break
			}
		}
	}
	return found
}
