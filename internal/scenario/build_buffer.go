package scenario

import (
	"math"
	"slices"

	"tuckline/sim"
)

// conveyor makes a belt: places by its pitch, time on the way by its speed.
func (b *resolver) conveyor(e *entryWords) {
	w := e.conveyor
	name := e.name.value
	buffer := sim.Buffer{Name: name, From: b.flow.feeders[name], Conveyor: true}
	if w.Pitch.value > 0 && w.Length.value > 0 {
		buffer.Holds = int64(math.Floor(w.Length.value/w.Pitch.value + 1e-9))
		if buffer.Holds < 1 {
			b.complain(w.Pitch.at, "no piece finds room on the belt: the pitch is larger than its length, %s", w.Length.text())
		}
	}
	if w.Speed.value > 0 {
		buffer.Transit = micros(w.Length.value / w.Speed.value * 1e6)
	}
	buffer.AtStart = b.atStart(name, buffer.Holds)
	buffer.Turns = b.turns(name, &w.Turns)
	b.belt(w, &buffer)
	b.s.Line.Buffers = append(b.s.Line.Buffers, buffer)
	b.s.Buffers = append(b.s.Buffers, Buffer{
		Unit: b.unit(name), Length: micrometres(w.Length), Pitch: micrometres(w.Pitch), Speed: w.Speed.value,
	})
}

// buffer makes a store with its levels in pieces.
func (b *resolver) buffer(e *entryWords) {
	w := e.buffer
	name := e.name.value
	buffer := sim.Buffer{
		Name: name, From: b.flow.feeders[name], Holds: int64(w.Holds.value), Transit: micros(w.Transit.value),
		Conveyor: e.lanes, // they stay where a line is looked at without its stores
	}
	buffer.AtStart = b.atStart(name, buffer.Holds)
	buffer.Turns = b.turns(name, &w.Turns)
	if !b.flow.lapsed[name] {
		b.levels(&buffer, &w.Levels)
		b.store(w, &buffer)
		buffer.TakenOut = w.Levels.EmptyOut.value == "no"
	}
	b.s.Line.Buffers = append(b.s.Line.Buffers, buffer)
	b.s.Buffers = append(b.s.Buffers, Buffer{Unit: b.unit(name)})
}

func (b *resolver) levels(buffer *sim.Buffer, w *levelsWords) {
	if w.StopUpstream.given() {
		stop := b.pieces(&w.StopUpstream, buffer.Holds)
		if stop == 0 && buffer.Holds != 0 && b.read(w.StopUpstream.at) {
			b.complain(w.StopUpstream.at, "the feeders would never start; write a level above 0")
		}
		if stop < buffer.Holds || buffer.Holds == sim.Unlimited {
			buffer.StopUpstream = stop
		}
	}
	if w.RestartUpstream.given() {
		buffer.Restart = sim.Level{On: true, Level: b.pieces(&w.RestartUpstream, buffer.Holds)}
	}
	if w.StartDownstream.given() {
		b.startLevel(buffer, &w.StartDownstream)
	}
}

// startLevel is read by stations that take from the buffer. A percentage that is less than
// what a cycle takes counts as one take: earlier than that no station can start.
func (b *resolver) startLevel(buffer *sim.Buffer, l *level) {
	pieces := b.pieces(l, buffer.Holds)
	for _, taker := range b.flow.takers[buffer.Name] {
		w := b.flow.byName[taker].station
		if w == nil {
			b.complain(l.at, "%q passes its pieces on to %q, from which a station takes; write the level there", buffer.Name, taker)
			return
		}
		feeders := b.flow.feeders[taker]
		for k, takes := range w.Takes.counts() {
			if l.percent && buffer.Holds > 0 && k < len(feeders) && feeders[k] == buffer.Name {
				pieces = max(pieces, takes.pieces(), 1)
			}
		}
	}
	buffer.Start = sim.Level{On: true, Level: pieces}
}

// turns is who of the feeders of a place goes first.
func (b *resolver) turns(name string, w *turnsWords) sim.Turns {
	first := instead(b.last(w.first), b.flow.fedBy)
	feeders := b.flow.feeders[name]
	switch {
	case first == "" || slices.Contains(feeders, first):
	case slices.Contains(b.flow.takers[name], first):
		b.complain(w.at, "%q takes from %q; turns is about those that feed it. Who takes first is said by priority at the stations behind it", first, name)
	default:
		b.noSuchName(w.at, first, "feeder of "+name, feeders)
	}
	return sim.Turns{Alternate: w.alternate, First: first}
}

// pieces is a level in pieces; a percentage is of the places of the buffer itself.
// Where its places could not be read, holds is 0 and a level in percent says nothing.
func (b *resolver) pieces(l *level, holds int64) int64 {
	switch {
	case !l.percent && holds != sim.Unlimited && l.pieces() > holds && holds > 0:
		b.complain(l.at, "%q is more than the buffer holds, %d", l.text(), holds)
		return holds
	case !l.percent:
		return l.pieces()
	case holds == sim.Unlimited:
		b.complain(l.at, "a percentage of unlimited places has no meaning; write the level in pieces")
		return 0
	}
	return int64(math.Round(l.value * float64(holds)))
}

// atStart is the level of a buffer at time 0.
func (b *resolver) atStart(name string, holds int64) int64 {
	for i := range b.words.Run.AtStart.Levels.list {
		if one := &b.words.Run.AtStart.Levels.list[i]; one.name == name && !b.flow.lapsed[name] {
			return b.pieces(&one.value, holds)
		}
	}
	return 0
}

// speedSteps resolves the levels of speed steps, which are of the place before the station.
func (b *resolver) speedSteps() {
	for i := range b.s.Line.Stations {
		station := &b.s.Line.Stations[i]
		w := b.flow.byName[station.Name].station
		if len(w.SpeedSteps.list) == 0 || b.readsLapsed(station.Name) {
			continue
		}
		before := b.before(station.Name)
		if before == nil {
			b.complain(w.SpeedSteps.at, "speed steps read the level of the buffer before the station, but nothing is written there")
			continue
		}
		for k := range w.SpeedSteps.list {
			if step, ok := b.speedStep(w, &w.SpeedSteps.list[k], before, &b.s.Stations[i]); ok {
				station.Steps = append(station.Steps, step)
			}
		}
	}
}

// readsLapsed says that the buffer written before the station holds nothing.
func (b *resolver) readsLapsed(station string) bool {
	if b.flow.lapsed[b.feeder(station)] {
		return true
	}
	w := b.flow.byName[station].station
	if len(w.Takes.inputs) > 0 {
		return b.flow.lapsed[w.Takes.inputs[0].name]
	}
	if w.From.given() {
		return len(w.From.names) == 1 && b.flow.lapsed[w.From.names[0].value]
	}
	for i, e := range b.words.Line.entries {
		if above := b.above(i); e.station == w && above != nil {
			return b.flow.lapsed[above.name.value]
		}
	}
	return false
}

func (b *resolver) speedStep(w *stationWords, s *stepWords, before *sim.Buffer, extra *Station) (sim.SpeedStep, bool) {
	if !s.FromLevel.given() || !s.BackAt.given() || !s.RunAt.given() {
		return sim.SpeedStep{}, false
	}
	step := sim.SpeedStep{From: b.pieces(&s.FromLevel, before.Holds), BackAt: b.pieces(&s.BackAt, before.Holds), Delay: micros(s.Delay.value)}
	cycle := s.RunAt.value
	if s.RunAt.top {
		cycle = extra.TopCycle
	}
	step.Cycle = micros(cycle)
	paced := b.stepPaced(w, s, cycle, extra)
	switch {
	case before.Holds == 0 && (s.FromLevel.percent || s.BackAt.percent):
		return step, false // its places could not be read
	case step.BackAt >= step.From && !b.said(s.FromLevel.at) && !b.said(s.BackAt.at):
		b.complain(s.BackAt.at, "back at %q is not below from level %q: %d and %d pieces", s.BackAt.text(), s.FromLevel.text(), step.BackAt, step.From)
		return step, false
	}
	return step, paced
}

// stepPaced says that a step has a speed which the station has.
func (b *resolver) stepPaced(w *stationWords, s *stepWords, cycle float64, extra *Station) bool {
	switch {
	case b.said(s.RunAt.at):
	case s.RunAt.top && !w.TopSpeed.given():
		b.complain(s.RunAt.at, "the station has no top speed; write top speed: 100/min beside its cycle, or a speed here")
	case cycle < extra.TopCycle*(1-1e-9):
		b.complain(s.RunAt.at, "%q is faster than the top speed of the station; write a higher top speed, or a lower speed here", s.RunAt.text())
	default:
		return true
	}
	return false
}
