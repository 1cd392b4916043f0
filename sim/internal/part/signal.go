package part

import "tuckline/sim/internal/plan"

// signals are the stops that a part of the station raises: they have no clock.
// What is raised waits until the cycle has handed over.
type signals struct {
	raised []bool // by stop
	count  int
}

func (s *signals) reset(stops []plan.Stop) {
	if s.raised == nil {
		s.raised = make([]bool, len(stops))
	}
	clear(s.raised)
	s.count = 0
	for i := range stops {
		if stops[i].AtStart {
			s.raise(i)
		}
	}
}

func (s *signals) raise(stop int) {
	if stop != plan.None && !s.raised[stop] {
		s.raised[stop] = true
		s.count++
	}
}

// first is the first stop that is raised, by name.
func (s *signals) first() int {
	for i, raised := range s.raised {
		if raised {
			return i
		}
	}
	return plan.None
}

// Opened says that a stop that UsedUp has returned begins: it is no longer raised.
func (m *Machine) Opened(cause int) {
	if cause >= len(m.stops) || !m.signals.raised[cause] {
		return
	}
	m.signals.raised[cause] = false
	m.signals.count--
	m.settle()
	m.ask()
}
