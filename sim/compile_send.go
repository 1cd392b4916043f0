package sim

import (
	"cmp"
	"slices"

	"tuckline/sim/internal/plan"
)

// maySplit says that a station sends its pieces to several places.
func (c *compiler) maySplit(feeder string) bool {
	i, isStation := c.nodes[feeder]
	return isStation && len(c.units[i].Sends.To) > 0
}

// sends puts the places that a station sends to into the order of its list.
func (c *compiler) sends() {
	for i := range c.units {
		u := &c.units[i]
		outs := c.into[u.Name]
		if len(u.Sends.To) == 0 {
			continue
		}
		var ordered []int
		for _, to := range u.Sends.To {
			j := slices.IndexFunc(outs, func(l int) bool {
				return c.places[l].Name == to || c.places[l].HandOver && c.takers[l][0] == to
			})
			if j < 0 {
				c.fault(u.Name+".sends.to", "%q does not take from %q", to, u.last())
				continue
			}
			ordered = append(ordered, outs[j])
		}
		if len(ordered) == len(u.Sends.To) && len(ordered) != len(outs) {
			c.fault(u.Name+".sends.to", "%d places take from it, but the list has %d", len(outs), len(ordered))
		}
		if u.BlocksBefore {
			c.fault(u.Name+".blocks", "a station that chooses where its pieces go at the end of a cycle cannot reserve their places before it")
		}
		c.into[u.Name] = ordered
	}
}

// byTurn puts takers into the order in which they may take: priority, then name.
func (c *compiler) byTurn(takers []string) []string {
	ordered := slices.Clone(takers)
	priority := func(name string) int {
		if i, isStation := c.nodes[name]; isStation && c.units[i].Priority != 0 {
			return c.units[i].Priority
		}
		return usualPriority
	}
	slices.SortFunc(ordered, func(a, b string) int {
		return cmp.Or(cmp.Compare(priority(a), priority(b)), cmp.Compare(a, b))
	})
	return ordered
}

// turns resolves who of the feeders of a buffer goes first.
func (c *compiler) turns(link *plan.Link, b *Buffer) {
	link.Alternate, link.First = b.Turns.Alternate, plan.None
	if b.Turns.First == "" {
		return
	}
	name := b.Turns.First
	if i, isStation := c.nodes[name]; isStation {
		name = c.units[i].Name
	}
	if k := c.nodeOf(name); k != plan.None && slices.Contains(link.Feeders, k) {
		link.First = k
		return
	}
	c.fault(b.Name+".turns", "%q does not feed it", b.Turns.First)
}
