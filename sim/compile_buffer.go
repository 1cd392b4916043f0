package sim

import "math"

func (c *compiler) checkBuffer(b *Buffer) {
	if b.Holds < Smallest {
		c.fault(b.Name+".holds", "%d places; the number is 0 or more, or unlimited", b.Holds)
	}
	if b.Transit < 0 {
		c.fault(b.Name+".transit", "a transit time is 0 or more")
	}
	limited := b.Holds >= 0
	if b.StopUpstream < 0 || limited && b.StopUpstream > b.Holds {
		c.fault(b.Name+".levels.stop upstream", "a level lies between 0 and the %d places", b.Holds)
	}
	if b.Restart.On && b.Restart.Level < 0 {
		c.fault(b.Name+".levels.restart upstream", "a level is 0 or more")
	}
	if b.AtStart < 0 {
		c.fault("run.at start."+b.Name, "a level is 0 or more")
	}
	c.checkKind(b)
	c.checkBelt(b)
	c.checkSensors(b)
	c.checkGates(b)
	c.checkStoreStops(b)
	c.checkHand(b)
}

// checkKind refuses what a kind of store cannot have.
func (c *compiler) checkKind(b *Buffer) {
	switch {
	case b.Kind > HandMagazine:
		c.fault(b.Name+".kind", "there is no such kind; it is in line, beside the line or hand magazine")
	case b.Kind == InLine && b.Surplus != 0:
		c.fault(b.Name+".surplus", "all pieces of a store in line pass through it, so that there is no surplus; use out at most, or kind: beside the line")
	case b.Kind == InLine:
	case b.Conveyor || b.Transit > 0:
		c.fault(b.Name+".kind", "the way past a store beside the line takes no time; put the conveyor before or behind it as an entry of its own")
	case b.Holds >= 0 && b.Holds < 1 || b.Holds == Smallest:
		c.fault(b.Name+".holds", "a store beside the line holds at least 1 piece; leave it out if there is none")
	}
	if b.Surplus < 0 {
		c.fault(b.Name+".surplus", "a rate is more than nothing")
	}
}

// checkBelt refuses what a belt that stands cannot do.
func (c *compiler) checkBelt(b *Buffer) {
	switch {
	case !b.Stands:
	case !b.Conveyor || b.Transit < 1:
		c.fault(b.Name+".accumulating", "only a conveyor with a length and a speed accumulates or not; leave it out")
	case b.Start.On:
		c.fault(b.Name+".levels.start downstream", "on a belt that does not accumulate no more than one piece waits at the exit; let the belt accumulate, or put a buffer behind it")
	}
}

// checkSensors refuses sensors that no piece reaches, and a pair that would not stop anybody.
func (c *compiler) checkSensors(b *Buffer) {
	path := b.Name + ".sensors"
	if !b.Full.On {
		if b.Clear.On {
			c.fault(path+".clear", "it releases what a full sensor has stopped; write full too")
		}
		return
	}
	if !b.Conveyor || b.Transit < 1 || b.Stands {
		c.fault(path, "sensors look at a conveyor that accumulates; use levels for a buffer")
		return
	}
	c.checkSensor(b, path+".full", b.Full)
	clear := clearOf(b)
	if b.Clear.On {
		c.checkSensor(b, path+".clear", b.Clear)
	}
	if clear.At > b.Full.At && clear.Delay < 1 {
		c.fault(path+".clear.delay", "clear looks farther from the exit than full and would release at once what full stops; put it nearer to the exit, or give it a delay")
	}
}

func (c *compiler) checkSensor(b *Buffer, path string, s Sensor) {
	if s.At < 1 {
		c.fault(path+".at", "it is at least the length of one piece from the exit")
	}
	if b.Holds >= 0 && s.At > b.Holds {
		c.fault(path+".at", "pieces reach it when %d stand before the exit, but the belt has %d places; put it nearer to the exit", s.At, b.Holds)
	}
	if s.Delay < 0 {
		c.fault(path+".delay", "a delay is 0 or more")
	}
	if s.Travel < 0 || s.Travel > b.Transit {
		c.fault(path+".travel", "the belt runs the length of the queue in no less than 0 and no more than its transit")
	}
}

// clearOf is the sensor that releases: without one the same as that which stops.
func clearOf(b *Buffer) Sensor {
	if b.Clear.On {
		return b.Clear
	}
	return b.Full
}

// checkGates refuses rates and keeps that are no numbers of a store.
func (c *compiler) checkGates(b *Buffer) {
	if b.In < 0 {
		c.fault(b.Name+".in at most", "a rate is more than nothing")
	}
	if b.Out < 0 {
		c.fault(b.Name+".out at most", "a rate is more than nothing")
	}
	if b.Surplus > 0 && b.Surplus < b.Out {
		c.fault(b.Name+".surplus", "it is faster than out at most, which holds always; make it slower, or leave it out")
	}
	switch {
	case b.Keeps < 0:
		c.fault(b.Name+".keeps", "%d pieces; the number is 0 or more", b.Keeps)
	case b.Keeps > 0 && b.Stands:
		c.fault(b.Name+".keeps", "a belt that does not accumulate keeps nothing; put a buffer behind it")
	case b.Holds >= 0 && b.Kind != InLine && b.Keeps >= b.Holds:
		c.fault(b.Name+".keeps", "%d of %d pieces always stay, so that the store never gives any back; it is at most %d", b.Keeps, b.Holds, b.Holds-1)
	}
}

// checkStoreStops refuses stops that a store cannot have: it has no cycles and does not run.
func (c *compiler) checkStoreStops(b *Buffer) {
	seen := map[string]bool{}
	for i := range b.Stops {
		stop := &b.Stops[i]
		path := b.Name + ".stops." + stop.Name
		if stop.Name == "" || seen[stop.Name] {
			c.fault(path, "the stops of a store need names of their own")
		}
		seen[stop.Name] = true
		if stop.Every.IsZero() || !(stop.Every.Mean() > 0) || math.IsInf(stop.Every.Mean(), 1) {
			c.fault(path+".every", "it says nowhere how often it comes, such as every: 20000 blisters or every: 8 h calendar")
		}
		if stop.Clock != PieceClock && stop.Clock != CalendarClock {
			c.fault(path+".every", "a store has no cycles and no running time; its stops come with the pieces that go in, such as every: 20000 blisters, or by the calendar")
		}
		if stop.Lasts.IsZero() {
			c.fault(path+".lasts", "it says nowhere how long it lasts")
		}
		if !(stop.RateFactor >= 0) || math.IsInf(stop.RateFactor, 1) {
			c.fault(path, "a factor on how often it comes is more than 0")
		}
		if stop.Class > External {
			c.fault(path+".class", "there is no such class")
		}
		if stop.Scraps || len(stop.Renews) > 0 {
			c.fault(path, "a stop of a store scraps no cycle and renews no other stop; leave that out")
		}
		c.checkWork(path, stop.Crew)
	}
}
