package plain

import (
	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// storeStop is a stop of a store: while it lasts nothing goes in or out.
type storeStop struct {
	plan  *plan.StoreStop
	every draw.Stream
	left  int64 // on CycleClock: until it strikes
	timer int   // on CalendarClock
	open  bool
	mark  plan.Micros // up to where its time is counted
}

func (s *storeStop) age() int64 { return draw.Micros(&s.plan.Every, &s.every) }

func (e *Engine) resetStoreStops(l *link, o Options) {
	for j := range l.store.stops {
		s := &l.store.stops[j]
		s.every = draw.NewStream(o.Seed, o.Replication, s.plan.Streams, "every", s.plan.Name)
		s.open = false
		if s.timer == none {
			s.left = s.age()
		} else {
			e.cal.set(s.timer, plan.Micros(s.age()))
		}
	}
}

// ageStoreStops ages the stops of a store by what went in. One that strikes begins after all moves of
// the instant.
func (e *Engine) ageStoreStops(l *link, pieces int64) {
	due := false
	for j := range l.store.stops {
		if s := &l.store.stops[j]; s.timer == none {
			s.left -= pieces * plan.Cycle
			due = due || s.left <= 0
		}
	}
	if due {
		e.jams = append(e.jams, l)
	}
}

// strikeStores begins the stops that pieces have brought: of several due together the first by
// name; the others come with the next pieces.
func (e *Engine) strikeStores() {
	for _, l := range e.jams {
		for j := range l.store.stops {
			if s := &l.store.stops[j]; s.timer == none && s.left <= 0 && l.store.open == 0 {
				e.jam(l, j)
			}
		}
	}
	e.jams = e.jams[:0]
}

// storeStopBegins begins a stop of the calendar.
func (e *Engine) storeStopBegins(timer int) {
	t := e.timers.stores[timer-e.timers.store]
	e.jam(&e.links[t.link], t.stop)
}

// jam begins a stop of a store: its work is a task.
func (e *Engine) jam(l *link, j int) {
	st := l.store
	s := &st.stops[j]
	s.open, s.mark = true, e.now
	l.rec.Stops[j].Count++
	if e.because != nil {
		e.because.opensStore(e, l, 1)
	}
	if st.open == 0 {
		st.stoppedFrom = e.now
		e.shutStores++
	}
	st.open++
	e.freeze(l)
	e.ask(s.plan.Task)
}

// storeGoesOn ends a stop of a store.
func (e *Engine) storeGoesOn(t *task) {
	l := &e.links[t.plan.Link]
	st := l.store
	s := &st.stops[t.plan.Item]
	e.countStoreStop(l, t.plan.Item)
	if e.because != nil {
		e.because.opensStore(e, l, -1)
	}
	s.open = false
	st.open--
	if s.timer == none {
		s.left += s.age()
	} else {
		e.cal.set(s.timer, e.now+plan.Micros(s.age()))
	}
	if st.open > 0 {
		return
	}
	e.shutStores--
	e.thaw(l)
	e.roomIn(l)
	e.wakeTakers(l)
	e.note(l)
}

// countStoreStop adds the time of an open stop up to now to the record.
func (e *Engine) countStoreStop(l *link, j int) {
	s := &l.store.stops[j]
	work := e.tasks[s.plan.Task].work
	began := min(max(work, s.mark), e.now) // Never while it waits
	l.rec.Stops[j].Waiting += began - s.mark
	l.rec.Stops[j].Down += e.now - began
	s.mark = e.now
}

func (e *Engine) flushStores() {
	for _, l := range e.stores {
		for j := range l.store.stops {
			if l.store.stops[j].open {
				e.countStoreStop(l, j)
			}
		}
		if l.store.plan.Beside {
			e.clockDry(l)
		}
	}
}
