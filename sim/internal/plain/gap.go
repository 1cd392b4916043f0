package plain

import "tuckline/sim/internal/plan"

// gap is an interruption of what a source takes and gives. One that is lost is none of what it takes: it
// worked, but gave less.
type gap struct {
	from, to plan.Micros
	why      origin
	lost     bool
}

// remembered is how many gaps of a source are remembered: many more than fit into the time of a belt
// or of a cycle, and with waits in every cycle still those of a belt of a hundred cycles.
const remembered = 128

// history is the last gaps of a source, in the order of their end.
type history struct {
	gaps [remembered]gap
	next int // number of gaps ever
}

func (h *history) clear() { h.next = 0 }

// push remembers a gap. One that goes on from the last with the same cause makes it longer, and so does a
// short wait for the same slower neighbour within a time near.
func (h *history) push(g gap, near plan.Micros) {
	if last := h.back(0); last != nil && last.lost == g.lost {
		same := last.why == g.why && last.to == g.from
		waits := g.why.rank() == slower && last.why.cause == g.why.cause && last.why.source == g.why.source
		if same || waits && g.from-last.to <= near {
			last.to = g.to
			return
		}
	}
	h.gaps[h.next%remembered] = g
	h.next++
}

// back is the i-th gap from the last, nil if it is not remembered.
func (h *history) back(i int) *gap {
	if i >= min(h.next, remembered) {
		return nil
	}
	return &h.gaps[(h.next-1-i)%remembered]
}

// stand is a time in which a belt stood.
type stand struct{ until, lasted plan.Micros }

// thawed remembers that a belt has stood until now.
func (b *because) thawed(e *Engine, l *link, lasted plan.Micros) {
	const most = 64
	if len(b.thaws[l.index]) == most {
		b.thaws[l.index] = append(b.thaws[l.index][:0], b.thaws[l.index][1:]...)
	}
	b.thaws[l.index] = append(b.thaws[l.index], stand{e.now, lasted})
}

// enteredAt is when a piece entered a link that comes to its end at a time: a transit before it, and what the
// belt has stood meanwhile.
func (b *because) enteredAt(e *Engine, l *link, at plan.Micros) plan.Micros {
	at -= l.plan.Transit
	if l.store == nil || l.plan.Transit == 0 {
		return at
	}
	if l.store.standing {
		at -= e.now - l.store.stoodFrom
	}
	for i := len(b.thaws[l.index]) - 1; i >= 0 && b.thaws[l.index][i].until > at; i-- {
		at -= b.thaws[l.index][i].lasted
	}
	return at
}

// completes is when the piece entered a link that completes what is needed: now, if it has not.
func (b *because) completes(e *Engine, l *link, need int64) plan.Micros {
	for i := range l.moving.size {
		batch := &l.moving.slots[(l.moving.head+i)&(len(l.moving.slots)-1)]
		if need -= batch.pieces; need <= 0 {
			return min(e.now, b.enteredAt(e, l, batch.at+l.stood))
		}
	}
	return e.now
}

// missed notes that a cycle which has ended gave less than it could: rejects, samples, or scrap.
func (b *because) missed(e *Engine, s *station, scrapped bool) {
	a := &b.accounts[s.index]
	why := origin{source: s.index, cause: plan.CauseRejects, since: e.now}
	lostPacks := false
	for i := range s.plan.Checks {
		if pieces, _ := s.machine.Sampled(i); pieces > 0 && !scrapped {
			why.member = s.plan.Checks[i].Member
		}
	}
	for i := range s.plan.Rejects {
		if r := s.machine.Rejected(i); r.All > 0 && !scrapped {
			why.member = s.plan.Rejects[i].Member
			lostPacks = lostPacks || r.LostPacks > 0
		}
	}
	if (scrapped || lostPacks) && a.last.source != none {
		why = a.last
	}
	b.past[s.index].push(gap{from: e.now, to: e.now, why: why, lost: true}, 0)
	b.moved.add(s.index) // who waits already, for want of a faster neighbour, now waits for this
}

// noInput notes that an empty pocket has run through, for want of input.
func (b *because) noInput(e *Engine, s *station) {
	b.past[s.index].push(gap{from: e.now, to: e.now, why: b.explain(e, s, false), lost: true}, 0)
	b.moved.add(s.index)
}

// scraps notes that a new stock makes what follows scrap, without a stop where it was spliced in while running.
func (b *because) scraps(e *Engine, s *station, stock int) {
	b.accounts[s.index].last = origin{source: s.index, cause: len(s.plan.Stops) + stock, since: e.now}
}
