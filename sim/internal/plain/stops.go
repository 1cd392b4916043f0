package plain

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// group is a set of stations that stop together, with the open stops of all its members in the
// order of their beginning.
type group struct {
	open []int // spells
}

// calendarStop is a stop whose clock is the calendar.
type calendarStop struct {
	station, cause int
	spell          int // while it is open, else none
}

const none = -1

// up says that a station has no open stop, nor has its group.
func (e *Engine) up(s *station) bool {
	if s.open > 0 {
		return false
	}
	g := s.plan.Group
	return g == plan.None || len(e.groups[g].open) == 0
}

// strikeFresh opens the stops that strike before any work is done.
func (e *Engine) strikeFresh() {
	slices.SortFunc(e.fresh, func(a, b int) int {
		return e.plan.Nodes[e.stations[a].node].Rank - e.plan.Nodes[e.stations[b].node].Rank
	})
	for _, i := range e.fresh {
		s := &e.stations[i]
		if s.open > 0 {
			continue // a calendar stop was first; it strikes when that is over
		}
		e.strike(s, s.machine.Strike()) // no work was done: the pause goes on
	}
	e.fresh = e.fresh[:0]
}

// strike opens a stop that strikes a cycle; the cycle may be lost.
func (e *Engine) strike(s *station, cause int) {
	if s.plan.Stops[cause].Scraps {
		e.lose(s)
	}
	e.open(s, cause)
}

// lose ends the cycle under way without output; its input is lost.
func (e *Engine) lose(s *station) {
	s.machine.Lose()
	s.phase = idle
	e.busy[s.node] = false
	e.atWork--
	if s.pocket {
		s.pocket = false
		return
	}
	s.rec.Lost += s.plan.Takes - s.short
	if s.order != nil {
		e.fateOf(s, 0)
	}
	if s.reserved > 0 {
		e.unreserve(s)
	}
}

// renewCalendar starts the clocks anew of calendar stops that a stop renews; the stop is over.
func (e *Engine) renewCalendar(s *station, p *plan.Stop) {
	if len(p.Renews) == 0 {
		return
	}
	for j := range e.timers.stops {
		stop := &e.timers.stops[j]
		if stop.station != s.index || stop.spell != none || !slices.Contains(p.Renews, stop.cause) {
			continue
		}
		// One that was to begin in this instant does not: ends come first.
		timer := e.timers.calendar + j
		e.begins = slices.DeleteFunc(e.begins, func(t int) bool { return t == timer })
		e.cal.set(timer, e.now+s.machine.CalendarAge(stop.cause))
	}
}

// planned says that a cause is a planned stop.
func (s *station) planned(cause int) bool {
	return cause < len(s.plan.Stops) && s.plan.Stops[cause].Planned
}

// causeRecord is the record of a stop or stock, at the member whose it is.
func (e *Engine) causeRecord(s *station, cause int) *plan.StopRecord {
	c := s.plan.Causes[cause]
	return &e.rec.Stations[c.Declared].Stops[c.Index]
}

// open opens a stop of a station that is not of the calendar.
func (e *Engine) open(s *station, cause int) {
	s.own = e.beginStop(s, cause)
}

// beginStop opens a stop and asks for its crew.
func (e *Engine) beginStop(s *station, cause int) int {
	id := e.beginSpell(s, cause)
	e.askForSpell(id)
	return id
}

// beginSpell opens a stop for which nobody is asked yet.
func (e *Engine) beginSpell(s *station, cause int) int {
	i := s.index
	id := e.newSpell()
	if e.because != nil {
		e.because.opens(e, i, 1)
	}
	sp := &e.spells[id]
	*sp = spell{station: i, cause: cause, begin: e.now, from: e.now, work: plan.Never, mark: e.now, open: true}
	s.open++
	e.causeRecord(s, cause).Count++
	e.touched.add(i)
	e.wake(s.node)
	if g := s.plan.Group; g != plan.None {
		e.groups[g].open = append(e.groups[g].open, id)
		e.wakeGroup(g)
		e.wakeRivals(g)
	}
	return id
}

// askForSpell asks for the crew of an open stop.
func (e *Engine) askForSpell(id int) {
	sp := &e.spells[id]
	work := e.stations[sp.station].machine.Work(sp.cause)
	if work.Crew == plan.None {
		e.beginWork(id)
		return
	}
	sp.people = work.People
	e.request(work, request{
		at: e.now, station: sp.station, cause: sp.cause, spell: id, people: work.People, priority: work.Priority,
	})
}

// wakeGroup lets the members of a group look again.
func (e *Engine) wakeGroup(g int) {
	for _, i := range e.plan.Groups[g].Members {
		e.touched.add(i)
		e.wake(e.plan.Stations[i].Node)
	}
}

// wakeRivals lets those look again that take from the same places as the members of a group, and may have stood back for
// them.
func (e *Engine) wakeRivals(g int) {
	for _, i := range e.plan.Groups[g].Members {
		for _, in := range e.plan.Stations[i].Ins {
			if l := &e.links[in.Link]; len(l.plan.Takers) > 1 {
				e.wakeTakers(l)
			}
		}
	}
}

// newSpell finds a free place in the list of open stops.
func (e *Engine) newSpell() int {
	for id := range e.spells {
		if !e.spells[id].open {
			return id
		}
	}
	e.spells = append(e.spells, spell{})
	return len(e.spells) - 1
}

// beginWork draws how long the work of a stop lasts, and waits for its end.
func (e *Engine) beginWork(id int) {
	sp := &e.spells[id]
	s := &e.stations[sp.station]
	e.spellWorks(id)
	done := e.now + s.machine.Lasts(sp.cause)
	if timer := e.calendarTimer(id); timer != none {
		e.cal.set(timer, done)
	} else {
		e.cal.set(sp.station, done)
	}
}

func (e *Engine) touchGroup(i int) {
	if g := e.stations[i].plan.Group; g != plan.None {
		for _, member := range e.plan.Groups[g].Members {
			e.touched.add(member)
		}
	}
}

// calendarTimer is the timer of a calendar stop, or none.
func (e *Engine) calendarTimer(id int) int {
	for j := range e.timers.stops {
		if e.timers.stops[j].spell == id {
			return e.timers.calendar + j
		}
	}
	return none
}

// close ends a stop: people are freed, the group may go on, the station too.
func (e *Engine) close(id int) {
	sp := &e.spells[id]
	i := sp.station
	s := &e.stations[i]
	e.count(id)
	if e.trace != nil {
		e.traceStop(sp)
	}
	if e.because != nil {
		e.because.opens(e, i, -1)
	}
	sp.open = false
	s.open--
	if s.own == id {
		s.own = none
		e.cal.set(i, plan.Never)
	}
	if sp.people > 0 {
		e.free(s.machine.Work(sp.cause).Crew, jobOf(false, id))
	}
	if g := s.plan.Group; g != plan.None {
		open := e.groups[g].open
		e.groups[g].open = slices.Delete(open, slices.Index(open, id), slices.Index(open, id)+1)
		e.wakeGroup(g)
	}
	if !s.planned(sp.cause) {
		s.machine.Stopped(e.now - sp.begin)
	}
	switch i := sp.cause - len(s.plan.Stops); {
	case i < 0:
		e.renewCalendar(s, &s.plan.Stops[sp.cause])
	case !s.plan.Stocks[i].Tasked: // else the task has done it
		e.change(s, i)
	}
	e.touched.add(i)
	e.wake(s.node)
	e.closed = append(e.closed, i)
	e.goOn(s)
}

// goOn lets an interrupted cycle go on when nothing stops the station any more.
func (e *Engine) goOn(s *station) {
	if s.phase == working && s.open == 0 {
		pause := e.pause(s)
		e.work(s, s.machine.Resume(pause), pause)
	}
}

// calendarDue ends a calendar stop, or marks it to begin after the ends of this instant.
func (e *Engine) calendarDue(timer int) {
	stop := &e.timers.stops[timer-e.timers.calendar]
	e.cal.set(timer, plan.Never)
	if stop.spell == none {
		e.begins = append(e.begins, timer)
		return
	}
	id := stop.spell
	if len(e.walks) > 0 && e.arrives(jobOf(false, id)) {
		return
	}
	stop.spell = none
	s := &e.stations[stop.station]
	s.machine.Renew(stop.cause)
	e.close(id)
	e.cal.set(timer, e.now+s.machine.CalendarAge(stop.cause))
}

// calendarBegins begins a calendar stop; a cycle under way is interrupted.
func (e *Engine) calendarBegins(timer int) {
	if timer < e.timers.calendar {
		e.storeStopBegins(timer)
		return
	}
	stop := &e.timers.stops[timer-e.timers.calendar]
	i := stop.station
	s := &e.stations[i]
	e.interrupt(s)
	if s.phase == working && s.plan.Stops[stop.cause].Scraps {
		e.lose(s)
	}
	// The timer is known before the work begins, which sets it.
	stop.spell = e.newSpell()
	e.beginStop(s, stop.cause)
}

// interrupt stops the cycle under way from outside.
func (e *Engine) interrupt(s *station) {
	if s.phase != working || s.open > 0 {
		return
	}
	if due := e.cal.next[s.index]; due != plan.Never {
		s.machine.Interrupt(due - e.now)
		e.cal.set(s.index, plan.Never)
		e.rest(s)
	}
}

// rest ends the work of a station. Work that has lasted no time was none: the pause before it
// goes on.
func (e *Engine) rest(s *station) {
	if s.begun < e.now {
		s.rested = e.now
	} else if e.pause(s) > s.plan.Pace.RampAfter {
		s.rec.Restarts--
	}
}

// count adds the time of an open stop up to now to the record.
func (e *Engine) count(id int) {
	sp := &e.spells[id]
	rec := e.causeRecord(&e.stations[sp.station], sp.cause)
	if sp.work == plan.Never {
		rec.Waiting += e.now - sp.mark
	} else {
		rec.Down += e.now - sp.mark
	}
	sp.mark = e.now
}
