package part

import "tuckline/sim/internal/plan"

// pick is the pick of a blank or a leaflet that may fail: it draws how many succeed before
// the next that fails. Every try takes the time of a cycle and uses the material of one.
type pick struct {
	plan *plan.Pick
	gaps gaps
	// failed is the number of failed tries of the cycle under way, or of the last; missed says that the
	// last try failed too.
	failed int64
	missed bool
}

func (p *pick) reset(pl *plan.Pick, stream streams) {
	*p = pick{plan: pl, gaps: mayGap(pl.Share, stream, pl.Streams, "mis-picks", pl.Name)}
}

// quiet is the number of cycles whose first try succeeds.
func (p *pick) quiet() int64 { return p.gaps.free }

func (p *pick) passed(n int64) { p.gaps.passed(n) }

// try picks for one cycle, as often as is allowed and the stock serves, at least once.
// It says how many tries come to the first.
func (p *pick) try(serves int64) (more int64) {
	tries := max(1, min(p.plan.Retries+1, serves))
	p.failed = 0
	for p.failed < tries && p.gaps.of(1) > 0 {
		p.failed++
	}
	p.missed = p.failed == tries
	return min(p.failed, tries-1)
}

// pickAll lets all picks of the cycle under way be tried and says how many tries come to the first ones.
func (m *Machine) pickAll() (more int64) {
	for i := range m.picks {
		m.rejects[m.picks[i].plan.Reject].missed = false
	}
	for i := range m.picks {
		p := &m.picks[i]
		more += p.try(m.stocks[p.plan.Stock].serves())
		r := &m.rejects[p.plan.Reject]
		r.missed = r.missed || p.missed
	}
	return more
}

// picked uses the material of the failed tries of a cycle that has ended, and stops the station if
// a pick has failed for good. The last try is in what every cycle uses: it is wasted if it failed, or as scrap.
func (m *Machine) picked(scrapped bool) {
	for i := range m.picks {
		p := &m.picks[i]
		s := &m.stocks[p.plan.Stock]
		s.failedPicks += p.failed
		more := p.failed
		if p.missed {
			more--
			m.signals.raise(p.plan.Signal)
			if !scrapped {
				s.wasted += s.plan.PerCycle
			}
		}
		if more > 0 {
			s.use(more * s.plan.PerCycle)
		}
	}
}

// FailedPicks is the number of tries of the i-th stock that have failed since the replication began.
func (m *Machine) FailedPicks(i int) int64 { return m.stocks[i].failedPicks }
