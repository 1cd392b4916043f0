package plain

import "tuckline/sim/internal/plan"

// origin is what began a wait: a stop or stock of a station of the plan, or one of the causes that are
// no stops. A source is a station, or behind the stations a link.
type origin struct {
	source, cause int
	// member is whose it is, for rejects of a unit.
	member int
	// since is when the cause began.
	since plan.Micros
}

// because says what began the waits of the stations. An engine has one only while it is asked for.
type because struct {
	accounts []account
	pauses   bool // they are asked for
	// shortUpTo are the lengths below which standstills are short; none where that is not asked for.
	shortUpTo []plan.Micros
	// past are the gaps in the flow of each source.
	past []history
	// open is the number of open stops of each source, since when the first of them began.
	open  []int
	since []plan.Micros
	// cycles are the longest cycles of the stations by plan, recoveries the times back to set speed.
	cycles, recoveries []plan.Micros
	// arrived is when the last piece that has come to the end of a link entered it.
	arrived []plan.Micros
	// before and behind are the sources whose stops keep a station from getting input, or from giving.
	before, behind []set
	// near are the stations before and behind a station, up to the next.
	near []set
	// entered are the stations that have begun to wait in this instant, moved those whose state has changed.
	entered, moved set
	// thaws are the times at which the belts have stood.
	thaws [][]stand
}

// account is what is known of the waits and the pauses of one station.
type account struct {
	// gap is the interruption under way while the station does not run.
	gap     gap
	stopped bool // there is one
	// took and gave are when it last took input and gave pieces.
	took, gave plan.Micros
	// unknown says that the cause of the wait that has begun in this instant is still looked for, asked
	// that it is looked for right now.
	unknown, asked bool
	// row is that of the wait under way, or none; mark up to where it is counted, counted where
	// its spell is; weak says that it began without a stop.
	row, counted int
	began        origin // what the wait began with
	mark         plan.Micros
	blocked      bool
	weak         bool
	// kept are the causes of the waits since the station last ran: for input, for room.
	kept    [2]origin
	hasKept [2]bool
	// last is the last cause of a stop, for what is scrap after it.
	last  origin
	rows  []row
	halts halts
	pause pause
	still standstill
}

// row adds up the waits that go back to one cause.
type row struct {
	why origin
	sum plan.Because
	// stoppedAt is when the last stop began that is counted in it, if one is.
	stoppedAt  plan.Micros
	hasStopped bool
}

// connectBecause makes what says what began waits.
func (e *Engine) connectBecause() *because {
	n, sources := len(e.stations), len(e.stations)+len(e.links)
	b := &because{
		accounts: make([]account, n), past: make([]history, sources),
		open: make([]int, sources), since: make([]plan.Micros, sources),
		cycles: make([]plan.Micros, n), recoveries: make([]plan.Micros, n), arrived: make([]plan.Micros, len(e.links)),
		before: make([]set, n), behind: make([]set, n), near: make([]set, n),
		entered: newSet(n), moved: newSet(n), thaws: make([][]stand, len(e.links)),
	}
	for i := range e.stations {
		p := &e.plan.Stations[i].Pace
		b.cycles[i], b.recoveries[i] = slowest(p), p.Ramp+p.Heat
		b.before[i], b.behind[i], b.near[i] = newSet(sources), newSet(sources), newSet(n)
	}
	for i := range e.stations {
		s := &e.stations[i]
		e.reachBefore(s, b.before[i], b.near[i])
		e.reachBehind(&e.nodes[s.node], b.behind[i], b.near[i])
		e.addGroups(b.before[i])
		e.addGroups(b.behind[i])
	}
	return b
}

// slowest is the longest that a cycle takes by plan.
func slowest(p *plan.Pace) plan.Micros {
	cycle := p.RampAfter
	for i := range p.Steps {
		cycle = max(cycle, p.Steps[i].Cycle)
	}
	return cycle + p.Adds
}

func (e *Engine) resetBecause(on, pauses bool, shortUpTo []plan.Micros) {
	e.because = nil
	if !on {
		return
	}
	if e.attribution == nil {
		e.attribution = e.connectBecause()
	}
	b := e.attribution
	e.because, b.pauses, b.shortUpTo = b, pauses, shortUpTo
	for i := range b.accounts {
		a := &b.accounts[i]
		*a = account{
			row: none, counted: none, took: fromNew, gave: fromNew, last: origin{source: none}, rows: a.rows[:0],
			halts: halts{on: none, rows: a.halts.rows[:0]}, pause: pause{list: a.pause.list[:0]}, still: standstill{short: make([]plan.Standstills, len(shortUpTo))},
		}
	}
	for i := range b.past {
		b.past[i].clear()
	}
	clear(b.open)
	clear(b.entered)
	clear(b.moved)
	for i := range b.thaws {
		b.thaws[i], b.arrived[i] = b.thaws[i][:0], fromNew
	}
}

// changed follows a change of state.
func (b *because) changed(e *Engine, s *station) {
	a, state, by, stop := &b.accounts[s.index], s.state, s.by, s.stop
	b.count(e, s.index)
	b.moved.add(s.index)
	if a.stopped {
		b.leave(e, s.index)
	}
	a.row, a.counted, a.mark = none, none, e.now
	why := e.whyStopped(s)
	a.halts.begin(state, why.source, why.cause)
	if b.pauses {
		e.followPause(s, a, state, why)
	}
	if len(b.shortUpTo) > 0 {
		a.still.enter(e.now, state, e.forMaterial(by, stop), b.shortUpTo)
	}
	switch state {
	case plan.Running:
		a.hasKept = [2]bool{}
	case plan.Blocked, plan.Starved:
		a.stopped, a.unknown, a.blocked = true, true, state == plan.Blocked
		a.gap = gap{from: e.now}
		b.entered.add(s.index)
	default:
		a.stopped = true
		a.gap = gap{from: e.now, why: why}
	}
}

// whyStopped is why a station neither runs nor waits for a neighbour: a stop, or the calendar of working time. Its source is none
// while it does.
func (e *Engine) whyStopped(s *station) origin {
	switch {
	case s.by != none:
		return origin{source: s.by, cause: s.stop, since: e.spells[e.firstOpen(s)].begin}
	case s.state == plan.Changeover:
		return origin{source: s.index, cause: plan.CauseOrder, since: s.order.since}
	case s.state == plan.OffShift || s.state == plan.PlannedStop:
		return origin{source: s.index, cause: plan.CauseOutage, since: e.hours.since}
	}
	return origin{source: none}
}

// leave ends the interruption under way: it is remembered.
func (b *because) leave(e *Engine, i int) {
	a := &b.accounts[i]
	a.gap.to, a.stopped, a.unknown = e.now, false, false
	b.past[i].push(a.gap, b.cycles[i])
	if a.gap.why.rank() == stopped || a.gap.to-a.gap.from > e.plan.Stations[i].Pace.RampAfter {
		a.last = a.gap.why
	}
}

// settleCauses finds the causes of the waits that have begun in this instant, and looks again at those
// that began without a stop.
func (b *because) settleCauses(e *Engine) {
	if !b.moved.any() {
		return
	}
	for w, word := range b.entered {
		for ; word != 0; word &= word - 1 {
			b.settle(e, w<<6+position(word))
		}
		b.entered[w] = 0
	}
	for range 3 { // what changes at one station may change its neighbours
		if !b.moved.any() {
			return
		}
		b.lookAgain(e)
	}
	clear(b.moved)
}

// settle finds the cause of a wait that has begun in this instant.
func (b *because) settle(e *Engine, i int) {
	a := &b.accounts[i]
	if !a.unknown || a.asked {
		return
	}
	a.asked = true
	which := 0
	if a.blocked {
		which = 1
	}
	why := a.kept[which]
	if !a.hasKept[which] || why.rank() < stopped {
		why = b.explain(e, &e.stations[i], a.blocked)
	}
	a.kept[which], a.hasKept[which] = why, true
	a.asked, a.unknown = false, false
	a.weak = why.rank() < stopped
	a.gap.why, a.began = why, why
	a.row = a.rowOf(why)
	a.counted = a.row
	a.spell(a.row, 1)
}

// lookAgain looks at the waits that began without a stop next to stations where something has
// changed: a stop that has begun meanwhile goes on with them.
func (b *because) lookAgain(e *Engine) {
	for i := range b.accounts {
		a := &b.accounts[i]
		if a.row == none || !a.weak || !b.near[i].meets(b.moved) {
			continue
		}
		why := b.explain(e, &e.stations[i], a.blocked)
		if why.rank() <= a.began.rank() {
			why = a.began
		}
		if row := a.rowOf(why); row != a.row {
			b.count(e, i)
			a.row, a.gap.why = row, why
			b.entered.add(i) // its neighbours look next
		}
		if a.counted != none && why.rank() > a.rows[a.counted].why.rank() {
			a.spell(a.counted, -1)
			a.counted = a.row
			a.spell(a.row, 1)
		}
	}
	copy(b.moved, b.entered)
	clear(b.entered)
}
