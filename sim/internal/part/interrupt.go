package part

import (
	"math"

	"tuckline/sim/internal/plan"
)

// Strike says which stop strikes now, after the work that Start or Resume announced;
// None if the cycle ends instead. A quiet cycle has none.
func (m *Machine) Strike() int {
	which, where := m.first()
	if which != plan.None {
		m.reached(where)
		m.point = point{share: m.share(), work: where}
		if s := &m.stops[which]; s.plan.Clock == plan.CycleClock {
			m.point.share = s.due
		}
		m.stops[which].renew(m.point)
		m.renew(which)
	}
	return which
}

// Interrupt says that something from outside stops the cycle with work left to
// the next event.
func (m *Machine) Interrupt(left plan.Micros) {
	m.makeCareful()
	_, where := m.first()
	m.reached(where - left)
	m.point = m.here()
}

// share is how much of the cycle under way has been done, in millionths.
func (m *Machine) share() int64 { return int64(m.at * plan.Cycle / m.dur) }

// renew starts the clocks anew that a stop renews beside its own.
func (m *Machine) renew(cause int) {
	for _, i := range m.stops[cause].plan.Renews {
		m.stops[i].renew(m.point)
	}
}

// Renew starts the clocks anew that a stop of the calendar renews.
func (m *Machine) Renew(cause int) {
	if len(m.stops[cause].plan.Renews) == 0 {
		return
	}
	m.point = point{}
	if m.careful {
		m.point = m.here()
	} else {
		m.settle()
	}
	m.renew(cause)
	m.ask()
}

// Lose ends a cycle that a stop has struck or interrupted: it counts for nothing.
func (m *Machine) Lose() {
	m.careful, m.pocket = false, false
	m.pace.lost(m.ramp, m.heat)
	for i := range m.stops {
		m.stops[i].lost(m.point)
	}
	for i := range m.checks {
		m.checks[i].lost(m.point)
	}
	m.ask()
}

// reached says that work has ended at a point of the cycle.
func (m *Machine) reached(at plan.Micros) {
	m.scrap.worked(at - m.at)
	if m.watch < plan.Never {
		heat := min(m.heat, at-m.at)
		m.heat -= heat
		done := m.pace.work(m.ramp, at-m.at-heat)
		m.base -= done
		if m.ramp >= 0 {
			m.ramp += done
		}
	}
	m.at = at
}

// Careful lets the cycle that has started end through End, whatever happens in it.
func (m *Machine) Careful() { m.makeCareful() }

// makeCareful turns a quiet cycle under way into a careful one: as if it had
// started as such.
func (m *Machine) makeCareful() {
	if m.careful {
		return
	}
	m.quietCycles++
	m.quietWork += m.dur
	m.settle()
	m.careful, m.doomed = true, false
	m.base, m.ramp, m.heat = float64(m.dur), -1, 0
	m.pickAll()
}

// LosePacks says that the station has stopped, or has been blocked for longer than a cycle: what
// is between printing and rejecting loses its place. Working says that a cycle is under way, empty for how long it has
// had nothing to work on: meanwhile they leave, those of one cycle in each cycle at set speed.
func (m *Machine) LosePacks(working bool, empty plan.Micros) {
	m.pause(working)
	for i := range m.rejects {
		if r := &m.rejects[i]; empty <= r.cycles()*m.plan.Pace.RampAfter {
			r.stopped()
		}
	}
	m.goOn()
}

// Stopped says that an own stop, or a change of material, of this length is over.
func (m *Machine) Stopped(length plan.Micros) {
	if len(m.scrap.afterStop) == 0 {
		return
	}
	if !m.careful { // between cycles
		m.settle()
	}
	m.scrap.pause(m.scrap.afterStop, length)
	m.ask()
}

// Resume goes on with the cycle after a pause and returns the work up to the
// next stop in it, or to its end.
func (m *Machine) Resume(pause plan.Micros) plan.Micros {
	if pause > m.watch {
		m.scrap.pause(m.scrap.afterStandstill, pause)
		if m.pace.standstill(pause) {
			m.ramp, m.heat = m.pace.ramp, m.pace.heat
			m.dur = m.at + m.pace.onRamp(plan.Micros(math.Round(m.base)))
		}
	}
	m.doomed = m.doomed || m.scrap.time > 0
	return m.next()
}
