package plain

// instant does what follows the ends of an instant.
func (e *Engine) instant() {
	if len(e.begins)+len(e.closed) > 0 {
		e.beforeMoves()
	}
	e.moves()
	if len(e.hands) > 0 {
		e.lookAtHands()
	}
	if e.asked || len(e.pockets)+len(e.fresh)+len(e.jams) > 0 {
		e.afterMoves()
	}
	if e.closely {
		e.settleClosely()
	} else {
		e.settleStates()
	}
	if e.atWork == 0 {
		e.lookForEnd()
	}
}

// beforeMoves does what comes between the ends of an instant and its moves.
func (e *Engine) beforeMoves() {
	if n := len(e.begins); n > 0 && e.begins[n-1] == e.timers.span { // the last timer of all that may be in it
		e.begins = e.begins[:n-1]
		e.nextSpan()
	}
	for _, timer := range e.begins {
		e.calendarBegins(timer)
	}
	e.begins = e.begins[:0]
	if len(e.closed) > 0 {
		e.openAfterClosed()
	}
}

// afterMoves does what follows the moves of an instant.
func (e *Engine) afterMoves() {
	e.strikes()
	if e.making.watches {
		e.lookAtOrders()
	}
	if e.asked {
		e.giveOut()
		e.asked = e.asked || e.making.watches
	}
}

// strikes lets empty pockets run through and stops strike that come only after the moves.
func (e *Engine) strikes() {
	for len(e.pockets)+len(e.fresh)+len(e.jams) > 0 {
		if len(e.pockets) > 0 {
			e.startPockets()
		}
		if len(e.fresh) > 0 {
			e.strikeFresh()
		}
		if len(e.jams) > 0 {
			e.strikeStores()
		}
		e.moves() // what these have freed goes on in the same instant
	}
}

// end does what one timer is due for.
func (e *Engine) end(timer int) {
	e.rec.Events++
	if timer < len(e.stations) {
		e.stationDue(&e.stations[timer])
	} else {
		e.endOther(timer)
	}
}

// endOther does what a timer that is no station's is due for.
func (e *Engine) endOther(timer int) {
	t := &e.timers
	switch {
	case timer < t.store:
		e.arrive(&e.links[t.links[timer-t.transit]])
	case timer < t.calendar:
		e.storeDue(timer)
	case timer < t.tasks:
		e.calendarDue(timer)
	case timer < t.check:
		e.taskDue(timer - t.tasks)
	case timer < t.elsewhere:
		c := t.checks[timer-t.check]
		e.checkDue(c.station, c.check)
	case timer < t.span:
		e.elsewhereDue(timer)
	case timer < t.rest:
		e.begins = append(e.begins, timer)
	default:
		e.restDue(timer)
	}
}
