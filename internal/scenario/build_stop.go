package scenario

import (
	"slices"

	"tuckline/internal/quantity"
	"tuckline/sim"
)

// stop makes one cause of stops.
func (b *resolver) stop(w *stationWords, e *entry[stopWords], gives string) sim.Stop {
	s := &e.value
	stop := sim.Stop{
		Name: e.name, Every: s.Every.law.law, Lasts: s.Lasts.law.law, Clock: clocks[s.Every.age.clock],
		Class: classOf(s.Class.value), Crew: b.work(&s.Crew, int(s.Priority.value)), RateFactor: w.StopRateFactor.value,
		Scraps: s.Scraps.value == "yes", Renews: b.renews(w, e),
	}
	b.law(s.Every.law)
	b.law(s.Lasts.law)
	b.countsPieces("stop", w.Name.value, &s.Every, gives)
	return stop
}

// renews checks the names of the stops whose clocks a stop starts anew.
func (b *resolver) renews(w *stationWords, e *entry[stopWords]) []string {
	var names, others []string
	for _, other := range w.Stops.list {
		if other.name != e.name {
			others = append(others, other.name)
		}
	}
	for _, one := range e.value.Renews.list {
		switch {
		case one.value == e.name:
			b.complain(one.at, "the clock of %q starts anew after each of its stops anyway; name other stops of %q", one.value, w.Name.value)
		case slices.Contains(names, one.value):
			b.complain(one.at, "%q is named twice", one.value)
		case slices.Contains(others, one.value):
			names = append(names, one.value)
		default:
			b.noSuchName(one.at, one.value, "stop of "+w.Name.value, others)
		}
	}
	return names
}

var clocks = map[quantity.Clock]sim.Clock{
	quantity.Cycles: sim.CycleClock, quantity.Pieces: sim.PieceClock,
	quantity.Running: sim.RunningClock, quantity.Calendar: sim.CalendarClock,
}

func classOf(word string) sim.Class {
	for class := sim.Minor; class <= sim.External; class++ {
		if class.String() == word {
			return class
		}
	}
	return sim.Minor
}
