package scenario

import (
	"fmt"
	"slices"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/sim"
)

// orderUnit is what batches are counted in: the units that the stations at the head of the line use.
type orderUnit struct {
	// unit is a plural; empty where all orders count good pieces.
	unit string
	// heads are the stations from which everything that is counted comes, perCycle what a cycle of each uses.
	heads    []int
	perCycle []int64
}

// mostPieces is the largest number of pieces that is reckoned with.
const mostPieces = 1_000_000_000_000_000

// packedIn says how many of which unit are in one of another, by the format sheet; 0 is not known.
func (b *resolver) packedIn(unit string) (string, int64) {
	p := &b.s.Product
	switch quantity.Plural(unit) {
	case "blisters":
		return quantity.Plural(p.Dose), p.DosesPerBlister
	case "cartons":
		return "blisters", p.BlistersPerCarton
	case "bundles":
		return "cartons", p.CartonsPerBundle
	case "cases":
		if p.CartonsPerCase > 0 {
			return "cartons", p.CartonsPerCase
		}
		return "bundles", p.BundlesPerCase
	}
	return "", 0
}

// ratio is how many of the inner unit are in one of the outer; 0 is not known.
func (b *resolver) ratio(outer, inner string) int64 {
	if quantity.SameUnit(outer, inner) {
		return 1
	}
	unit, n := b.packedIn(outer)
	if n == 0 {
		return 0
	}
	if r := b.ratio(unit, inner); r < mostPieces/n {
		return n * r
	}
	return 0
}

// orderUnit finds the unit in which all batches and all stations at the head can be counted, and complains of
// those that cannot be.
func (b *resolver) orderUnit() (u orderUnit) {
	b.checkGood()
	var asked []*count
	for i := range b.words.Orders.list {
		if c := &b.words.Orders.list[i].Batch; c.given() && !b.said(c.at) {
			asked = append(asked, c)
		}
	}
	if len(asked) == 0 || b.flow.unclear {
		return u
	}
	if u.heads = b.heads(); len(u.heads) == 0 {
		return u // a ring, which is complained about
	}
	for _, unit := range []string{quantity.Plural(b.s.Product.Dose), "blisters", "cartons", quantity.Plural(asked[0].unit)} {
		if unit != "" && b.countedIn(unit, asked, &u) {
			b.checkWhole(asked, u)
			return u
		}
	}
	for _, c := range asked {
		b.notCounted(c, u.heads)
	}
	return u
}

// countedIn says whether everything can be counted in a unit.
func (b *resolver) countedIn(unit string, asked []*count, u *orderUnit) bool {
	u.unit, u.perCycle = unit, nil
	for _, c := range asked {
		if r := b.ratio(c.unit, unit); c.unit == "" || r == 0 || c.pieces() > mostPieces/r {
			return false
		}
	}
	for _, i := range u.heads {
		u.perCycle = append(u.perCycle, b.usedPerCycle(i, unit))
	}
	return !slices.Contains(u.perCycle, 0)
}

// usedPerCycle is what a cycle of a station at the head uses of a unit: of its hopper, or in what it gives or takes.
func (b *resolver) usedPerCycle(i int, unit string) (n int64) {
	station, extra := &b.s.Line.Stations[i], &b.s.Stations[i]
	for k := range extra.Materials {
		if quantity.SameUnit(extra.Materials[k].Unit, unit) {
			n += station.Materials[k].PerCycle
		}
	}
	if n == 0 {
		n = station.Gives * b.ratio(extra.GivesUnit, unit)
	}
	if n == 0 {
		n = station.Takes * b.ratio(extra.TakesUnit, unit)
	}
	return n
}

// heads are the stations without feeders from which what is counted comes, along the first place of those that
// assemble.
func (b *resolver) heads() (heads []int) {
	seen := map[string]bool{}
	var queue []string
	for _, i := range b.s.Answer.CountedAfter {
		queue = append(queue, b.s.Line.Stations[i].Name)
	}
	for ; len(queue) > 0; queue = queue[1:] {
		name := queue[0]
		if seen[name] {
			continue
		}
		seen[name] = true
		feeders, e := b.flow.feeders[name], b.flow.byName[name]
		switch {
		case e.station != nil && len(feeders) == 0:
			heads = append(heads, slices.IndexFunc(b.s.Line.Stations, func(s sim.Station) bool { return s.Name == name }))
		case e.station != nil:
			queue = append(queue, feeders[0])
		default:
			queue = append(queue, feeders...)
		}
	}
	slices.Sort(heads)
	return heads
}

// cyclesOf tells the stations at the head what a cycle uses of a batch.
func (b *resolver) cyclesOf(u orderUnit) {
	for k, i := range u.heads {
		b.s.Line.Stations[i].BatchPerCycle = u.perCycle[k]
	}
}

// makes is what the format sheet makes of a batch at most.
func (b *resolver) makes(c *count) (all []Amount) {
	n, finest := c.pieces(), quantity.Plural(c.unit)
	for unit, r := b.packedIn(finest); r > 0 && n <= mostPieces/r; unit, r = b.packedIn(finest) {
		n, finest = n*r, unit
	}
	for _, unit := range []string{finest, "blisters", "cartons", "cases"} {
		if r := b.ratio(unit, finest); r > 0 && (len(all) == 0 || unit != finest) {
			all = append(all, Amount{n / r, unit})
		}
	}
	return all
}

// checkGood wants good pieces in the unit of the answer, or in what is packed of it.
func (b *resolver) checkGood() {
	for i := range b.words.Orders.list {
		c := &b.words.Orders.list[i].Good
		if !c.given() || b.said(c.at) || b.s.Answer.Unit == "" {
			continue
		}
		switch r := b.ratio(c.unit, b.s.Answer.Unit); {
		case c.unit == "":
			b.complain(c.at, "%q has no unit; write %[1]s %s, which are counted", c.text(), b.s.Answer.Unit)
		case r == 0 || c.pieces() > mostPieces/r:
			b.complain(c.at, "%q cannot be counted: the answer counts %s; write a number of these", c.text(), b.s.Answer.Unit)
		}
	}
}

// notCounted says why a batch cannot be counted in what the head of the line uses.
func (b *resolver) notCounted(c *count, heads []int) {
	var uses []string
	for _, i := range heads {
		station, extra := &b.s.Line.Stations[i], &b.s.Stations[i]
		for k := range extra.Materials {
			if m := &extra.Materials[k]; m.Unit != "" && quantity.SameUnit(m.Unit, b.s.Product.Dose) {
				uses = append(uses, fmt.Sprintf("%q uses %d %s in a cycle", station.Name, station.Materials[k].PerCycle, m.Unit))
			}
		}
		uses = append(uses, fmt.Sprintf("%q gives %d %s in a cycle", station.Name, station.Gives, extra.GivesUnit))
	}
	if c.unit == "" {
		b.complain(c.at, "%q has no unit; write what is counted, such as %[1]s %s", c.text(), b.s.Stations[heads[0]].GivesUnit)
		return
	}
	b.complain(c.at, "%q cannot be counted here: %s; write one of these units, or say in product what is in what, such as carton: {blisters: 3}", c.text(), strings.Join(uses, ", "))
}
