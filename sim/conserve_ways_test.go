package sim_test

import (
	"slices"

	"tuckline/sim"
)

// members are the stations on the drive of station i, in the order of the flow; i alone without.
func (h *holder) members(i int) []int {
	drive := h.line.Stations[i].Coupled
	if drive == "" {
		return []int{i}
	}
	from := map[string]int{}
	first := -1
	for k := range h.line.Stations {
		if st := &h.line.Stations[k]; st.Coupled == drive {
			from[st.From] = k
		}
	}
	for k := range h.line.Stations {
		st := &h.line.Stations[k]
		if st.Coupled == drive && !slices.ContainsFunc(h.line.Stations, func(o sim.Station) bool {
			return o.Name == st.From && o.Coupled == drive
		}) {
			first = k
		}
	}
	all := []int{first}
	for {
		next, has := from[h.line.Stations[all[len(all)-1]].Name]
		if !has {
			return all
		}
		all = append(all, next)
	}
}

// memberPieces: on one drive the first takes, the last passes on, and what lies between
// goes through within the cycle, less what each rejects.
func (h *holder) memberPieces(members []int, i int) {
	s, r := &h.line.Stations[i], &h.rec.Stations[i]
	first, last := &h.rec.Stations[members[0]], members[len(members)-1]
	h.rejects(s, r)
	h.same(s.Name+" good cycles", r.Cycles-r.ScrappedCycles, first.Cycles-first.ScrappedCycles)
	if i == members[0] {
		h.taken(s, r)
		h.same(s.Name+" scrapped", r.Scrapped, s.Gives*r.ScrappedCycles)
		h.same(s.Name+" given", r.Given, s.Gives*(r.Cycles-r.ScrappedCycles))
	} else {
		before := &h.rec.Stations[members[slices.Index(members, i)-1]]
		h.same(s.Name+" taken from the one before", r.Taken, before.Given-before.Rejected-before.Sampled)
		h.same(s.Name+" inside", r.InputInside[0]+r.InputInside[1]+r.Scrapped+r.ScrappedCycles+r.Lost, 0)
	}
	if i == last {
		h.same(s.Name+" passed", r.Given-r.Rejected-r.Sampled, r.Passed+r.OutputInside[1]-r.OutputInside[0])
	} else {
		h.same(s.Name+" passed", r.Given-r.Rejected-r.Sampled, r.Passed)
	}
	for state := range r.States {
		h.same(s.Name+" "+sim.State(state).String()+" as its drive", int64(r.States[state]), int64(first.States[state]))
	}
}

// chosen says that a station puts its pieces into several places, and checks that these
// together have what it passed.
func (h *holder) chosen(feeder string) bool {
	for i := range h.line.Stations {
		st := &h.line.Stations[i]
		if st.Name != feeder || len(st.Sends.To) == 0 {
			continue
		}
		in := int64(0)
		for k, p := range h.m.Places() {
			if slices.Contains(p.From, feeder) {
				in += h.rec.Buffers[k].In
			}
		}
		h.same(feeder+" passed to all", h.rec.Stations[i].Passed, in)
		return true
	}
	return false
}

// assembles says that a place feeds a station with several inputs, and checks that every cycle
// took from it what it needs.
func (h *holder) assembles(p sim.Place) bool {
	for i := range h.line.Stations {
		st := &h.line.Stations[i]
		for _, in := range st.Also {
			if in.From == p.Name {
				k := slices.IndexFunc(h.m.Places(), func(o sim.Place) bool { return o.Name == p.Name })
				r := &h.rec.Stations[i]
				h.same(p.Name+" out", h.rec.Buffers[k].Out*st.Takes, (r.Taken+r.PartShort)*in.Takes)
				return true
			}
		}
	}
	return false
}
