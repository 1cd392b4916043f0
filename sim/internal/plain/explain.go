package plain

import "tuckline/sim/internal/plan"

// The ranks of causes: a stop goes before rejects, these before a slower neighbour.
const (
	slower = iota
	rejecting
	stopped
)

func (o *origin) rank() int {
	switch o.cause {
	case plan.CausePace:
		return slower
	case plan.CauseRejects:
		return rejecting
	}
	return stopped
}

// finder keeps the best of the causes that are found: by rank, then the one that began first, then by name.
type finder struct {
	best  origin
	found bool
}

func (f *finder) add(e *Engine, o origin) {
	if !f.found || e.goesBefore(&o, &f.best) {
		f.best, f.found = o, true
	}
}

func (e *Engine) goesBefore(a, b *origin) bool {
	switch x, y := a.rank(), b.rank(); {
	case x != y:
		return x > y
	case a.since != b.since:
		return a.since < b.since
	case a.source != b.source:
		return e.sourceName(a) < e.sourceName(b)
	}
	return a.cause >= 0 && b.cause >= 0 && e.causeName(&request{station: a.source, cause: a.cause}) < e.causeName(&request{station: b.source, cause: b.cause})
}

func (e *Engine) sourceName(o *origin) string {
	if o.source >= len(e.stations) {
		return e.links[o.source-len(e.stations)].plan.Name
	}
	station, _ := e.asWritten(o)
	for _, m := range e.plan.Stations[o.source].Members {
		if m.Declared == station {
			return m.Name
		}
	}
	return e.plan.Stations[o.source].Name
}

// explain finds what a station waits for, and what began it.
func (b *because) explain(e *Engine, s *station, blocked bool) origin {
	var f finder
	if blocked {
		b.whyBlocked(e, &f, s)
	} else {
		b.whyStarved(e, &f, s)
	}
	if !f.found {
		return e.slower(s.index)
	}
	return f.best
}

// pace is the cause that a source is slower.
func (e *Engine) slower(source int) origin {
	return origin{source: source, cause: plan.CausePace, since: e.now}
}

func (b *because) whyStarved(e *Engine, f *finder, s *station) {
	if s.in == nil {
		f.add(e, origin{source: s.index, cause: e.noSupply(s), since: e.now})
		return
	}
	any := false
	for i := range 1 + len(s.also) {
		in := input{link: s.in, takes: s.plan.Takes}
		if i > 0 {
			in = s.also[i-1]
		}
		if lacks := in.takes - e.there(in.link); lacks > 0 {
			any = true
			b.whyEmpty(e, f, in.link, in.takes, lacks, e.now, e.now)
		}
	}
	if !any { // another taker goes first, or a start level holds it
		b.whyEmpty(e, f, s.in, s.plan.Takes, 1, e.now, e.now)
	}
}

// whyEmpty looks for what makes pieces lack behind a link at a time: gaps that begin before until, when the
// next piece came.
func (b *because) whyEmpty(e *Engine, f *finder, l *link, takes, lacks int64, at, until plan.Micros) {
	b.ownStops(e, f, l, at)
	if st := l.store; st != nil && at == e.now && e.now < st.out.from && l.arrived > 0 {
		f.add(e, e.slower(len(e.stations)+l.index))
		if l.arrived >= takes {
			return // all is there, behind the gate
		}
	}
	at0, next := at, b.enteredAt(e, l, until)
	if until == e.now {
		next = b.completes(e, l, lacks)
	}
	if l.plan.Transit > 0 {
		at = b.enteredAt(e, l, at)
	}
	for _, k := range l.plan.Feeders {
		n := &e.nodes[k]
		if n.station == nil {
			b.whyEmpty(e, f, n.link, takes, lacks, at, next)
			continue
		}
		i := n.station.index
		w := wait{at: at, until: next, after: b.gaveLast(l, i, at, at0 == e.now), empty: true}
		w.after -= plan.Micros(ceil(takes, n.station.plan.Gives)-1) * b.cycles[i]
		if n.station.state == plan.Blocked && l.onItsWay() && len(n.outs) == 1 {
			f.add(e, e.slower(len(e.stations)+l.index)) // the belt is full of what is on its way
		} else if !b.look(e, f, i, w) {
			f.add(e, b.narrower(e, l, i, n.station.plan.Gives, true))
		}
	}
}

// narrower is who is slower: a station that puts pieces into a link or takes them, or the gate on the way, where
// that lets fewer of them pass. The way into a store beside the line is not on the way of what comes straight.
func (b *because) narrower(e *Engine, l *link, i int, pieces int64, in bool) origin {
	if st := l.store; st != nil && !(in && st.plan.Beside) {
		every := st.out.every
		if in {
			every = st.in.every
		}
		if plan.Micros(pieces)*every > b.cycles[i] {
			return e.slower(len(e.stations) + l.index)
		}
	}
	return e.slower(i)
}

// gaveLast is when a station gave the last piece that has come to the end of a link at a time; where that
// is not known, a cycle before it would have.
func (b *because) gaveLast(l *link, i int, at plan.Micros, now bool) plan.Micros {
	switch {
	case !now:
		return at - b.cycles[i] - 1
	case l.plan.Transit > 0:
		return b.arrived[l.index]
	}
	return b.accounts[i].gave
}

func ceil(a, b int64) int64 { return (a + b - 1) / b }

// ownStops looks for a stop of the place itself.
func (b *because) ownStops(e *Engine, f *finder, l *link, at plan.Micros) {
	if l.store == nil {
		return
	}
	source := len(e.stations) + l.index
	if b.open[source] > 0 && b.since[source] <= at {
		f.add(e, origin{source: source, cause: plan.CauseStore, since: b.since[source]})
	}
	for j := 0; ; j++ {
		g := b.past[source].back(j)
		if g == nil || g.to <= at {
			return
		}
		if g.from <= at {
			f.add(e, g.why)
		}
	}
}

func (b *because) whyBlocked(e *Engine, f *finder, s *station) {
	n := &e.nodes[s.node]
	for o := range n.outs {
		if len(n.outs) > 1 && e.plan.Nodes[n.index].Rule == plan.InTurn && o != n.turn {
			continue
		}
		b.whyFull(e, f, n.outs[o].link, s.plan.Gives)
	}
}

// whyFull looks for what keeps pieces from leaving a link now. Pieces come to the gate of a store beside the line only
// because of those behind: a stop there goes before the gate, their speed does not.
func (b *because) whyFull(e *Engine, f *finder, l *link, gives int64) {
	b.ownStops(e, f, l, e.now)
	st := l.store
	gated := st != nil && e.now < st.in.from
	if gated {
		f.add(e, e.slower(len(e.stations)+l.index))
		if gives <= l.free() && !st.plan.Beside {
			return // there is room, behind the gate
		}
	}
	for _, k := range l.plan.Takers {
		n := &e.nodes[k]
		if n.station == nil {
			b.whyFull(e, f, n.outs[0].link, gives)
			continue
		}
		i, takes := n.station.index, e.takes(k, l)
		w := wait{at: e.now, until: e.now, after: b.accounts[i].took - plan.Micros(ceil(gives, takes)-1)*b.cycles[i]}
		if n.station.state == plan.Starved && e.there(l) < takes && l.onItsWay() {
			f.add(e, e.slower(len(e.stations)+l.index)) // the belt is full of what is on its way
		} else if !b.look(e, f, i, w) && !(gated && st.plan.Beside) {
			f.add(e, b.narrower(e, l, i, takes, false))
		}
	}
}

// wait is what a neighbour waits for: something that is missing at a time. After is when the last before it
// came or went, until when it comes or goes itself; empty says that it is pieces that are missing, not room.
type wait struct {
	at, until, after plan.Micros
	empty            bool
}

// look looks for a gap in the flow of a station that explains a wait of another; it says whether there
// is one. A wait for somebody slower explains only what is missing while it lasts.
func (b *because) look(e *Engine, f *finder, i int, w wait) bool {
	a := &b.accounts[i]
	if a.unknown {
		b.settle(e, i)
	}
	var best *gap
	if a.stopped && !a.unknown && a.gap.from <= w.until {
		best = &a.gap
	}
	for j := 0; ; j++ {
		g := b.past[i].back(j)
		if g == nil || g.to < w.after-b.recoveries[i] {
			break
		}
		if b.explains(g, w, i) && (best == nil || b.nearer(g, best, w.at)) {
			best = g
		}
	}
	if best == nil {
		return false
	}
	f.add(e, best.why)
	return true
}

// explains says that a gap that is over explains a wait.
func (b *because) explains(g *gap, w wait, i int) bool {
	switch {
	case g.from > w.until:
		return false
	case g.lost:
		return w.empty
	case g.why.cause == plan.CauseOutage && g.why.source == i && b.recoveries[i] == 0:
		return false // it stood as long as all others, and went on as if nothing had been
	case g.why.rank() == slower && (w.at < g.from || w.at >= g.to):
		return false
	}
	return g.to > w.after-b.recoveries[i]
}

// nearer says that a gap, which ended earlier, explains what is missing at a time better than another.
func (b *because) nearer(g, than *gap, at plan.Micros) bool {
	if x, y := g.why.rank(), than.why.rank(); x != y {
		return x > y
	}
	return than.from > at // it began only later
}
