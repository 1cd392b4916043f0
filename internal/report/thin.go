package report

import "tuckline/sim"

// A trace may hold a hundred thousand changes in a shift. What a drawing
// cannot show is left out here, and the drawing says so.

// spell is the time from one instant to another.
type spell struct{ From, To sim.Micros }

// traced is the window of the traced replication.
func (s *subject) traced() spell { return spell{s.TracedFrom, s.TracedFrom + s.Traced} }

// tracedPart is the length of what is traced, where that is not the whole window.
func (s *subject) tracedPart() string {
	if s.Traced >= s.Scenario.Run.Measure {
		return ""
	}
	return roundLength(s.Traced)
}

// tracedSooner is the warm-up of the trace, where that is shorter than the warm-up of the study.
func (s *subject) tracedSooner() string {
	if s.Traced == 0 || s.TracedFrom >= s.Scenario.Run.WarmUp {
		return ""
	}
	return roundLength(s.TracedFrom)
}

// seconds is the time from the beginning of the window.
func (w spell) seconds(at sim.Micros) float64 {
	return round1(float64(max(w.From, min(at, w.To))-w.From) / float64(sim.Second))
}

func round1(v float64) float64 { return float64(int64(v*10+0.5)) / 10 }

// levelPoint is a level from a time in seconds on.
type levelPoint struct {
	at    float64
	level int64
}

// drawnSlots is into how many equal parts a window is divided for drawing.
const drawnSlots = 1200

// slot is the width of one part.
func (w spell) slot() sim.Micros { return max(1, (w.To-w.From)/drawnSlots) }

// thinLevels keeps, of each slot, the first, lowest, highest and last level.
func thinLevels(changes []sim.LevelChange, buffer int, w spell) []levelPoint {
	points := []levelPoint{{0, 0}}
	var kept []sim.LevelChange
	current := sim.Micros(-1)
	flush := func() {
		for _, c := range extremes(kept) {
			points = append(points, levelPoint{w.seconds(c.At), c.Level})
		}
		kept = kept[:0]
	}
	for _, c := range changes {
		switch {
		case c.Buffer != buffer || c.At >= w.To:
			continue
		case c.At <= w.From:
			points[0].level = c.Level
			continue
		}
		if at := (c.At - w.From) / w.slot(); at != current {
			flush()
			current = at
		}
		kept = append(kept, c)
	}
	flush()
	return append(points, levelPoint{w.seconds(w.To), points[len(points)-1].level})
}

// extremes are the first, lowest, highest and last of changes, in order of time.
func extremes(changes []sim.LevelChange) []sim.LevelChange {
	if len(changes) <= 4 {
		return changes
	}
	low, high := 0, 0
	for i, c := range changes {
		if c.Level < changes[low].Level {
			low = i
		}
		if c.Level > changes[high].Level {
			high = i
		}
	}
	var kept []sim.LevelChange
	last := -1
	for _, i := range []int{0, min(low, high), max(low, high), len(changes) - 1} {
		if i != last {
			kept = append(kept, changes[i])
			last = i
		}
	}
	return kept
}

// stretch is a spell of one station in one state; Mixed ones stand for a row
// of spells too short to draw, of which State fills most of the time.
type stretch struct {
	spell
	Station  int
	State    sim.State
	By, Stop int
	Mixed    bool
}

// stretches are the states of one station in the window, short ones joined.
func stretches(changes []sim.StateChange, station int, w spell) []stretch {
	all := exactStretches(changes, station, w)
	var joined []stretch
	for i := 0; i < len(all); {
		if !all[i].joinable(w) {
			joined = append(joined, all[i])
			i++
			continue
		}
		first := i
		for i < len(all) && all[i].joinable(w) {
			i++
		}
		joined = append(joined, mostOf(all[first:i]))
	}
	return joined
}

// joinable are short spells of waiting for neighbours, and of running between them.
func (s stretch) joinable(w spell) bool {
	passing := s.State == sim.Running || s.State == sim.Starved || s.State == sim.Blocked
	return passing && s.To-s.From < w.slot()
}

// mostOf is one stretch for a row of short ones.
func mostOf(row []stretch) stretch {
	var time [sim.NumStates]sim.Micros
	for _, s := range row {
		time[s.State] += s.To - s.From
	}
	one := row[0]
	one.To, one.Mixed = row[len(row)-1].To, len(row) > 1
	for state, t := range time {
		if t > time[one.State] {
			one.State = sim.State(state)
		}
	}
	return one
}

// exactStretches are the states of one station, cut at the edges of the window.
func exactStretches(changes []sim.StateChange, station int, w spell) []stretch {
	var all []stretch
	add := func(c sim.StateChange, until sim.Micros) {
		from, to := max(c.At, w.From), min(until, w.To)
		if to > from {
			all = append(all, stretch{spell{from, to}, station, c.State, c.By, c.Stop, false})
		}
	}
	var last *sim.StateChange
	for i := range changes {
		if changes[i].Station != station {
			continue
		}
		if last != nil {
			add(*last, changes[i].At)
		}
		last = &changes[i]
	}
	if last != nil {
		add(*last, w.To)
	}
	return all
}
