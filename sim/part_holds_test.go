package sim_test

import "tuckline/sim"

// rejects: what has a reason of its own is part of what is rejected, and nothing has a reason
// that the station does not have.
func (h *holder) rejects(s *sim.Station, r *sim.StationRecord) {
	h.atMost(s.Name+" rejected for a reason", r.LostPacks+r.NoReads+r.MisPicked+r.InRuns, r.Rejected)
	h.onlyWith(s.Name+" in runs", s.Runs.Enter > 0, r.InRuns)
	if min(r.LostPacks, r.NoReads, r.MisPicked, r.EmptyPockets) < 0 {
		h.fault("%s: a count below 0", s.Name)
	}
	picks := false
	for _, m := range s.Materials {
		picks = picks || m.MisPicks.Share > 0
	}
	h.onlyWith(s.Name+" lost packs", s.LostPerStop > 0, r.LostPacks)
	h.onlyWith(s.Name+" no-reads", s.NoReads > 0, r.NoReads)
	h.onlyWith(s.Name+" mis-picked", picks, r.MisPicked)
	h.onlyWith(s.Name+" empty pockets", s.EmptyPockets.On, r.EmptyPockets)
	h.onlyWith(s.Name+" rejected otherwise", s.RejectShare > 0 || s.Runs.Enter > 0, r.Rejected-r.LostPacks-r.NoReads-r.MisPicked)
}

func (h *holder) onlyWith(what string, has bool, count int64) {
	if !has {
		h.same(what+" without a cause", count, 0)
	}
}

// picks: a try uses one cycle's material. Every cycle has a last try, which succeeds unless the cycle
// lacks its piece; all that fail are wasted.
func (h *holder) picks(name string, m *sim.Material, rec *sim.MaterialRecord, st *sim.StationRecord) {
	extra := rec.Used - m.PerCycle*st.Cycles // the tries but the last ones
	h.same(name+" by tries", extra%m.PerCycle, 0)
	h.atMost(name+" tries before the last", extra/m.PerCycle, rec.FailedPicks)
	h.atMost(name+" failed picks", rec.FailedPicks, extra/m.PerCycle+st.Cycles)
	h.atMost(name+" of failed picks", m.PerCycle*rec.FailedPicks, rec.Wasted)
	h.atMost(name+" wasted", rec.Wasted, m.PerCycle*(rec.FailedPicks+st.ScrappedCycles))
}
