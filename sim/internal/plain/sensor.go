package plain

import "tuckline/sim/internal/plan"

// lookAtSensors looks at the sensors of a belt after all moves of the instant: what lasts no time is not
// seen. It says whether stations were released.
func (e *Engine) lookAtSensors(l *link) bool {
	st := l.store
	released := false
	for {
		sensor, sees := &st.plan.Full, l.arrived >= st.plan.Full.At
		if st.stopped {
			sensor, sees = &st.plan.Clear, l.arrived < st.plan.Clear.At
		}
		switch {
		case !sees:
			st.seen = plan.Never
		case st.seen == plan.Never:
			st.seen = e.now
		}
		if !sees || e.now-st.seen < sensor.Delay {
			e.setSensor(st, sensor)
			return released
		}
		released = released || st.stopped
		e.report(l)
		if released {
			return true // what they put in is to be seen first
		}
	}
}

func (e *Engine) setSensor(st *store, sensor *plan.Sensor) {
	due := plan.Never
	if st.seen != plan.Never {
		due = st.seen + sensor.Delay
	}
	e.cal.set(st.sensorTimer, due)
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
