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

// Change puts a new stock in; cause is what UsedUp returned, working says that a cycle is under
// way, which is then the first that may be scrap.
func (m *Machine) Change(cause int, working bool) {
	m.pause(working)
	s := &m.stocks[cause-len(m.stops)]
	s.change()
	m.scrap.left = max(m.scrap.left, s.plan.Scrap)
	m.goOn()
}

// Alarms says that the i-th stock needs somebody now to refill it while the station runs. Asked
// says that somebody has been asked.
func (m *Machine) Alarms(i int) bool { return m.stocks[i].alarms() }

// IsAsked says that somebody has been asked.
func (m *Machine) IsAsked(i int) bool { return m.stocks[i].asked }

// Asked is called between cycles, or amid a careful one.
func (m *Machine) Asked(i int) {
	m.settle()
	m.stocks[i].asked = true
	m.goOn()
}

// Lasts draws the duration of the work for a stop or a change.
func (m *Machine) Lasts(cause int) plan.Micros {
	if cause < len(m.stops) {
		s := &m.stops[cause]
		return plan.Micros(draw.Micros(&s.plan.Work.Lasts, &s.lasts))
	}
	return m.stocks[cause-len(m.stops)].lasts()
}

// FailedChanges is how often the last change of a stock had to be done again.
func (m *Machine) FailedChanges(i int) int64 { return m.stocks[i].failed }

// Stock is what the i-th stock has, and what has been used and wasted since the replication
// began; working says that a cycle is under way, which has used nothing yet.
func (m *Machine) Stock(i int, working bool) (left, used, wasted int64) {
	m.pause(working)
	m.goOn()
	s := &m.stocks[i]
	return s.left + s.store, s.used, s.wasted
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
