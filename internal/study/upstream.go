package study

import (
	"slices"

	"tuckline/sim"
)

// upstream has the names from which pieces reach a station, itself included.
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

// feedersOf are the names that feed a station or a place directly.
func feedersOf(line sim.Line, name string) []string {
	for i := range line.Stations {
		if s := &line.Stations[i]; s.Name == name && s.From != "" {
			return []string{s.From}
		}
	}
	for i := range line.Buffers {
		if b := &line.Buffers[i]; b.Name == name {
			return b.From
		}
	}
	return nil
}
