package sim

import (
	"cmp"
	"math/big"
	"slices"

	"tuckline/sim/internal/plan"
)

// orderFlow finds out which stations and places of one line belong to its orders.
type orderFlow struct {
	c *compiler
	// main are the nodes from which pieces come to where they are counted, through first inputs; mainLinks the links.
	main, mainLinks map[int]bool
	answers         map[int]bool // nodes
	worths          map[int]*big.Rat
	linkWorths      map[int]*big.Rat
}

// orderLines are the lines: stations and places that links connect.
func (c *compiler) orderLines() []plan.OrderLine {
	f := &orderFlow{
		c: c, main: map[int]bool{}, mainLinks: map[int]bool{}, answers: map[int]bool{},
		worths: map[int]*big.Rat{}, linkWorths: map[int]*big.Rat{},
	}
	f.findAnswers()
	if len(c.problems) > 0 {
		return nil
	}
	for k := range f.answers {
		f.before(k)
	}
	of := c.components()
	var lines []plan.OrderLine
	for line := range slices.Max(of) + 1 {
		l := f.line(func(k int) bool { return of[k] == line })
		if l == nil {
			continue
		}
		lines = append(lines, *l)
	}
	slices.SortFunc(lines, func(a, b plan.OrderLine) int {
		return cmp.Compare(c.line.Stations[a.First].Name, c.line.Stations[b.First].Name)
	})
	return lines
}

// findAnswers finds the nodes behind which good pieces are counted: none behind another.
func (f *orderFlow) findAnswers() {
	c := f.c
	for _, name := range c.line.Orders.CountedAfter {
		u := &c.units[c.nodes[name]]
		if u.last() != name {
			c.fault("orders.counted after", "%q is coupled to what follows it; name %q, the last of the unit", name, u.last())
			continue
		}
		f.answers[c.nodeOf(u.Name)] = true
	}
	for k := range f.answers {
		for other := range f.answers {
			if other != k && f.reaches(k, other) {
				c.fault("orders.counted after", "pieces that are counted behind %q would be counted behind %q again; name one of them",
					f.lastOf(k), f.lastOf(other))
			}
		}
	}
	slices.SortFunc(c.problems, func(a, b Problem) int { return cmp.Or(cmp.Compare(a.Path, b.Path), cmp.Compare(a.Text, b.Text)) })
}

func (f *orderFlow) station(k int) *plan.Station {
	if i := f.c.plan.Nodes[k].Station; i != plan.None {
		return &f.c.plan.Stations[i]
	}
	return nil
}

func (f *orderFlow) lastOf(k int) string {
	members := f.station(k).Members
	return members[len(members)-1].Name
}

// reaches says that what a node gives comes to another.
func (f *orderFlow) reaches(k, other int) bool {
	return f.behind([]int{k})[other]
}

// behind are all nodes to which what some give comes, and they themselves.
func (f *orderFlow) behind(from []int) map[int]bool {
	all := map[int]bool{}
	for len(from) > 0 {
		k := from[len(from)-1]
		from = from[:len(from)-1]
		if all[k] {
			continue
		}
		all[k] = true
		for _, out := range f.c.plan.Nodes[k].Outs {
			from = append(from, f.c.plan.Links[out.Link].Takers...)
		}
	}
	return all
}

// before notes a node as one of the main way, and all before it through first inputs.
func (f *orderFlow) before(k int) {
	if f.main[k] {
		return
	}
	f.main[k] = true
	link := f.c.plan.Nodes[k].Link
	if s := f.station(k); s != nil {
		if len(s.Ins) == 0 {
			return
		}
		link = s.Ins[0].Link
	}
	f.mainLinks[link] = true
	for _, feeder := range f.c.plan.Links[link].Feeders {
		f.before(feeder)
	}
}

// components says for each node to which line it belongs.
func (c *compiler) components() []int {
	of := make([]int, len(c.plan.Nodes))
	for k := range of {
		of[k] = k
	}
	for again := true; again; {
		again = false
		for i := range c.plan.Links {
			nodes := slices.Concat(c.plan.Links[i].Feeders, c.plan.Links[i].Takers)
			least := of[nodes[0]]
			for _, k := range nodes {
				least = min(least, of[k])
			}
			for _, k := range nodes {
				again = again || of[k] != least
				of[k] = least
			}
		}
	}
	return of
}

// line is one line, or nil where there is none of that number.
func (f *orderFlow) line(has func(k int) bool) *plan.OrderLine {
	c := f.c
	l := &plan.OrderLine{}
	var heads []int
	some := plan.None
	for k := len(c.plan.Nodes) - 1; k >= 0; k-- { // the head of the line is the last in the order of moves
		s := f.station(k)
		if s == nil || !has(k) {
			continue
		}
		some = k
		i := c.plan.Nodes[k].Station
		l.Stations = append(l.Stations, i)
		if f.answers[k] {
			l.Answers = append(l.Answers, i)
		}
		switch {
		case len(s.Ins) > 0:
		case f.main[k]:
			heads = append(heads, k)
		default:
			l.Sides = append(l.Sides, i)
		}
	}
	if some == plan.None {
		return nil
	}
	if len(l.Answers) == 0 {
		c.fault("orders.counted after", "nothing is counted in the line that begins with %q; name the station behind which its good pieces are counted", f.station(some).Members[0].Name)
		return nil
	}
	f.heads(l, heads)
	f.flow(l, f.behind(heads))
	for i := range c.plan.Links {
		if has(c.plan.Links[i].Takers[0]) {
			l.Links = append(l.Links, i)
		}
	}
	return l
}

// heads fills in who draws from the orders of a line, and the worths.
func (f *orderFlow) heads(l *plan.OrderLine, heads []int) {
	c := f.c
	slices.SortFunc(heads, func(a, b int) int { return cmp.Compare(f.station(a).Name, f.station(b).Name) })
	l.First = f.station(heads[0]).Members[0].Declared
	for _, k := range heads {
		f.worth(k)
	}
	l.Worth = f.commonWorth()
	for _, k := range heads {
		s := f.station(k)
		u := &c.units[c.nodes[s.Name]]
		l.Heads = append(l.Heads, plan.Head{
			Station: c.plan.Nodes[k].Station, Uses: cmp.Or(u.BatchPerCycle, s.Takes), Worth: s.Gives * f.whole(f.worths[k], l.Worth),
		})
	}
}

// flow fills in the stations to which what the heads give comes, and the places between them.
func (f *orderFlow) flow(l *plan.OrderLine, behind map[int]bool) {
	c := f.c
	for _, i := range l.Stations {
		s := &c.plan.Stations[i]
		if !behind[s.Node] {
			continue
		}
		fs := plan.FlowStation{Station: i, Closes: c.units[c.nodes[s.Name]].LastPart == PartClosed}
		if f.main[s.Node] {
			fs.Worth = f.whole(f.worths[s.Node], l.Worth)
		}
		for j, in := range s.Ins {
			if !f.main[s.Node] || j > 0 {
				fs.Strays += in.Takes * f.whole(f.given(in.Link), l.Worth)
			}
		}
		l.Flow = append(l.Flow, fs)
	}
	for i := range c.plan.Links {
		if slices.ContainsFunc(c.plan.Links[i].Feeders, func(k int) bool { return behind[k] }) {
			l.Fed = append(l.Fed, i)
		}
	}
}

// given is what a piece is worth in a place, by those that put it there: nothing behind the answers.
func (f *orderFlow) given(link int) *big.Rat {
	worth := new(big.Rat)
	for _, k := range f.c.plan.Links[link].Feeders {
		w := new(big.Rat)
		switch {
		case f.station(k) == nil:
			w = f.given(f.c.plan.Nodes[k].Link)
		case f.main[k] && !f.answers[k]:
			w = f.worths[k]
		}
		if w.Cmp(worth) > 0 {
			worth = w
		}
	}
	return worth
}

// worth is what a piece that a node of the main way gives is worth, in good pieces that count; where pieces may go several
// ways, on that on which it makes the fewest.
func (f *orderFlow) worth(k int) *big.Rat {
	if w, known := f.worths[k]; known {
		return w
	}
	var least *big.Rat
	if f.answers[k] {
		least = big.NewRat(1, 1)
	} else {
		for _, out := range f.c.plan.Nodes[k].Outs {
			if f.mainLinks[out.Link] {
				least = lesser(least, f.linkWorth(out.Link))
			}
		}
	}
	f.worths[k] = least
	return least
}

func (f *orderFlow) linkWorth(link int) *big.Rat {
	if w, known := f.linkWorths[link]; known {
		return w
	}
	var least *big.Rat
	for _, k := range f.c.plan.Links[link].Takers {
		if !f.main[k] {
			continue
		}
		s := f.station(k)
		switch {
		case s == nil:
			least = lesser(least, f.worth(k))
		case s.Ins[0].Link == link:
			least = lesser(least, new(big.Rat).Mul(f.worth(k), big.NewRat(s.Gives, s.Takes)))
		}
	}
	f.linkWorths[link] = least
	return least
}

func lesser(a, b *big.Rat) *big.Rat {
	if a == nil || b.Cmp(a) < 0 {
		return b
	}
	return a
}

// commonWorth is the number of parts of a good piece in which all worths are whole numbers.
func (f *orderFlow) commonWorth() int64 {
	common := big.NewInt(1)
	for _, w := range f.worths {
		d := w.Denom()
		common.Mul(common, new(big.Int).Div(d, new(big.Int).GCD(nil, nil, common, d)))
	}
	if !common.IsInt64() || common.Int64() > 1<<30 {
		f.c.fault("orders", "the numbers of pieces that the stations take and give have no common measure that is small enough to count by")
		return 1
	}
	return common.Int64()
}

// whole is a worth in such parts.
func (f *orderFlow) whole(w *big.Rat, common int64) int64 {
	v := new(big.Rat).Mul(w, big.NewRat(common, 1))
	return new(big.Int).Div(v.Num(), v.Denom()).Int64()
}
