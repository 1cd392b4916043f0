package plain

// What follows causes, ages and orders is told of moves here, in one place each: a line without any of them has
// one flag to look at.

// took follows a station that has taken its input.
func (e *Engine) took(s *station) {
	if e.because != nil {
		e.because.accounts[s.index].took = e.now
	}
	if e.ages != nil {
		e.ages.load(e, s)
	}
	if s.flow != nil && s.flow.Strays > 0 {
		e.missing(s.order, s.flow.Strays)
	}
}

// gave follows the pieces that leave a station, before they are put into the next place.
func (e *Engine) gave(s *station) {
	if e.because != nil {
		e.because.accounts[s.index].gave = e.now
	}
	if e.ages != nil {
		e.ages.gives(e, s)
	}
	if s.answers {
		e.countGood(s)
	}
}

// reached follows pieces that have come to the end of a belt.
func (e *Engine) reached(l *link, pieces int64) {
	if e.because != nil {
		e.because.arrived[l.index] = e.because.enteredAt(e, l, e.now)
	}
	if e.ages != nil {
		e.ages.arrive(l, pieces)
	}
}

// tell tells of a change of state.
func (e *Engine) tell(s *station) {
	if e.trace != nil {
		e.traceState(s)
	}
	if e.because != nil {
		e.because.changed(e, s)
	}
}
