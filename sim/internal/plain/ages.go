package plain

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// ages follows when pieces were born: when the cycle took its input that made them at a station on supply.
// An engine has one only while it is asked for.
type ages struct {
	links []piles
	// stations have the born of what is in a cycle or held.
	stations []born
	// taken is the born of what has been taken since the last clear, inputs the number of takes; giving is the
	// born of what is put next.
	taken, giving born
	inputs        int
	// turned turns an order round.
	turned pile
	// noted says by station whether the ages of what it passes on are asked for.
	noted  []bool
	checks []sampling
	// firsts are the sets of stations on supply that checks look at, given what has left each.
	firsts []set
	given  []int64
}

// piles are the pieces of a link: on their way, at its exit, beside the line, and carried out of what lies there.
type piles struct {
	moving, lying, stored, atHand pile
	// back are the born of what comes back from rejected cycles, one of each.
	back pile
}

// sampling follows the samples of one check.
type sampling struct {
	station, check int
	// set is its place in firsts; before are the sources from which what it looks at comes.
	set    int
	before set
	// sample is the oldest that the test under way looks at, good that of the last good one; asked says that
	// the test has taken something.
	sample, good born
	taken        bool
}

// connectAges makes what follows the ages.
func (e *Engine) connectAges() *ages {
	a := &ages{noted: make([]bool, len(e.stations))}
	for i := range e.stations {
		s := &e.stations[i]
		for j := range s.plan.Checks {
			a.checks = append(a.checks, e.connectSampling(a, s, j))
		}
	}
	width := bornGiven + len(a.firsts)
	a.given = make([]int64, len(a.firsts))
	a.taken, a.giving = make(born, width), make(born, width)
	for range e.stations {
		a.stations = append(a.stations, make(born, width))
	}
	for i := range a.checks {
		a.checks[i].sample, a.checks[i].good = make(born, width), make(born, width)
	}
	a.links, a.turned.stride = make([]piles, len(e.links)), 1+width
	for i := range a.links {
		for _, p := range a.links[i].all() {
			p.stride = 1 + width
		}
	}
	return a
}

func (p *piles) all() []*pile { return []*pile{&p.moving, &p.lying, &p.stored, &p.atHand, &p.back} }

func (e *Engine) connectSampling(a *ages, s *station, check int) sampling {
	c := sampling{station: s.index, check: check, before: newSet(len(e.stations) + len(e.links))}
	e.mainBefore(s, c.before)
	first := newSet(len(e.stations))
	for i := range e.stations {
		if c.before.has(i) && e.stations[i].in == nil {
			first.add(i)
		}
	}
	c.set = slices.IndexFunc(a.firsts, func(other set) bool { return slices.Equal(other, first) })
	if c.set < 0 {
		c.set = len(a.firsts)
		a.firsts = append(a.firsts, first)
	}
	return c
}

// mainBefore collects a station, and all stations and links from which its main input comes.
func (e *Engine) mainBefore(s *station, sources set) {
	if sources.has(s.index) {
		return
	}
	sources.add(s.index)
	if s.in != nil {
		e.linkBefore(s.in, sources)
	}
}

func (e *Engine) linkBefore(l *link, sources set) {
	if sources.has(len(e.stations) + l.index) {
		return
	}
	sources.add(len(e.stations) + l.index)
	for _, k := range l.plan.Feeders {
		if n := &e.nodes[k]; n.station != nil {
			e.mainBefore(n.station, sources)
		} else {
			e.linkBefore(n.link, sources)
		}
	}
}

// resetAges begins anew: what lies in the line at time 0 is born then.
func (e *Engine) resetAges(at []int) {
	e.ages = nil
	for i := range e.links {
		e.links[i].special = e.links[i].isSpecial() || at != nil
	}
	if at == nil {
		return
	}
	if e.following == nil {
		e.following = e.connectAges()
	}
	a := e.following
	e.ages = a
	a.clear()
	clear(a.given)
	clear(a.giving)
	for i := range a.stations {
		clear(a.stations[i])
		a.noted[i] = slices.ContainsFunc(e.plan.Stations[i].Members, func(m plan.Member) bool { return slices.Contains(at, m.Declared) })
	}
	for i := range a.checks {
		clear(a.checks[i].sample)
		clear(a.checks[i].good)
		a.checks[i].taken = false
	}
	for i := range a.links {
		l := &e.links[i]
		for _, p := range a.links[i].all() {
			p.clear()
		}
		if l.arrived > 0 {
			a.links[i].at(l).push(a.giving, l.arrived)
		}
	}
	e.rec.Ages = &plan.Ages{}
}

// at is where pieces lie that have been there from the start, or that come back.
func (p *piles) at(l *link) *pile {
	if l.store != nil && l.store.plan.Beside {
		return &p.stored
	}
	return &p.lying
}

// put follows pieces into a link.
func (a *ages) put(l *link, pieces int64) {
	p := &a.links[l.index]
	if l.plan.Transit > 0 {
		p.moving.push(a.giving, pieces)
	} else {
		p.lying.push(a.giving, pieces)
	}
}

// arrive follows pieces to the exit of a belt.
func (a *ages) arrive(l *link, pieces int64) {
	p := &a.links[l.index]
	p.moving.move(pieces, false, &p.lying)
}

// take follows pieces out of a link: straight ones first where some lie beside the line, then those that are at hand.
func (a *ages) take(l *link, pieces int64) {
	p := &a.links[l.index]
	a.inputs++
	from, last := &p.lying, l.plan.LastIn
	if l.store != nil && l.store.plan.Beside {
		last = false
	}
	for pieces > 0 {
		if from.pieces == 0 {
			from, last = &p.atHand, false
		}
		if from.pieces == 0 {
			from, last = &p.stored, l.plan.LastIn
		}
		b, n := from.first(pieces, last)
		a.oldest(b)
		pieces -= n
	}
}

// oldest keeps the oldest of what is taken together; only the main input, which is taken first, counts for checks.
func (a *ages) oldest(b born) {
	switch {
	case a.inputs == 1 && a.taken[bornMain] < 0:
		copy(a.taken, b)
		return
	case a.inputs == 1 && b[bornMain] < a.taken[bornMain]:
		copy(a.taken[bornMain:], b[bornMain:])
	}
	a.taken[bornOldest] = min(a.taken[bornOldest], b[bornOldest])
}

// clear ends a take.
func (a *ages) clear() { a.inputs, a.taken[bornMain] = 0, -1 }

// load ends the take of a cycle. What a station takes from supply is born now.
func (a *ages) load(e *Engine, s *station) {
	if s.in == nil {
		a.taken[bornOldest], a.taken[bornMain] = int64(e.now), int64(e.now)
		for i := range a.firsts {
			a.taken[bornGiven+i] = a.made(e, i)
		}
	}
	copy(a.stations[s.index], a.taken)
	a.clear()
}

// passOn ends the take of a link that passes a piece on.
func (a *ages) passOn() {
	copy(a.giving, a.taken)
	a.clear()
}

// made is what a set of first stations has made: what has left them, and what they hold.
func (a *ages) made(e *Engine, i int) int64 {
	sum := a.given[i]
	for w, word := range a.firsts[i] {
		for ; word != 0; word &= word - 1 {
			if s := &e.stations[w<<6+position(word)]; s.phase == holding {
				sum += s.out
			}
		}
	}
	return sum
}

// gives notes the age of pieces that leave a station, and that they are put next.
func (a *ages) gives(e *Engine, s *station) {
	if s.in == nil {
		for i, first := range a.firsts {
			if first.has(s.index) {
				a.given[i] += s.out
			}
		}
	}
	copy(a.giving, a.stations[s.index])
	if a.noted[s.index] && e.now >= e.t0 {
		e.rec.Ages.Add(e.now-plan.Micros(a.giving[bornOldest]), s.out)
	}
}

// spills follows pieces from the direct way into the store beside it.
func (a *ages) spills(l *link, over int64) {
	p := &a.links[l.index]
	// The last that have come go into the store, the older of them first.
	for rest := over; rest > 0; {
		b, n := p.lying.first(rest, true)
		a.turned.push(b, n)
		rest -= n
	}
	a.turned.move(over, true, &p.stored)
	a.turned.clear()
}

// clearOut forgets the pieces of a place that are taken out by hand.
func (a *ages) clearOut(l *link) {
	for _, p := range a.links[l.index].all() { // nothing is to come back: that has been waited for
		p.clear()
	}
}

// carries follows a load that somebody carries out of the store.
func (a *ages) carries(l *link, load int64) {
	p := &a.links[l.index]
	p.stored.move(load, l.plan.LastIn, &p.atHand)
}
