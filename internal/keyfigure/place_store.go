package keyfigure

import (
	"fmt"

	"tuckline/sim"
)

// SensorPlaces has the figures of the sensor of a belt that stops what is before it.
type SensorPlaces struct {
	// At is the number of standing pieces that reach from the exit to it, ClearAt that for the sensor that
	// lets the feeders go on.
	At, ClearAt int64
	// DelaySeconds are its delay, DelayPieces what comes at set speed meanwhile.
	DelaySeconds, DelayPieces float64
	// Above is the places that are left when the standing pieces reach it, AboveSeconds the same in seconds of
	// feed: (capacity - at) × (1 - feed × transit/capacity), as pieces on the way are farther apart.
	Above, AboveSeconds float64
}

// byHand is how a store lies that somebody works.
const byHand = "hand magazine"

// addStore derives what a store or belt does beside holding pieces.
func (p *Place) addStore(b *sim.Buffer) {
	p.Keeps, p.Stands, p.stops = b.Keeps, b.Stands, len(b.Stops) > 0
	p.InMost, p.OutMost, p.SurplusMost = perMinute(b.In), perMinute(b.Out), perMinute(b.Surplus)
	switch b.Kind {
	case sim.BesideLine:
		p.Lies = "beside the line"
	case sim.HandMagazine:
		p.Lies = byHand
		p.InMost, p.OutMost = perMinute(b.Hand.PerPiece), perMinute(b.Hand.PerPiece)
	}
	if p.Stands {
		p.Spare, p.SpareSeconds = 0, 0
	}
	if p.Keeps > 0 && p.Capacity != sim.Unlimited {
		p.Spare = max(0, p.Spare-float64(p.Keeps))
		p.SpareSeconds = 60 * ratio(p.Spare, p.Feed)
	}
	p.limitDrain()
	p.addSensor(b)
}

func perMinute(interval sim.Micros) float64 {
	if interval <= 0 {
		return 0
	}
	return minute / float64(interval)
}

// limitDrain derives how long it takes to empty by the rates of the store itself: beside the
// line it gives no more than its surplus while pieces also come straight from the line.
func (p *Place) limitDrain() {
	if p.Capacity == sim.Unlimited || p.Feed <= 0 {
		return
	}
	out := p.Drain - p.Feed
	switch {
	case p.Lies == byHand && p.OutMost > 0:
		out = min(out, p.OutMost)
	case p.Lies != "" && p.SurplusMost > 0:
		out = min(out, p.SurplusMost)
	case p.Lies == "" && p.OutMost > 0:
		out = min(p.Drain, p.OutMost) - p.Feed
	}
	p.frees, p.DrainMinutes = max(0, out), 0
	if out > 0 {
		p.DrainMinutes = float64(p.Capacity-p.Keeps) / out
	}
}

func (p *Place) addSensor(b *sim.Buffer) {
	if !b.Full.On {
		return
	}
	s := &SensorPlaces{At: b.Full.At, ClearAt: b.Full.At, DelaySeconds: float64(b.Full.Delay) / float64(sim.Second)}
	if b.Clear.On {
		s.ClearAt = b.Clear.At
	}
	s.DelayPieces = p.Feed / 60 * s.DelaySeconds
	if p.Capacity > 0 {
		moving := min(1, p.Feed/60*p.TransitSeconds/float64(p.Capacity))
		s.Above = float64(p.Capacity-s.At) * (1 - moving)
	}
	s.AboveSeconds = 60 * ratio(s.Above, p.Feed)
	p.Sensor = s
}

// storeLines are what a store does beside holding pieces.
func (p *Place) storeLines() (out []item) {
	add := func(has bool, label, format string, a ...any) {
		if has {
			out = append(out, item{label, fmt.Sprintf(format, a...)})
		}
	}
	add(p.Lies != "", "lies", "%s", map[bool]string{true: "beside the line, worked by hand", false: p.Lies}[p.Lies == byHand])
	add(p.Stands, "does not accumulate", "no usable buffer: it stands with all that is on it while the piece at its exit is not taken")
	add(p.Keeps > 0, "keeps", "%s %s that cannot be used", count(p.Keeps), p.Unit)
	add(p.Lies == byHand && p.InMost > 0, "by hand", "%s %s/min by one person, in or out", number(p.InMost), p.Unit)
	add(p.Lies != byHand && p.InMost > 0, "takes in", "at most %s %s/min", number(p.InMost), p.Unit)
	add(p.Lies != byHand && p.OutMost > 0, "gives out", "at most %s %s/min", number(p.OutMost), p.Unit)
	add(p.SurplusMost > 0, "surplus", "at most %s %s/min while pieces also come straight from the line", number(p.SurplusMost), p.Unit)
	if s := p.Sensor; s != nil {
		add(true, "sensor", "full at %s standing %s, then %s places are left = %s s of feed at set speed; its delay of %s s is %s %s; feeders go on at less than %s",
			count(s.At), p.Unit, number(s.Above), number(s.AboveSeconds), number(s.DelaySeconds), number(s.DelayPieces), p.Unit, count(s.ClearAt))
	}
	return out
}

// lateSensor warns of a delay in which more comes than there is room for.
func (p *Place) lateSensor() []string {
	if s := p.Sensor; s != nil && s.DelayPieces > s.Above {
		return []string{fmt.Sprintf("%s is full before its sensor stops the feeders: during the delay of %s s %s %s come, but %s places are left.",
			p.Name, number(s.DelaySeconds), number(s.DelayPieces), p.Unit, number(s.Above))}
	}
	return nil
}

func (l *list) store(p *Place) {
	l.some("keeps", float64(p.Keeps), p.Unit)
	l.some("takes in at most", p.InMost, p.Unit+"/min")
	l.some("gives out at most", p.OutMost, p.Unit+"/min")
	l.some("surplus at most", p.SurplusMost, p.Unit+"/min")
	if s := p.Sensor; s != nil {
		l.add("sensor full at", float64(s.At), p.Unit)
		l.add("sensor clear at less than", float64(s.ClearAt), p.Unit)
		l.add("left above the sensor", s.Above, p.Unit)
		l.add("left above the sensor for", s.AboveSeconds, "s")
		l.add("delay of the sensor", s.DelaySeconds, "s")
		l.add("comes during the delay", s.DelayPieces, p.Unit)
	}
}
