package plain

import "tuckline/sim/internal/plan"

// firstTasks asks for what is due at time 0.
func (e *Engine) firstTasks() {
	for i := range e.stations {
		e.askRefills(&e.stations[i])
	}
}

// askRefills asks for those stocks of a station to be refilled, or spliced, that have come to their alarm. A
// splice needs the next reel: it is asked for when that is ready.
func (e *Engine) askRefills(s *station) {
	for i := range s.plan.Stocks {
		if p := &s.plan.Stocks[i]; p.Tasked && s.machine.Alarms(i) {
			s.machine.Asked(i)
			if !e.preparing(p) {
				e.ask(p.RefilledBy)
			}
		}
	}
}

// preparing says that the next reel is not ready yet.
func (e *Engine) preparing(p *plan.Stock) bool {
	return p.PreparedBy != plan.None && e.tasks[p.PreparedBy].open
}

// openNext opens what a station has to do before its next cycle, which Machine.UsedUp has told.
func (e *Engine) openNext(s *station, cause int) {
	s.machine.Opened(cause)
	e.useUp(s, cause)
}

// openAfterClosed lets stations whose stop ends in this instant begin what else they have to do,
// before anybody of their group goes on.
func (e *Engine) openAfterClosed() {
	for _, i := range e.closed {
		s := &e.stations[i]
		if s.own >= 0 || s.phase == working || s.phase == holding {
			continue
		}
		if cause := s.machine.UsedUp(); cause >= 0 {
			e.openNext(s, cause)
		}
	}
	e.closed = e.closed[:0]
}

// useUp opens the stop of a station for a stock that is used up: a change, or the wait for the
// task that is under way.
func (e *Engine) useUp(s *station, cause int) {
	i := cause - len(s.plan.Stops)
	if i < 0 {
		e.open(s, cause)
		return
	}
	p := &s.plan.Stocks[i]
	by := p.RefilledBy
	if e.preparing(p) {
		by = p.PreparedBy
	}
	if by == plan.None || !e.tasks[by].open {
		e.open(s, cause)
		return
	}
	s.own = e.beginSpell(s, cause)
	e.tie(s.own, by)
}

// refilled puts a new stock in after a refill or a splice, and lets a stop that waited for it end.
func (e *Engine) refilled(t *task) {
	s := &e.stations[t.plan.Station]
	e.change(s, t.plan.Item)
	if t.spell != none {
		e.late(t)
		e.close(t.spell)
	}
	if s.plan.Stocks[t.plan.Item].Tasked {
		e.askRefills(s)
	}
}

// change puts a new stock in; then the next reel is got ready.
func (e *Engine) change(s *station, i int) {
	s.machine.Change(len(s.plan.Stops)+i, s.phase == working)
	e.wake(s.node) // a cycle that is scrap now needs no room
	p := &s.plan.Stocks[i]
	rec := &e.rec.Stations[p.Declared].Materials[p.Material]
	rec.Added += p.Refill
	rec.FailedSplices += s.machine.FailedChanges(i)
	if e.because != nil && p.Scrap > 0 {
		e.because.scraps(e, s, i)
	}
	if p.PreparedBy != plan.None {
		e.ask(p.PreparedBy)
	}
}

// prepared says that the next reel is ready: a change or splice that waited for it may begin.
func (e *Engine) prepared(t *task) {
	s := &e.stations[t.plan.Station]
	p := &s.plan.Stocks[t.plan.Item]
	spell := t.spell
	if spell != none {
		e.late(t)
		e.spellWaits(spell)
	}
	switch {
	case s.machine.IsAsked(t.plan.Item):
		e.ask(p.RefilledBy)
		if spell != none {
			e.tie(spell, p.RefilledBy)
		}
	case spell != none:
		e.askForSpell(spell)
	}
}

// late counts a task that ended after the stock was used up.
func (e *Engine) late(t *task) {
	rec := e.materialRecord(t)
	rec.Late++
	rec.Lateness += e.now - e.spells[t.spell].from
}

// countTask counts a task of a material by its beginning.
func (e *Engine) countTask(t *task) {
	if t.plan.Kind == plan.RefillTask || t.plan.Kind == plan.PrepareTask {
		e.materialRecord(t).Tasks++
	}
}

func (e *Engine) materialRecord(t *task) *plan.MaterialRecord {
	return &e.rec.Stations[t.plan.Cause.Declared].Materials[t.plan.Cause.Index]
}

// scrapComes says that a splice is under way whose end lets a station go that waits for room: a cycle that
// is scrap needs none.
func (e *Engine) scrapComes(s *station) bool {
	if !s.plan.Tasked || !s.plan.BlocksBefore {
		return false
	}
	for i := range s.plan.Stocks {
		if p := &s.plan.Stocks[i]; p.Scrap > 0 && s.machine.IsAsked(i) {
			return true
		}
	}
	return false
}

// materialsAtEdge notes the stocks of a station at an edge of the window; used and wasted are
// the differences of totals.
func (e *Engine) materialsAtEdge(s *station, edge int) {
	for i := range s.plan.Stocks {
		p := &s.plan.Stocks[i]
		rec := &e.rec.Stations[p.Declared].Materials[p.Material]
		left, used, wasted := s.machine.Stock(i, s.phase == working)
		picks := s.machine.FailedPicks(i)
		rec.Stock[edge] = left
		if edge == 0 {
			used, wasted, picks = -used, -wasted, -picks
		}
		rec.FailedPicks += picks
		rec.Used += used
		rec.Wasted += wasted
	}
}
