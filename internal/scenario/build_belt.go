package scenario

import (
	"math"

	"tuckline/sim"
)

// belt makes how a belt behaves when its exit stands, and the sensors on it.
func (b *resolver) belt(w *conveyorWords, buffer *sim.Buffer) {
	buffer.Stands = w.Accumulating.value == "no"
	s := &w.Sensors
	switch {
	case !s.given() || !s.Full.At.given() || buffer.Holds < 1 || w.Pitch.value == 0:
		return
	case buffer.Stands:
		b.complain(s.at, "nothing closes up on a belt that does not accumulate, so that its sensors would see no queue; write accumulating: yes, or leave the sensors out")
		return
	}
	buffer.Full = b.sensor(w, &s.Full, buffer.Transit)
	buffer.Clear = buffer.Full // one sensor for both
	if s.Clear.given() && s.Clear.At.given() {
		buffer.Clear = b.sensor(w, &s.Clear, buffer.Transit)
	}
	b.checkSensors(s, buffer)
}

// sensor turns a distance from the exit into the standing pieces that reach so far.
func (b *resolver) sensor(w *conveyorWords, s *sensorWords, transit sim.Micros) sim.Sensor {
	if s.At.value > w.Length.value && w.Length.given() {
		b.complain(s.At.at, "the sensor stands beyond the belt, which is %s long; distances count from its exit", w.Length.text())
	}
	at := max(1, int64(math.Ceil(s.At.value/w.Pitch.value-1e-9)))
	sensor := sim.Sensor{On: true, At: at, Delay: micros(s.Delay.value)}
	if w.Speed.value > 0 {
		sensor.Travel = min(transit, micros(float64(at)*w.Pitch.value/w.Speed.value*1e6))
	}
	return sensor
}

// checkSensors refuses sensors with which the line locks, or stops and starts without end.
func (b *resolver) checkSensors(s *sensorsWords, buffer *sim.Buffer) {
	if !b.read(s.Full.At.at) || s.Clear.At.given() && !b.read(s.Clear.At.at) {
		return
	}
	where := s.Clear.At.or(s.Full.At.at)
	switch takes := b.mostTaken(buffer.Name); {
	case buffer.Full.At > buffer.Holds:
		b.complain(s.Full.At.at, "%d standing pieces would have to reach it, but the belt holds %d; put it nearer the exit", buffer.Full.At, buffer.Holds)
	case buffer.Clear.At > buffer.Full.At && buffer.Clear.Delay == 0:
		b.complain(s.Clear.At.at, "clear lies farther from the exit than full, at %s, and would release at once what full stops; distances count from the exit, so put clear at the place of full or nearer the exit, or give it a delay", s.Full.At.text())
	case buffer.Clear.At < takes:
		b.complain(where, "the line can lock: %d pieces are taken at once, so that %d may stand and wait for more, but %d standing already reach this sensor; put it farther from the exit", takes, takes-1, buffer.Clear.At)
	case buffer.Clear.At > buffer.Full.At:
		b.warn("Of the sensors on %s, clear at %s lies farther from the exit than full at %s: what full stops starts again after %s even if nothing has moved, unless the queue has reached clear too.", buffer.Name, s.Clear.At.text(), s.Full.At.text(), s.Clear.Delay.text())
	}
}

// mostTaken is the most pieces that anything takes at once from a place.
func (b *resolver) mostTaken(place string) int64 {
	most := int64(1)
	for _, taker := range b.flow.takers[place] {
		w := b.flow.byName[taker].station
		if w == nil {
			continue
		}
		for k, takes := range w.Takes.counts() {
			if feeders := b.flow.feeders[taker]; k < len(feeders) && feeders[k] == place {
				most = max(most, takes.pieces())
			}
		}
	}
	return most
}
