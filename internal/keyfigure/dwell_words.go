package keyfigure

import (
	"fmt"
	"strings"
)

// outside says that a dwell leaves the qualified range.
func (d *Dwell) outside(dwell float64) bool { return d != nil && d.Qualified && !d.inside(dwell) }

// beyond says in which dwell a speed of the station ends, if it is not the qualified one: ", outside the
// qualified dwell: 0.4 s, qualified 0.45 to 0.7 s"; otherwise it is empty.
func (s *Station) beyond(cycles float64) string {
	if s.Dwell == nil || cycles <= 0 {
		return ""
	}
	dwell := s.Dwell.at(cycles)
	if !s.Dwell.outside(dwell) {
		return ""
	}
	return fmt.Sprintf(", outside the qualified dwell: %s s, qualified %s to %s s", number(dwell), number(s.Dwell.Min), number(s.Dwell.Max))
}

// at is the dwell at a speed: share × 60 / cycles per minute.
func (d *Dwell) at(cycles float64) float64 { return d.Share * 60 / cycles }

// beyondDwell names the stations that such figures let run outside their qualified dwell, with
// the numbers; empty if there are none.
func (f *Figures) beyondDwell(speed func(*Station) float64) string {
	var all []string
	for i := range f.Stations {
		s := &f.Stations[i]
		if words := s.beyond(speed(s)); words != "" && s.cycles > 0 {
			all = append(all, fmt.Sprintf("%s at %s cycles/min%s", s.Name, number(speed(s)), words))
		}
	}
	return strings.Join(all, "; ")
}

func atSet(s *Station) float64     { return s.Set.Cycles }
func atFastest(s *Station) float64 { return s.Fastest.Cycles }

// withDwell adds to a sentence about what the line makes that a station would run outside its
// qualified dwell for it.
func (f *Figures) withDwell(sentence string, speed func(*Station) float64) string {
	if words := f.beyondDwell(speed); words != "" {
		return sentence + " That is with " + words + "."
	}
	return sentence
}
