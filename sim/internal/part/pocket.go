package part

import "tuckline/sim/internal/plan"

// Pocket begins a pocket that runs through empty, after a pause since the last work: one cycle at
// set speed that takes, gives and uses nothing and ages no clock. It returns its duration.
func (m *Machine) Pocket(pause plan.Micros) plan.Micros {
	if pause > m.watch {
		m.standstill(pause)
	}
	m.settle()
	m.careful, m.pocket = true, true
	m.begin(m.plan.Pace.RampAfter)
	m.doomed, m.point = false, point{}
	return m.dur
}

// PocketOver ends it.
func (m *Machine) PocketOver() {
	m.careful, m.pocket = false, false
	m.scrap.worked(m.dur - m.at)
	m.ask()
}

// here is the point that the cycle under way has reached; an empty pocket ages nothing.
func (m *Machine) here() point {
	if m.pocket {
		return point{}
	}
	return point{share: m.share(), work: m.at}
}
