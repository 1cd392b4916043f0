package scenario

import (
	"slices"

	"tuckline/internal/quantity"
)

// checkWhole refuses batches that are no whole cycles of the stations at the head of the line, and finite supply
// beside orders.
func (b *resolver) checkWhole(asked []*count, u orderUnit) {
	for _, c := range asked {
		b.checkDivides(c, u)
	}
	for _, i := range u.heads {
		if w := &b.flow.byName[b.s.Line.Stations[i].Name].station.From; w.limit.given() {
			b.complain(w.at, "the orders say how much comes, and so does this supply; leave supply out")
		}
	}
	least, step := slices.Min(u.perCycle), stepOf(u.perCycle)
	if least > step {
		b.warn("The stations at the head of the line use different numbers of %s in a cycle: up to %d of a batch may stay unused at its end.", u.unit, least-step)
	}
}

// checkDivides holds a batch against the cycles of those that begin the line.
func (b *resolver) checkDivides(c *count, u orderUnit) {
	n, step := c.pieces()*b.ratio(c.unit, u.unit), stepOf(u.perCycle)
	if n%step == 0 {
		return
	}
	are := quantity.Count{N: n, Unit: u.unit}.Format()
	less, more := n/step*step, (n/step+1)*step
	name := b.s.Line.Stations[u.heads[0]].Name
	alike := slices.Min(u.perCycle) == slices.Max(u.perCycle)
	switch {
	case alike && less == 0:
		b.complain(c.at, "%s are less than a cycle of %q, which uses %d; write at least %[3]d %s", are, name, step, u.unit)
	case less == 0:
		b.complain(c.at, "%s are no whole cycles: those at the head of the line use %d to %d in each, so that the batch has to be a multiple of %d %s", are, slices.Min(u.perCycle), slices.Max(u.perCycle), step, u.unit)
	case alike:
		b.complain(c.at, "%s are no whole cycles of %q, which uses %d in each: %d cycles need %d, %d cycles %d; write one of these", are, name, step, n/step, less, n/step+1, more)
	default:
		b.complain(c.at, "%s are no whole cycles: those at the head of the line use %d to %d in each, so that the batch has to be a multiple of %d, such as %d or %d", are, slices.Min(u.perCycle), slices.Max(u.perCycle), step, less, more)
	}
}

// stepOf is the greatest number by which all can be divided.
func stepOf(all []int64) int64 {
	step := int64(0)
	for _, n := range all {
		for n != 0 {
			step, n = n, step%n
		}
	}
	return step
}
