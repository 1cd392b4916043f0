package plain

import "tuckline/sim/internal/plan"

// unset is the state before the first instant is over.
const unset plan.State = plan.NumStates

// settleStates compares the states of all stations touched in this instant with
// those before it.
func (e *Engine) settleStates() {
	for w, word := range e.touched {
		for ; word != 0; word &= word - 1 {
			s := &e.stations[w<<6+position(word)]
			if s.state == plan.Running && s.phase == working && s.open == 0 {
				continue
			}
			state, by, stop := e.stateOf(s)
			if state != s.state || by != s.by || stop != s.stop {
				e.setState(s, state, by, stop)
			}
		}
		e.touched[w] = 0
	}
}

// settleClosely settles the states, and what else is looked at after an instant.
func (e *Engine) settleClosely() {
	if len(e.stores) > 0 {
		e.settleStores()
	} else {
		e.settleStates()
	}
	if len(e.held) > 0 {
		e.releaseLater()
	}
	if e.because != nil {
		e.because.settleCauses(e)
	}
}

// stateOf is the state that a station is in, with the stop that caused it.
func (e *Engine) stateOf(s *station) (state plan.State, by, stop int) {
	switch {
	case s.open > 0: // outages and changeovers are among them
		return e.stateStopped(s)
	case s.phase == working:
		return plan.Running, none, none
	case s.plan.Group != plan.None:
		return e.stateStopped(s)
	}
	return s.blockedOrStarved(), none, none
}

// blockedOrStarved is the state of a station that nothing stops and that does not work.
func (s *station) blockedOrStarved() plan.State {
	if s.phase == holding || s.since != plan.Never {
		return plan.Blocked
	}
	return plan.Starved
}

// stateStopped is the state of a station that may be stopped.
func (e *Engine) stateStopped(s *station) (state plan.State, by, stop int) {
	switch e.hours.line {
	case plan.LineOff:
		return plan.OffShift, none, none
	case plan.LineStands:
		return plan.PlannedStop, none, none
	}
	id := e.firstOpen(s)
	if s.order != nil && s.order.phase == changing && !(id != none && e.plannedSpell(id)) {
		return plan.Changeover, none, none
	}
	if id == none {
		return s.blockedOrStarved(), none, none
	}
	sp := &e.spells[id]
	switch {
	case e.plannedSpell(id):
		return plan.PlannedStop, sp.station, sp.cause
	case sp.work == plan.Never:
		return plan.Waiting, sp.station, sp.cause
	}
	return plan.Down, sp.station, sp.cause
}

// plannedSpell says that an open stop is a planned one.
func (e *Engine) plannedSpell(id int) bool {
	sp := &e.spells[id]
	return e.stations[sp.station].planned(sp.cause)
}

// firstOpen is the open stop of a station or of its group that began first, by
// name if several began together; none if there is none.
func (e *Engine) firstOpen(s *station) int {
	if g := s.plan.Group; g != plan.None {
		return e.firstOf(e.groups[g].open)
	}
	if s.open == 0 {
		return none
	}
	if s.own >= 0 && s.open == 1 {
		return s.own
	}
	first := none
	for id := range e.spells {
		if sp := &e.spells[id]; sp.open && sp.station == s.index && (first == none || e.earlier(id, first)) {
			first = id
		}
	}
	return first
}

func (e *Engine) firstOf(open []int) int {
	first := none
	for _, id := range open {
		if first == none || e.earlier(id, first) {
			first = id
		}
	}
	return first
}

// earlier says that open stop a began before b, by name if at the same time.
func (e *Engine) earlier(a, b int) bool {
	x, y := &e.spells[a], &e.spells[b]
	if x.begin != y.begin {
		return x.begin < y.begin
	}
	return e.asksBefore(&request{station: x.station, cause: x.cause}, &request{station: y.station, cause: y.cause})
}

// setState is the one place where a state changes.
func (e *Engine) setState(s *station, state plan.State, by, stop int) {
	if s.state != unset {
		s.rec.States[s.state] += e.now - s.mark
	}
	if s.plan.LosesPacks {
		e.losePacks(s, state)
	}
	if state != s.state {
		s.entered = e.now
		switch state {
		case plan.Blocked:
			s.rec.BlockedSpells++
		case plan.Starved:
			s.rec.StarvedSpells++
		}
	}
	e.countRunning(s.state, state)
	s.state, s.by, s.stop, s.mark = state, by, stop, e.now
	if e.told {
		e.tell(s)
	}
}

// countRunning keeps the time in which all stations run.
func (e *Engine) countRunning(from, to plan.State) {
	e.flushRunning()
	if from == plan.Running {
		e.running--
	}
	if to == plan.Running {
		e.running++
	}
}

func (e *Engine) flushRunning() {
	if e.running == len(e.stations) {
		e.rec.AllRunning += e.now - e.allMark
	}
	e.allMark = e.now
}
