package plain

import (
	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// hand is the work at a hand magazine, in one direction at a time: from the request to the end.
type hand struct {
	open bool
	// out: a load is carried out of it, and lies at hand when the work is over: it goes in piece by piece as the
	// station behind lacks some, so that what comes straight goes first. Else pieces that find the direct way full are
	// taken in as they come, at most left more while the work lasts.
	out  bool
	left int64
	load int64
}

// carry begins the work: a load at the hand rate. It returns how long that takes.
func (e *Engine) carry(t *task) plan.Micros {
	l := &e.links[t.plan.Link]
	st := l.store
	st.hand.load = st.plan.Load
	if st.hand.out {
		st.hand.load = min(st.plan.Load, st.stored-st.atHand-st.keeps)
	} else {
		st.hand.left = st.plan.Load
		e.roomIn(l)
		e.carries = true
	}
	lasts := max(1, plan.Micros(st.hand.load)*st.plan.PerPiece)
	l.rec.HandTime += lasts
	return lasts
}

// takesIn is how many pieces a store takes in for which it has so many places.
func (st *store) takesIn(places int64) int64 {
	if st.plan.Hand == plan.None {
		return places
	}
	return min(places, st.hand.left)
}

// byHand counts pieces that somebody has taken in.
func (st *store) byHand(l *link, pieces int64) {
	if st.plan.Hand != plan.None {
		st.hand.left -= pieces
		l.rec.ByHand += pieces
	}
}

// carried ends the work.
func (e *Engine) carried(t *task) {
	l := &e.links[t.plan.Link]
	st := l.store
	if st.hand.out {
		e.clock(l)
		st.atHand += st.hand.load
		if e.ages != nil {
			e.ages.carries(l, st.hand.load)
		}
		st.goesOn = st.nothingCame
		l.rec.GivenBack += st.hand.load
		l.rec.ByHand += st.hand.load
		e.wakeTakers(l)
	}
	st.hand = hand{}
	e.roomIn(l)
}

// back are pieces of rejected cycles that come back to a hand magazine: those of every cycle after so many
// free ones, one inspection after the other.
type back struct {
	stream draw.Stream
	free   int64
	// open: one is inspected; takes are what it took, and those of the others that wait.
	open  bool
	takes []int64
}

func (b *back) reset(p *plan.Store, o Options) {
	b.open, b.takes = false, b.takes[:0]
	if p.Returns.Share > 0 {
		b.stream = draw.NewStream(o.Seed, o.Replication, p.Returns.Streams, "returns")
		b.free = draw.Gap(b.stream.Uniform(), p.Returns.Share)
	}
}

// mayReturn settles whether what a rejected cycle of a station took comes back.
func (e *Engine) mayReturn(s *station) {
	for _, l := range s.returns {
		st := l.store
		if st.back.free > 0 {
			st.back.free--
			continue
		}
		st.back.free = draw.Gap(st.back.stream.Uniform(), st.plan.Returns.Share)
		st.back.takes = append(st.back.takes, e.takes(s.node, l))
		e.missing(s.order, -s.backWorth(l))
		if e.ages != nil {
			e.ages.rejected(s, l)
		}
		if !st.back.open {
			st.back.open = true
			e.ask(st.plan.Returns.Task)
		}
	}
}

// returned puts what has been inspected into the magazine, if there is room.
func (e *Engine) returned(t *task) {
	l := &e.links[t.plan.Link]
	st := l.store
	pieces := st.back.takes[0]
	st.back.takes = append(st.back.takes[:0], st.back.takes[1:]...)
	fits := pieces <= min(l.plan.Capacity-st.plan.Direct-st.stored, l.free())
	if e.ages != nil {
		e.ages.returned(l, pieces, fits)
	}
	if fits {
		e.clock(l)
		st.stored += pieces
		l.level += pieces
		l.arrived += pieces
		l.rec.Returned += pieces
		e.wakeTakers(l)
	} else {
		s := &e.stations[st.plan.Returns.Stations[0]]
		e.missing(s.order, s.backWorth(l))
	}
	if st.back.open = len(st.back.takes) > 0; st.back.open {
		e.ask(st.plan.Returns.Task)
	}
	e.note(l)
}
