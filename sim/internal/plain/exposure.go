package plain

import "tuckline/sim/internal/plan"

// samples follows what a check takes of a cycle that has ended.
func (a *ages) samples(s *station, check int) {
	for i := range a.checks {
		c := &a.checks[i]
		if c.station != s.index || c.check != check {
			continue
		}
		b := a.stations[s.index]
		if !c.taken || b[bornMain] < c.sample[bornMain] {
			copy(c.sample, b)
			c.taken = true
		}
	}
}

// tested notes the exposure at the end of a test: what the first stations have made since the oldest piece was born that the
// last good test looked at, and older pieces that have not come to the check yet. The test that is
// over is a good one.
func (a *ages) tested(e *Engine, station, check int, rec *plan.CheckRecord) {
	for i := range a.checks {
		c := &a.checks[i]
		if c.station != station || c.check != check {
			continue
		}
		made := a.made(e, c.set) - c.good[bornGiven+c.set]
		rec.Exposures = append(rec.Exposures, made+a.olderBefore(e, c))
		copy(c.good, c.sample)
		c.taken = false
	}
}

// olderBefore is how many pieces before a check are older than the last good test.
func (a *ages) olderBefore(e *Engine, c *sampling) int64 {
	than, sum := plan.Micros(c.good[bornMain]), int64(0)
	for i := range a.links {
		if c.before.has(len(e.stations) + i) {
			p := &a.links[i]
			sum += p.moving.older(than) + p.lying.older(than) + p.stored.older(than) + p.atHand.older(than)
		}
	}
	for i := range e.stations {
		s := &e.stations[i]
		if !c.before.has(i) || plan.Micros(a.stations[i][bornMain]) >= than {
			continue
		}
		switch {
		case s.phase == holding:
			sum += s.out
		case s.phase == working && !s.pocket || s.phase == loaded:
			sum += s.plan.Gives
		}
	}
	return sum
}

// rejected remembers when what comes back to a magazine was born, returned puts it there, unless there is no room.
func (a *ages) rejected(s *station, l *link) { a.links[l.index].back.push(a.stations[s.index], 1) }

func (a *ages) returned(l *link, pieces int64, fits bool) {
	p := &a.links[l.index]
	b, _ := p.back.first(1, false)
	if fits {
		p.stored.push(b, pieces)
	}
}
