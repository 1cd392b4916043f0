package part

import (
	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// UsedUp is what has to be done before the next cycle: the first stop that is raised, else the first
// stock, by name, that has to be changed, counted behind the stops; None if there is nothing.
func (m *Machine) UsedUp() int {
	if m.quietCycles > 0 || len(m.stocks) == 0 && m.signals.count == 0 {
		return plan.None
	}
	return m.usedUp()
}

func (m *Machine) usedUp() int {
	if m.signals.count > 0 {
		return m.signals.first()
	}
	m.settle()
	for i := range m.stocks {
		if m.stocks[i].usedUp() {
			return len(m.stops) + i
		}
	}
	return plan.None
}

// Change puts a new stock in; cause is what UsedUp returned.
func (m *Machine) Change(cause int) {
	m.settle()
	m.stocks[cause-len(m.stops)].change()
	m.ask()
}

// Lasts draws the duration of the work for a stop or a change.
func (m *Machine) Lasts(cause int) plan.Micros {
	if cause < len(m.stops) {
		s := &m.stops[cause]
		return plan.Micros(draw.Micros(&s.plan.Work.Lasts, &s.lasts))
	}
	s := &m.stocks[cause-len(m.stops)]
	return plan.Micros(draw.Micros(&s.plan.Work.Lasts, &s.work))
}

// CalendarAge draws the time to the next strike of a calendar stop.
func (m *Machine) CalendarAge(cause int) plan.Micros { return plan.Micros(m.stops[cause].age()) }

// Work says who is asked for a cause.
func (m *Machine) Work(cause int) *plan.Work {
	if cause < len(m.stops) {
		return &m.stops[cause].plan.Work
	}
	return &m.stocks[cause-len(m.stops)].plan.Work
}
