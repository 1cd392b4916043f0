package plain

import "tuckline/sim/internal/plan"

// lookAtSensors looks at the sensors of a belt after all moves of the instant: what lasts no time is not
// seen. It says whether stations were released.
func (e *Engine) lookAtSensors(l *link) bool {
	st := l.store
	for {
		due := e.reportDue(l)
		if due > e.now {
			e.cal.set(st.sensorTimer, due)
			return false
		}
		released := st.stopped
		e.report(l)
		if released {
			return true // what they put in is to be seen first
		}
	}
}

// reportDue is when the next report comes if nothing enters, leaves or stands still before: Never if none does.
func (e *Engine) reportDue(l *link) plan.Micros {
	st := l.store
	full, clear := &st.plan.Full, &st.plan.Clear
	reached := e.queueReaches(l, full)
	if !st.stopped {
		if reached > e.now || st.seen > e.now {
			st.seen = max(reached, e.now)
		}
		return later(st.seen, full.Delay)
	}
	// A queue up to the sensor full has reached a nearer one too.
	if near := e.queueReaches(l, clear); clear.At <= full.At {
		reached = min(reached, near)
	} else {
		reached = near
	}
	switch {
	case reached <= e.now:
		st.seen = plan.Never
	case st.seen == plan.Never || st.reached < e.now: // it was not clear, or ceased to be
		st.seen = e.now
	}
	st.reached = reached
	if due := later(st.seen, clear.Delay); due <= reached {
		return due
	}
	return plan.Never
}

func later(t, delay plan.Micros) plan.Micros {
	if t == plan.Never {
		return plan.Never
	}
	return t + delay
}

// queueReaches is when the queue before the exit reaches a sensor, or has reached it: when all pieces up to
// the At-th are as near to the exit as so many that stand close together. The front of the first stands at the exit, that of
// the k-th (k - 1) pieces before it: the belt runs a piece in Travel / At, so that the k-th stands (k - 1) × Travel / At
// before it would have been at the exit. What comes at once is not nearer together than pieces that stand.
func (e *Engine) queueReaches(l *link, sensor *plan.Sensor) plan.Micros {
	if l.level < sensor.At {
		return plan.Never
	}
	reached := plan.Micros(0)
	slots, from := l.moving.slots, l.moving.head
	for piece := l.arrived + 1; piece <= sensor.At; from++ { // the first of a batch, counted from the exit
		b := &slots[from&(len(slots)-1)]
		reached = max(reached, b.at+l.stood-plan.Micros(piece-1)*sensor.Travel/plan.Micros(sensor.At))
		piece += b.pieces
	}
	if l.store.standing && reached > l.store.stoodFrom {
		return plan.Never // until it goes on
	}
	return reached
}

// sensorReports reports what has lasted for the delay of a sensor; without one it is what stays after the moves.
func (e *Engine) sensorReports(l *link) {
	st := l.store
	if !st.stopped && st.plan.Full.Delay == 0 {
		e.note(l)
		return
	}
	e.report(l)
}

// report is the report of a sensor: a full belt stops the stations before it, a clear one releases them.
func (e *Engine) report(l *link) {
	st := l.store
	st.stopped, st.seen = !st.stopped, plan.Never
	e.cal.set(st.sensorTimer, plan.Never)
	if st.stopped {
		l.rec.SensorStops++
	} else {
		e.roomIn(l)
	}
	e.note(l)
}
