package sim_test

import "tuckline/sim"

// taskFigures are the figures of materials and checks: "A blanks added", "A leak test tests".
func taskFigures(f map[string]int64, st *sim.Station, r *sim.StationRecord) {
	f[st.Name+" sampled"] = r.Sampled
	for j := range r.Materials {
		name, m := st.Name+" "+st.Materials[j].Name, &r.Materials[j]
		f[name+" at first"], f[name+" at last"] = m.Stock[0], m.Stock[1]
		f[name+" added"], f[name+" used"], f[name+" wasted"] = m.Added, m.Used, m.Wasted
		f[name+" tasks"], f[name+" late"], f[name+" lateness"] = m.Tasks, m.Late, int64(m.Lateness)
		f[name+" failed splices"], f[name+" failed picks"] = m.FailedSplices, m.FailedPicks
	}
	for j := range r.Checks {
		f[st.Name+" "+st.Checks[j].Name+" tests"] = r.Checks[j].Count
	}
}

// materials: what is there at first and comes in is used, or there at last; every cycle and every
// failed pick uses the same.
func (h *holder) materials(i int) {
	st, r := &h.line.Stations[i], &h.rec.Stations[i]
	first := &h.rec.Stations[h.members(i)[0]] // has the scrapped cycles of the drive
	if len(r.Materials) != len(st.Materials) || len(r.Checks) != len(st.Checks) {
		h.fault("%s: records of %d materials and %d checks", st.Name, len(r.Materials), len(r.Checks))
		return
	}
	for j := range st.Materials {
		m, rec := &st.Materials[j], &r.Materials[j]
		name := st.Name + " " + m.Name
		h.same(name+" at last", rec.Stock[1], rec.Stock[0]+rec.Added-rec.Used)
		h.same(name+" added", rec.Added%m.Refill, 0)
		if m.MisPicks.Share == 0 {
			h.same(name+" used", rec.Used, m.PerCycle*first.Cycles)
			h.same(name+" wasted", rec.Wasted, m.PerCycle*first.ScrappedCycles)
			h.same(name+" failed picks", rec.FailedPicks, 0)
		} else {
			h.picks(name, m, rec, first)
		}
		h.atMost(name+" wasted", rec.Wasted, rec.Used)
		if rec.Stock[0] < 0 || rec.Stock[1] < 0 {
			h.fault("%s: less than nothing is left", name)
		}
		if m.Alarm.On {
			h.atMost(name+" on the machine", max(rec.Stock[0], rec.Stock[1]), m.Amount+m.PerCycle-1) // the rest stays
		}
	}
	for j := range st.Checks {
		// What was taken before the window is tested in it, and the other way round: a test each.
		whole := st.Checks[j].Takes * r.Checks[j].Count
		if len(st.Checks) == 1 && (r.Sampled < whole-st.Checks[j].Takes || r.Sampled > whole+st.Checks[j].Takes) {
			h.fault("%s %s: %d pieces for %d tests", st.Name, st.Checks[j].Name, r.Sampled, r.Checks[j].Count)
		}
	}
}
