package sim

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// rejects says that a station rejects pieces of its cycles.
func (s *Station) rejects() bool {
	return s.RejectShare > 0 || s.Runs.Enter > 0 || s.RejectStop.After > 0 || s.NoReads > 0 || s.LostPerStop > 0 || s.misPicks()
}

func (s *Station) misPicks() bool {
	return slices.ContainsFunc(s.Materials, func(m Material) bool { return m.MisPicks.Share > 0 })
}

// reject compiles what a member rejects.
func reject(s *Station, member int) plan.Reject {
	return plan.Reject{
		Share: s.RejectShare, Runs: plan.Runs(s.Runs), After: s.RejectsAfter, InARow: s.RejectStop.After, Signal: plan.None,
		LostPerStop: s.LostPerStop, NoReads: s.NoReads, Gives: s.Gives, Streams: streamsOf(s), Member: member,
	}
}

// signals tells the rejects and picks of a member which stops they raise. Its causes begin at
// firstStop and at firstStock of the unit.
func signals(st *plan.Station, s *Station, declared, firstStop, firstStock int) {
	at := slices.IndexFunc(st.Rejects, func(r plan.Reject) bool { return st.Members[r.Member].Declared == declared })
	if at < 0 {
		return
	}
	causes := stopCauses(s)
	raised := func(name string) int {
		if i := stopAt(causes, name); i >= 0 {
			return firstStop + i
		}
		return plan.None
	}
	st.Rejects[at].Signal = raised(RejectStopName)
	for i, k := range sortedStocks(s) {
		m := &s.Materials[k]
		if m.MisPicks.Share == 0 {
			continue
		}
		st.Picks = append(st.Picks, plan.Pick{
			Stock: firstStock + i, Reject: at, Share: m.MisPicks.Share, Retries: m.MisPicks.Retries, Signal: raised(MisPickName(m.Name)),
			Name: m.Name, Streams: streamsOf(s),
		})
	}
}

// mostCycles is a limit for numbers of cycles in a row: beyond it a number is a slip.
const mostCycles = 10_000

// checkRejects refuses rejects that cannot be.
func (c *compiler) checkRejects(s *Station) {
	if !isShare(s.RejectShare) {
		c.fault(s.Name+".rejects", "a share lies between 0 and 1")
	}
	if !isShare(s.NoReads) {
		c.fault(s.Name+".no-reads", "a share lies between 0 and 1")
	}
	if s.LostPerStop < 0 || s.LostPerStop > 1_000_000 {
		c.fault(s.Name+".lost per stop", "%d pieces; between printing and rejecting there are 0 or more, at most 1000000", s.LostPerStop)
	}
	if s.RejectsAfter < 0 || s.RejectsAfter > mostCycles {
		c.fault(s.Name+".inspection.rejects after", "%d cycles; from the camera to where a reject leaves there are 0 to %d", s.RejectsAfter, mostCycles)
	}
	c.checkRuns(s)
}

func (c *compiler) checkRuns(s *Station) {
	path, r := s.Name+".reject runs", s.Runs
	if !isShare(r.Enter) {
		c.fault(path+".enter", "runs begin after a share of the cycles, between 0 and 1")
	}
	if !isShare(r.Share) {
		c.fault(path+".share", "a share lies between 0 and 1")
	}
	if r.Enter > 0 && !(r.Length >= 1 && r.Length <= 1e9) {
		c.fault(path+".length", "a run lasts 1 cycle or more on average")
	}
	if s.RejectStop.After < 0 || s.RejectStop.After > mostCycles {
		c.fault(path+".stop after", "%d cycles in a row; it is 1 to %d, or 0 for never", s.RejectStop.After, mostCycles)
	}
	if s.RejectStop.After > 0 {
		if s.RejectStop.Lasts.IsZero() {
			c.fault(path+".reset", "it stops after %d cycles in a row, but says nowhere how long the reset lasts", s.RejectStop.After)
		}
		c.checkWork(path+".reset", s.RejectStop.Crew)
	}
}

func isShare(share float64) bool { return share >= 0 && share <= 1 }

// checkMisPicks refuses picks that cannot be.
func (c *compiler) checkMisPicks(s *Station, m *Material) {
	path, p := s.Name+".consumes."+m.Name+".mis-picks", m.MisPicks
	if !(p.Share >= 0 && p.Share < 1) {
		c.fault(path+".per 1000", "the share of tries that fail is at least 0 and less than 1")
	}
	if p.Retries < 0 || p.Retries > 100 {
		c.fault(path+".retries", "%d; a pick is tried again 0 to 100 times", p.Retries)
	}
	if p.Stops {
		if p.Lasts.IsZero() {
			c.fault(path+".lasts", "it stops the station, but says nowhere for how long")
		}
		c.checkWork(path, p.Crew)
	}
}

// checkIdling refuses times and pockets without input that cannot be.
func (c *compiler) checkIdling(s *Station) {
	if s.HeatRecovery < 0 {
		c.fault(s.Name+".heat recovery", "a heat recovery is 0 or more")
	}
	if s.HeatUp < 0 {
		c.fault(s.Name+".closing.heat-up", "a heat-up is 0 or more")
	}
	if !s.EmptyPockets.On {
		return
	}
	path := s.Name + ".incomplete stack"
	if s.EmptyPockets.Most < 1 || s.EmptyPockets.Most > mostCycles {
		c.fault(path, "%d empty pockets in a row; it is 1 to %d, or wait", s.EmptyPockets.Most, mostCycles)
	}
	if s.From == "" {
		c.fault(path, "a station at the beginning has no neighbour to wait for; say wait, or name what it takes from")
	}
}
