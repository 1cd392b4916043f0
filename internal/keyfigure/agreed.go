package keyfigure

import (
	"fmt"
	"slices"
	"strings"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// Agreed is what an acceptance run has to show; nil where nothing is agreed.
type Agreed struct {
	// Efficiency is a share of Full, which is what the slowest station would make at its set speed, or at its top speed
	// where OfTopSpeed says so, in answer pieces a minute.
	Efficiency, Full float64
	OfTopSpeed       bool
	// RunHours is the length of the run, FromHours the time from the start of the line to its beginning, both in
	// scheduled time.
	RunHours, FromHours float64
}

// AtTop is what the slowest station would make at its top speed, in answer pieces a minute, with nothing stopped and nothing
// rejected: Bounds.AtSet of the same line at top speeds.
func AtTop(s *scenario.Scenario) float64 {
	fast := *s
	fast.Agreement = scenario.Agreement{}
	fast.Stations = slices.Clone(s.Stations)
	for i := range fast.Stations {
		fast.Stations[i].SetCycle = fast.Stations[i].TopCycle
	}
	return Derive(&fast).Bounds.AtSet
}

// addAgreed derives what is agreed, once the bounds are known.
func (out *Figures) addAgreed(s *scenario.Scenario) {
	a := &s.Agreement
	if a.Efficiency == 0 {
		return
	}
	hours := func(t sim.Micros) float64 { return float64(t) / float64(sim.Hour) }
	out.Agreed = &Agreed{Efficiency: a.Efficiency, Full: out.Bounds.AtSet, OfTopSpeed: a.OfTopSpeed, RunHours: hours(a.Run), FromHours: hours(a.From)}
	if a.OfTopSpeed {
		out.Agreed.Full = AtTop(s)
	}
}

// agreedLines are what is agreed as people read it, against what the line makes at most.
func (f *Figures) agreedLines() []item {
	a := f.Agreed
	speed := "set speed"
	if a.OfTopSpeed {
		speed = "top speed"
	}
	needs, most := a.Efficiency*a.Full, f.Bounds.Unlimited
	text := fmt.Sprintf("%s of %s/h at %s of the slowest station = %s good %s/h; with buffers without limit %s %s on average",
		percent(a.Efficiency), fixed(60*a.Full, 0), speed, fixed(60*needs, 0), f.Unit, f.lineMakes(), fixed(60*most, 0))
	if needs > most {
		text += ", which is less"
	}
	return []item{
		{"efficiency", text},
		{"run", fmt.Sprintf("%s h scheduled, from %s h after the start; tuckline acceptance says how likely it passes", hoursOf(a.RunHours), hoursOf(a.FromHours))},
	}
}

// writeAgreed writes what is agreed.
func (f *Figures) writeAgreed(b *strings.Builder) {
	if f.Agreed != nil {
		b.WriteString("\nAgreement\n")
		writeLines(b, f.agreedLines())
	}
}
