package keyfigure

import (
	"fmt"
	"slices"
	"strings"

	"tuckline/sim"
)

// sendRules say how a station chooses, to people.
var sendRules = map[sim.SendRule]string{
	sim.InTurn: "in turn", sim.FirstWithRoom: "the first with room", sim.FewestPieces: "whichever has the fewest pieces",
}

// addMeetings notes where stations assemble and choose.
func (f *Figures) addMeetings(line *sim.Line) {
	for i := range line.Stations {
		s, words := &f.Stations[i], &line.Stations[i]
		if len(words.Also) > 0 {
			s.Inputs = []Input{{words.From, f.unitAt(words.From), s.Takes}}
			for _, in := range words.Also {
				s.Inputs = append(s.Inputs, Input{in.From, f.unitAt(in.From), in.Takes})
			}
		}
		if len(words.Sends.To) > 0 {
			s.SendsTo, s.SendRule = slices.Clone(words.Sends.To), sendRules[words.Sends.Rule]
		}
	}
}

// unitAt names the pieces of a place, or those that a station gives.
func (f *Figures) unitAt(name string) string {
	if p := f.placeNamed(name); p != nil {
		return p.Unit
	}
	for i := range f.Stations {
		if f.Stations[i].Name == name {
			return f.Stations[i].GivesUnit
		}
	}
	return ""
}

// meetings are the lines about what a station has to do with others.
func (s *Station) meetings() []item {
	var out []item
	if len(s.Inputs) > 0 {
		var each []string
		for _, in := range s.Inputs {
			each = append(each, strings.TrimSpace(fmt.Sprintf("%s from %s (%s a cycle)", in.Unit, in.From, count(in.Takes))))
		}
		out = append(out, item{"takes", strings.Join(each, ", ")})
	}
	switch {
	case len(s.SendsTo) == 0:
	case s.SendRule == sendRules[sim.InTurn]:
		out = append(out, item{"sends to", strings.Join(s.SendsTo, ", ") + " " + s.SendRule})
	default:
		out = append(out, item{"sends to", strings.Join(s.SendsTo, ", ") + ", " + s.SendRule})
	}
	if len(s.CoupledWith) > 0 {
		out = append(out, item{"one drive with", strings.Join(s.CoupledWith, ", ")})
	}
	return out
}
