package plain

import (
	"cmp"
	"slices"

	"tuckline/sim/internal/plan"
)

// spell counts a spell of the wait under way, and the stop that it goes back to once.
func (a *account) spell(row int, n int64) {
	if r := &a.rows[row]; n > 0 && (r.why.cause >= 0 || r.why.cause == plan.CauseStore) && (!r.hasStopped || r.stoppedAt != r.why.since) {
		r.hasStopped, r.stoppedAt = true, r.why.since
		r.sum.Stops++
	}
	if a.blocked {
		a.rows[row].sum.BlockedSpells += n
	} else {
		a.rows[row].sum.StarvedSpells += n
	}
}

// rowOf is the row of a cause.
func (a *account) rowOf(why origin) int {
	for i := range a.rows {
		if w := &a.rows[i].why; w.source == why.source && w.cause == why.cause && w.member == why.member {
			w.since = why.since
			return i
		}
	}
	a.rows = append(a.rows, row{why: why})
	return len(a.rows) - 1
}

// count adds the wait under way up to now to its cause.
func (b *because) count(e *Engine, i int) {
	a := &b.accounts[i]
	lasted := e.now - a.mark
	a.mark = e.now
	a.halts.count(lasted)
	if a.row == none || lasted == 0 {
		return
	}
	sum := &a.rows[a.row].sum
	reach := b.before[i]
	if a.blocked {
		sum.Blocked += lasted
		reach = b.behind[i]
	} else {
		sum.Starved += lasted
	}
	if b.othersOpen(e, reach, &a.gap.why) {
		sum.Overlap += lasted
		if a.blocked {
			sum.BlockedOverlap += lasted
		}
	}
}

// othersOpen says that another stop than the cause is open in the reach of a station.
func (b *because) othersOpen(e *Engine, reach set, why *origin) bool {
	open := 0
	for w, word := range reach {
		for ; word != 0; word &= word - 1 {
			open += b.open[w<<6+position(word)]
		}
	}
	if open > 0 && reach.has(why.source) && b.stillOpen(e, why) {
		open--
	}
	return open > 0
}

// stillOpen says that the stop that is the cause is not over.
func (b *because) stillOpen(e *Engine, why *origin) bool {
	if why.cause == plan.CauseStore {
		return b.open[why.source] > 0
	}
	for id := range e.spells {
		if sp := &e.spells[id]; sp.open && sp.station == why.source && sp.cause == why.cause && sp.begin == why.since {
			return true
		}
	}
	return false
}

// opens counts the open stops of a source; it is called before one begins or ends.
func (b *because) opens(e *Engine, source, n int) {
	b.countAll(e)
	if b.open[source] == 0 {
		b.since[source] = e.now
	}
	b.open[source] += n
}

// opensStore does the same for a stop of a store, and remembers it.
func (b *because) opensStore(e *Engine, l *link, n int) {
	source := len(e.stations) + l.index
	b.opens(e, source, n)
	if b.open[source] == 0 {
		b.past[source].push(gap{
			from: b.since[source], to: e.now,
			why: origin{source: source, cause: plan.CauseStore, since: b.since[source]},
		}, 0)
	}
	for i := range b.accounts {
		b.moved.add(i)
	}
}

// countAll counts all that lasts up to now.
func (b *because) countAll(e *Engine) {
	for i := range b.accounts {
		b.count(e, i)
		if len(b.shortUpTo) > 0 {
			b.accounts[i].still.count(e.now)
		}
	}
}

// clearCounts begins the window.
func (b *because) clearCounts(e *Engine) {
	for i := range b.accounts {
		a := &b.accounts[i]
		a.counted, a.mark = none, e.now
		for j := range a.rows {
			a.rows[j].sum = plan.Because{}
		}
		a.halts.clear()
		a.still.clear()
	}
}

// finish writes the sums and the pauses to the records of the members of each station.
func (b *because) finish(e *Engine) {
	for i := range b.accounts {
		a := &b.accounts[i]
		sums := b.sums(e, a)
		halts, pauses := a.halts.asWritten(e), e.pausesOf(&e.stations[i], a)
		a.still.end(b.shortUpTo)
		for _, m := range e.plan.Stations[i].Members {
			r := &e.rec.Stations[m.Declared]
			r.Because, r.StoppedBy, r.Pauses, r.Short = sums, halts, pauses, append([]plan.Standstills(nil), a.still.short...)
		}
	}
}

func (b *because) sums(e *Engine, a *account) []plan.Because {
	var sums []plan.Because
	for j := range a.rows {
		sum := a.rows[j].sum
		if sum == (plan.Because{}) {
			continue
		}
		sum.Station, sum.Cause = e.asWritten(&a.rows[j].why)
		sums = append(sums, sum)
	}
	slices.SortFunc(sums, func(x, y plan.Because) int {
		return cmp.Or(cmp.Compare(x.Station, y.Station), cmp.Compare(x.Cause, y.Cause))
	})
	return sums
}

// asWritten is a cause in the terms of the line as written.
func (e *Engine) asWritten(why *origin) (station, cause int) {
	switch {
	case why.source >= len(e.stations):
		return len(e.rec.Stations) + why.source - len(e.stations), why.cause
	case why.cause < 0:
		return e.plan.Stations[why.source].Members[why.member].Declared, why.cause
	}
	c := &e.plan.Stations[why.source].Causes[why.cause]
	return c.Declared, c.Index
}
