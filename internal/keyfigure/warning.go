package keyfigure

import "fmt"

// warn lists whole sentences about what changes how the figures may be used.
func (f *Figures) warn() []string {
	var all []string
	for i := range f.Stations {
		s := &f.Stations[i]
		if text := s.outsideDwell(); text != "" {
			all = append(all, text)
		}
		if s.Top.Cycles > s.Fastest.Cycles*(1+1e-6) {
			all = append(all, fmt.Sprintf("The top speed of %s, %s cycles/min, is used by no speed step: in the runs it stays at %s.",
				s.Name, number(s.Top.Cycles), number(s.Fastest.Cycles)))
		}
		all = append(all, s.alwaysOn()...)
		for k := range s.Materials {
			all = append(all, s.Materials[k].warnings(s.Name)...)
		}
		if s.PerPiece == 0 {
			all = append(all, fmt.Sprintf("No way leads from %s to %s, so it has no rate in %s.", s.Name, either(f.CountedAfter), f.Unit))
		}
	}
	all = append(all, f.overloaded()...)
	for i := range f.Places {
		p := &f.Places[i]
		all = append(all, p.lateSensor()...)
		if p.Overfull {
			all = append(all, fmt.Sprintf("At set speed more %s would be on the way in %s (%s) than it has places (%s): it holds its feeder back.",
				p.Unit, p.Name, number(p.Feed/60*p.TransitSeconds), count(p.Capacity)))
		}
	}
	return all
}

// warnings are about what is not ready when it is needed.
func (m *Material) warnings(station string) (all []string) {
	if m.Store != nil {
		all = m.Store.warnings(m.Name, station)
	}
	if m.PrepareMinutes > m.RefillMinutes {
		all = append(all, fmt.Sprintf("The next %s of %s takes %s min to get ready, but one lasts only %s min at set speed: the station waits for it.",
			m.Name, station, number(m.PrepareMinutes), number(m.RefillMinutes)))
	}
	if m.Alarm && m.Lasts > m.AlarmMinutes {
		all = append(all, fmt.Sprintf("The alarm of %s at %s leaves %s min, but a refill takes %s min on average: it comes too late as a rule.",
			m.Name, station, number(m.AlarmMinutes), number(m.Lasts)))
	}
	return all
}

// outsideDwell says in one sentence which speed leaves the qualified dwell.
func (s *Station) outsideDwell() string {
	d := s.Dwell
	if d == nil || !d.Qualified || (d.SetInside && d.FastestInside) {
		return ""
	}
	speed, dwell := s.Set.Cycles, d.Set
	if d.SetInside {
		speed, dwell = s.Fastest.Cycles, d.Fastest
	}
	return fmt.Sprintf("At %s cycles/min %s is outside its qualified dwell: %s s, but %s to %s s is qualified, which allows %s to %s cycles/min.",
		number(speed), s.Name, number(dwell), number(d.Min), number(d.Max), number(d.Slowest), number(d.Quickest))
}
