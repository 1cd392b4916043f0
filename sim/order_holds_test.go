package sim_test

import (
	"slices"

	"tuckline/sim"
)

// changeovers says that one of the crews does changeovers.
func (h *holder) changeovers(crews []string) bool {
	return slices.ContainsFunc(h.line.Orders.List, func(o sim.Order) bool { return slices.Contains(crews, o.Before.Crew.Crew) })
}

// never stands for a time that has not come.
const never sim.Micros = 1<<63 - 1

// orders: no line makes two at once and each is made once a round; the input is the batch, or less than a cycle short; what is
// counted is what the stations behind which it is counted have passed; the line is empty between two.
func (h *holder) orders() {
	good := int64(0)
	last := map[int]*sim.OrderRecord{}
	for i := range h.rec.Orders {
		r := &h.rec.Orders[i]
		good += r.Good
		n := len(h.line.Orders.List)
		h.same("orders taken in turn", int64(r.Round*n+r.Order), int64(i))
		h.order(r)
		if before := last[r.Line]; before != nil {
			h.between(before, r)
		} else {
			h.same("the first order begins at", int64(r.Began), 0)
		}
		last[r.Line] = r
	}
	if !h.line.Orders.Again {
		h.atMost("orders", int64(len(h.rec.Orders)), int64(len(h.line.Orders.List)))
	}
	if h.o.WarmUp == 0 {
		passed := int64(0)
		for i := range h.line.Stations {
			if slices.Contains(h.line.Orders.CountedAfter, h.line.Stations[i].Name) {
				passed += h.rec.Stations[i].Passed
			}
		}
		h.same("good pieces of all orders", good, passed)
	}
}

// order: one order by itself.
func (h *holder) order(r *sim.OrderRecord) {
	o := &h.line.Orders.List[r.Order]
	if r.Began == never {
		h.same("input before the beginning", r.Input+r.Good, 0)
		return
	}
	h.atMost("order begun", int64(r.Began), int64(r.Finished))
	h.atMost("changeover", int64(r.Changed), int64(r.Began))
	if o.Before.Lasts.IsZero() {
		h.same("no changeover", int64(r.Changed), int64(r.Began))
	}
	if o.Batch > 0 {
		h.atMost("input of a batch", r.Input, o.Batch)
	}
	least := int64(1 << 60)
	for _, i := range h.lineOf(r.Line) {
		if st := &h.line.Stations[i]; st.From == "" {
			uses := st.BatchPerCycle
			if uses == 0 {
				uses = st.Takes
			}
			least = min(least, uses)
		}
	}
	switch {
	case r.Finished == never:
		if o.Good > 0 && r.Good >= o.Good {
			h.fault("order %d: %d good pieces are not enough for %d", r.Order, r.Good, o.Good)
		}
	case o.Batch > 0:
		h.atMost("what is left of a batch", o.Batch-r.Input, least-1+h.sideUses(r.Line))
	default:
		h.atMost("the good pieces asked for", o.Good, r.Good)
	}
}

// sideUses is, where other stations of a line take from outside too, what a cycle of the one that draws uses at most.
func (h *holder) sideUses(line int) int64 {
	most, sides := int64(0), false
	for _, i := range h.lineOf(line) {
		st := &h.line.Stations[i]
		if st.From == "" {
			most = max(most, st.BatchPerCycle, st.Takes)
		}
		sides = sides || len(st.Also) > 0
	}
	if !sides {
		return 0
	}
	return most
}

// between: the line is empty from the end of one order to the beginning of the next, and in a changeover meanwhile.
func (h *holder) between(before, r *sim.OrderRecord) {
	h.atMost("the order before is finished", int64(before.Finished), int64(r.Changed))
	began := min(r.Began, h.o.WarmUp+h.o.Measure)
	for _, at := range []sim.Micros{r.Changed, began} {
		levels := map[int]int64{}
		for _, c := range h.trace.Levels {
			if c.At <= at {
				levels[c.Buffer] = c.Level
			}
		}
		for _, k := range h.placesOf(r.Line) {
			h.same(h.m.Places()[k].Name+" between two orders", levels[k], 0)
		}
	}
	if r.Changed == began {
		return
	}
	states := map[int]sim.State{}
	line := h.lineOf(r.Line)
	for _, c := range h.trace.States {
		if c.At <= r.Changed {
			states[c.Station] = c.State
			continue
		}
		if c.At < began && c.State > sim.Changeover && slices.Contains(line, c.Station) {
			h.fault("%s is %v during a changeover", h.line.Stations[c.Station].Name, c.State)
		}
	}
	for _, i := range line {
		if states[i] > sim.Changeover {
			h.fault("%s is %v when a changeover begins", h.line.Stations[i].Name, states[i])
		}
	}
}

// lineOf are the stations that are connected with one.
func (h *holder) lineOf(station int) []int {
	of := map[string]bool{h.line.Stations[station].Name: true}
	for again := true; again; {
		again = false
		join := func(names ...string) {
			if slices.ContainsFunc(names, func(n string) bool { return of[n] }) {
				for _, n := range names {
					again = again || !of[n]
					of[n] = true
				}
			}
		}
		for i, p := range h.m.Places() {
			join(append(append([]string{h.m.Places()[i].Name}, p.From...), p.To...)...)
		}
		for i := range h.line.Stations {
			for j := range h.line.Stations {
				if a, b := &h.line.Stations[i], &h.line.Stations[j]; a.Coupled != "" && a.Coupled == b.Coupled {
					join(a.Name, b.Name)
				}
			}
		}
	}
	var all []int
	for i := range h.line.Stations {
		if of[h.line.Stations[i].Name] {
			all = append(all, i)
		}
	}
	return all
}

// placesOf are the places of such a line.
func (h *holder) placesOf(station int) []int {
	var all []int
	line := h.lineOf(station)
	for k, p := range h.m.Places() {
		if slices.ContainsFunc(line, func(i int) bool {
			name := h.line.Stations[i].Name
			return slices.Contains(p.From, name) || slices.Contains(p.To, name)
		}) {
			all = append(all, k)
		}
	}
	return all
}
