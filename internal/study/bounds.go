package study

import (
	"slices"

	"tuckline/sim"
)

// withoutLimit is the line with buffers that are never full and give whatever is asked: levels that
// stop or start a station, rates, what a store keeps, its own stops and its place beside the line lapse; speed
// steps stay, in pieces. Belts stay as they are.
// A station that sends to the first with room would never get past a place that
// is never full: it sends to the one with the fewest pieces instead.
func withoutLimit(line sim.Line) sim.Line {
	line.Buffers = slices.Clone(line.Buffers)
	for i := range line.Buffers {
		if b := &line.Buffers[i]; !b.Conveyor {
			*b = sim.Buffer{Name: b.Name, From: b.From, Holds: sim.Unlimited, Transit: b.Transit, Turns: b.Turns, AtStart: b.AtStart}
		}
	}
	line.Stations = slices.Clone(line.Stations)
	for _, i := range stuckOnFirst(line) {
		line.Stations[i].Sends.Rule = sim.FewestPieces
	}
	return line
}

// stuckOnFirst are the stations that send to the first with room and have a
// place that is never full before the last of their list.
func stuckOnFirst(line sim.Line) []int {
	var all []int
	for i := range line.Stations {
		sends := line.Stations[i].Sends
		if sends.Rule != sim.FirstWithRoom || len(sends.To) == 0 {
			continue
		}
		if slices.ContainsFunc(sends.To[:len(sends.To)-1], func(name string) bool { return neverFull(line, name) }) {
			all = append(all, i)
		}
	}
	return all
}

// neverFull says that a place is a buffer that could be taken away: without
// limit it is never full.
func neverFull(line sim.Line, name string) bool { return slices.Contains(stores(line), name) }

// withoutBuffers is the line without its buffers: each consumer takes from the
// feeder. Where that cannot be said, because several stations feed or take, the
// smallest buffer that cannot lock stays. Belts stay; levels and the speed
// steps that read a removed buffer lapse.
func withoutBuffers(line sim.Line) sim.Line {
	line.Stations = slices.Clone(line.Stations)
	line.Buffers = slices.Clone(line.Buffers)
	for _, name := range stores(line) {
		b := line.Buffers[slices.IndexFunc(line.Buffers, func(one sim.Buffer) bool { return one.Name == name })]
		dropSteps(line, b.Name)
		if len(b.From) == 1 && readers(line, b.Name) == 1 && readers(line, b.From[0]) == 1 {
			line = bridged(line, b)
		} else {
			shrink(line, b)
		}
	}
	return line
}

// stores are the names of the buffers that could be taken away.
func stores(line sim.Line) []string {
	var names []string
	for i := range line.Buffers {
		if b := &line.Buffers[i]; !b.Conveyor {
			names = append(names, b.Name)
		}
	}
	return names
}

// dropSteps takes the speed steps away that read the level of a buffer.
func dropSteps(line sim.Line, buffer string) {
	for i := range line.Stations {
		if line.Stations[i].From == buffer {
			line.Stations[i].Steps = nil
		}
	}
}

// readers counts the stations and places that take from a name.
func readers(line sim.Line, name string) int {
	n := 0
	for i := range line.Stations {
		if takesFrom(&line.Stations[i], name) {
			n++
		}
	}
	for i := range line.Buffers {
		if slices.Contains(line.Buffers[i].From, name) {
			n++
		}
	}
	return n
}

// takesFrom says that a station takes from a name, as its main input or another.
func takesFrom(s *sim.Station, name string) bool {
	return s.From == name || slices.ContainsFunc(s.Also, func(in sim.Input) bool { return in.From == name })
}

// bridged takes a buffer out and lets its one reader take from its one feeder.
func bridged(line sim.Line, b sim.Buffer) sim.Line {
	for i := range line.Stations {
		s := &line.Stations[i]
		if s.From == b.Name {
			s.From = b.From[0]
		}
		s.Also = slices.Clone(s.Also)
		for k := range s.Also {
			if s.Also[k].From == b.Name {
				s.Also[k].From = b.From[0]
			}
		}
	}
	var rest []sim.Buffer
	for _, other := range line.Buffers {
		if other.Name == b.Name {
			continue
		}
		if other.Turns.First == b.Name {
			other.Turns.First = b.From[0]
		}
		other.From = slices.Clone(other.From)
		for i := range other.From {
			if other.From[i] == b.Name {
				other.From[i] = b.From[0]
			}
		}
		rest = append(rest, other)
	}
	line.Buffers = rest
	return line
}

// shrink leaves a buffer the places without which the line could lock.
func shrink(line sim.Line, b sim.Buffer) {
	at := slices.IndexFunc(line.Buffers, func(one sim.Buffer) bool { return one.Name == b.Name })
	line.Buffers[at] = sim.Buffer{Name: b.Name, From: b.From, Holds: sim.Smallest, Transit: b.Transit, Turns: b.Turns}
}

// buffered says whether there is a buffer that could be taken away.
func buffered(line sim.Line) bool { return len(stores(line)) > 0 }
