package keyfigure

import (
	"slices"

	"tuckline/internal/scenario"
)

// Derive computes every derived figure of a scenario that has been read and checked.
func Derive(s *scenario.Scenario) Figures {
	line := &s.Line
	f := newFlow(line)
	out := Figures{Title: s.Title, Question: s.Question, Unit: s.Answer.Unit}
	for i := range line.Stations {
		var people scenario.Station
		if i < len(s.Stations) {
			people = s.Stations[i]
		}
		out.Stations = append(out.Stations, newStation(&line.Stations[i], &people))
	}
	joinUnits(line, s.Stations, out.Stations)
	c := f.newCounting(s.Answer.CountedAfter)
	for _, i := range c.stations {
		out.CountedAfter = append(out.CountedAfter, out.Stations[i].Name)
	}
	f.spread(out.Stations, c)
	f.spreadMost(out.Stations, c)
	f.findCycles(out.Stations, c)
	tieCycles(line, out.Stations)
	for i := range out.Stations {
		out.Stations[i].value()
	}
	joinStops(line, out.Stations)
	f.findMost(out.Stations)
	out.Warnings = slices.Clone(s.Warnings)
	out.addPlaces(f, s.Buffers)
	out.addSteps(line)
	out.addMeetings(line)
	out.addCrews(line)
	out.Working, out.Staff = workingTime(s), staff(line)
	out.addOrders(s)
	if len(s.Lines) > 1 {
		out.several = s.Lines
	}
	out.Way = newWay(f, out.Places)
	out.Bounds = newBounds(f, out.Stations, c)
	out.findInRigid()
	out.addAgreed(s)
	out.Stages = newStages(f, out.Stations, out.Bounds.AtSet)
	out.Warnings = append(out.Warnings, out.warn()...)
	out.Warnings = append(out.Warnings, out.tight(line)...)
	out.Warnings = append(out.Warnings, out.uncounted(f, c)...)
	return out
}

// addPlaces derives the places that are written, then the hand-overs.
func (out *Figures) addPlaces(f *flow, people []scenario.Buffer) {
	for j := range f.line.Buffers {
		var words scenario.Buffer
		if j < len(people) {
			words = people[j]
		}
		out.Places = append(out.Places, newPlace(f, out.Stations, j, &words))
	}
	put, warning := handOvers(f, out.Stations)
	out.Places = append(out.Places, put...)
	if warning != "" {
		out.Warnings = append(out.Warnings, warning)
	}
}

// newWay puts stations and places in the order of the product; a hand-over
// stands before the station that takes from it.
func newWay(f *flow, places []Place) []Entry {
	var way []Entry
	n, written := len(f.line.Stations), len(f.line.Buffers)
	for _, node := range f.way() {
		if node >= n {
			way = append(way, Entry{Place: true, Index: node - n})
			continue
		}
		for j := written; j < len(places); j++ {
			if len(places[j].To) > 0 && places[j].To[0] == f.line.Stations[node].Name {
				way = append(way, Entry{Place: true, Index: j})
			}
		}
		way = append(way, Entry{Index: node})
	}
	return way
}
