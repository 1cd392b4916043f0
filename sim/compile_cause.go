package sim

import (
	"cmp"
	"slices"

	"tuckline/sim/internal/plan"
)

// cause is a stop of a station: one as written, or one that a part of the station raises.
type cause struct {
	name  string
	class Class
	stop  Stop
	// raised says that it has no clock, atStart that a new station begins with it.
	raised, atStart bool
}

// stopCauses are the stops of a station in the order of names, in which those that are
// due together strike.
func stopCauses(s *Station) []cause {
	var all []cause
	for i := range s.Stops {
		all = append(all, cause{name: s.Stops[i].Name, class: s.Stops[i].Class, stop: s.Stops[i]})
	}
	raise := func(name string, class Class, lasts Law, crew Work) {
		stop := Stop{Name: name, Class: class, Lasts: lasts, Crew: crew}
		all = append(all, cause{name: name, class: class, stop: stop, raised: true, atStart: class == Planned})
	}
	if s.RejectStop.After > 0 {
		raise(RejectStopName, Quality, s.RejectStop.Lasts, s.RejectStop.Crew)
	}
	if s.HeatUp > 0 {
		raise(HeatUpName, Planned, Fixed(float64(s.HeatUp)), Work{})
	}
	for i := range s.Materials {
		if m := &s.Materials[i]; m.MisPicks.Stops {
			raise(MisPickName(m.Name), Minor, m.MisPicks.Lasts, m.MisPicks.Crew)
		}
	}
	slices.SortFunc(all, func(a, b cause) int { return cmp.Compare(a.name, b.name) })
	return all
}

// stopAt is the place of a name among the stops of a station; None if there is none.
func stopAt(causes []cause, name string) int {
	return slices.IndexFunc(causes, func(c cause) bool { return c.name == name })
}

// stops compiles the stops of a station.
func (c *compiler) stops(s *Station) []plan.Stop {
	var out []plan.Stop
	causes := stopCauses(s)
	for i := range causes {
		stop := &causes[i].stop
		p := plan.Stop{
			Name: stop.Name, Every: stop.Every, Class: uint8(stop.Class), Work: c.work(stop.Lasts, stop.Crew),
			Scraps: stop.Scraps, Streams: streamsOf(s), AtStart: causes[i].atStart, Planned: stop.Class == Planned,
		}
		p.Clock, p.Every = clock(s, stop)
		if causes[i].raised {
			p.Clock = plan.SignalClock
		}
		for _, name := range stop.Renews {
			p.Renews = append(p.Renews, stopAt(causes, name))
		}
		out = append(out, p)
	}
	return out
}

// clock is what ages a stop, and its age in the unit of that.
func clock(s *Station, stop *Stop) (clock plan.Clock, every Law) {
	every = stop.Every
	switch stop.Clock {
	case CycleClock:
		every = every.Scale(plan.Cycle)
	case PieceClock:
		every = every.Scale(plan.Cycle / float64(s.Gives))
	case RunningClock:
		clock = plan.RunningClock
	case CalendarClock:
		clock = plan.CalendarClock
	}
	if stop.RateFactor > 0 {
		every = every.Scale(1 / stop.RateFactor)
	}
	return clock, every
}

// oneHeatUp leaves only the longest heat-up of the members of a unit to begin at the start: it
// hides the others, which last no longer.
func oneHeatUp(stops []plan.Stop) {
	longest := plan.None
	for i := range stops {
		if !stops[i].AtStart {
			continue
		}
		if longest == plan.None || stops[i].Work.Lasts.Mean() > stops[longest].Work.Lasts.Mean() {
			longest = i
		}
		stops[i].AtStart = false
	}
	if longest != plan.None {
		stops[longest].AtStart = true
	}
}
