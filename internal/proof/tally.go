package proof

import "slices"

// entryName is a case as the file of its family has it; several lines may come from one.
type entryName struct{ family, name string }

// Tally says what became of the reference cases of one family: every one is simulated, computed
// without an interval, left for the full set, or left out.
type Tally struct {
	Title                                          string
	Reference, Simulated, Computed, Later, LeftOut int
	// Parts counts figures that are left out of cases that are compared.
	Parts int
	// Lines counts the simulated cases that come from them, Outside those that missed at first.
	Lines, Outside int
}

// Tallies are the families with at least one case of the set, in their order, and their sum.
func (o *Outcome) Tallies() []Tally {
	var all []Tally
	sum := Tally{Title: "All"}
	for _, f := range families {
		t := o.tally(f.file, f.title)
		if t.Reference == 0 {
			continue
		}
		all = append(all, t)
		sum.add(&t)
	}
	return append(all, sum)
}

func (t *Tally) add(one *Tally) {
	t.Reference += one.Reference
	t.Simulated += one.Simulated
	t.Computed += one.Computed
	t.Later += one.Later
	t.LeftOut += one.LeftOut
	t.Parts += one.Parts
	t.Lines += one.Lines
	t.Outside += one.Outside
}

func (o *Outcome) tally(family, title string) Tally {
	t := Tally{Title: title}
	for _, e := range o.entries {
		if e.family != family {
			continue
		}
		t.Reference++
		rows := o.rowsOf(e)
		switch {
		case slices.ContainsFunc(rows, func(r *Row) bool { return r.Replications > 0 }):
			t.Simulated++
		case len(rows) > 0:
			t.Computed++
		case slices.ContainsFunc(o.LeftOut, func(l LeftOut) bool { return l.entry == e.name && l.later }):
			t.Later++
		default:
			t.LeftOut++
		}
		for _, r := range rows {
			if r.Primary {
				t.Lines++
				if !r.Inside {
					t.Outside++
				}
			}
		}
		for _, l := range o.LeftOut {
			if l.entry == e.name && !l.later && l.Case != e.name {
				t.Parts++
			}
		}
	}
	return t
}

func (o *Outcome) rowsOf(e entryName) []*Row {
	var all []*Row
	for _, r := range o.Rows {
		if r.Case.Family == e.family && r.Case.entry == e.name {
			all = append(all, r)
		}
	}
	return all
}

// Reason is one reason with all that is left out for it.
type Reason struct {
	Text  string
	Cases []string
}

// Reasons are what is left out, by reason, in the order in which they first come up. What only the full
// set has comes last.
func (o *Outcome) Reasons() []Reason {
	var all, later []Reason
	for _, l := range o.LeftOut {
		to := &all
		if l.later {
			to = &later
		}
		i := slices.IndexFunc(*to, func(r Reason) bool { return r.Text == l.Reason })
		if i < 0 {
			i = len(*to)
			*to = append(*to, Reason{Text: l.Reason})
		}
		(*to)[i].Cases = append((*to)[i].Cases, l.Case)
	}
	return append(all, later...)
}
