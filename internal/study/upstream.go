package study

import (
	"slices"

	"tuckline/sim"
)

// upstream has the names from which pieces reach a station, itself included, by all
// inputs of an assembly: a leaflet lost is a part of a carton lost as much as a blister.
func upstream(line sim.Line, station string) []string {
	reached := []string{station}
	for k := 0; k < len(reached); k++ {
		for _, from := range feedersOf(line, reached[k]) {
			if !slices.Contains(reached, from) {
				reached = append(reached, from)
			}
		}
	}
	return reached
}

// feedersOf are the names that feed a station or a place directly; a station that
// assembles has several.
func feedersOf(line sim.Line, name string) []string {
	for i := range line.Stations {
		if s := &line.Stations[i]; s.Name == name && s.From != "" {
			feeders := []string{s.From}
			for _, in := range s.Also {
				feeders = append(feeders, in.From)
			}
			return feeders
		}
	}
	for i := range line.Buffers {
		if b := &line.Buffers[i]; b.Name == name {
			return b.From
		}
	}
	return nil
}
