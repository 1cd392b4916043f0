package plain

import "tuckline/sim/internal/plan"

// freeze lets a belt stand with all that is on it.
func (e *Engine) freeze(l *link) {
	st := l.store
	if st.standing || l.plan.Transit == 0 {
		return
	}
	st.standing, st.stoodFrom = true, e.now
	e.cal.set(l.timer, plan.Never)
	if st.plan.Full.At > 0 {
		e.note(l)
	}
}

// thaw lets a belt go on, unless something still keeps it: transit times go on where they stood.
func (e *Engine) thaw(l *link) {
	st := l.store
	if !st.standing || st.open > 0 || st.plan.Stands && l.arrived > 0 {
		return
	}
	st.standing = false
	if e.because != nil {
		e.because.thawed(e, l, e.now-st.stoodFrom)
	}
	l.stood += e.now - st.stoodFrom
	if l.moving.size > 0 {
		e.cal.set(l.timer, l.moving.first().at+l.stood)
	}
}

// arrivedAt says that pieces have come to the exit of a belt.
func (e *Engine) arrivedAt(l *link) {
	if l.store.plan.Stands {
		e.freeze(l)
	}
	if l.store.plan.Full.At > 0 {
		e.note(l)
	}
}

// onItsWay says that pieces move towards the exit of a link.
func (l *link) onItsWay() bool {
	return l.moving.size > 0 && (l.store == nil || !l.store.standing)
}
