package sim

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// capacities makes the links: capacity, neighbours, and the smallest number of places
// that cannot lock.
func (c *compiler) capacities() {
	for i := range c.places {
		p := &c.places[i]
		p.From, p.To = slices.Clone(c.feeders[i]), slices.Clone(c.takers[i])
		slices.Sort(p.From)
		slices.Sort(p.To)
		link := plan.Link{Name: p.Name, Transit: p.Transit, Next: plan.None}
		if i < len(c.line.Buffers) {
			link.AtStart = c.line.Buffers[i].AtStart
		}
		for _, name := range p.From {
			link.Feeders = append(link.Feeders, c.nodeOf(name))
		}
		for _, name := range p.To {
			k := c.nodeOf(name)
			if c.isBufferName(name) { // the link itself passes its pieces on
				k = c.nodeOf(p.Name)
				link.Next = c.links[name]
			}
			link.Takers = append(link.Takers, k)
		}
		link.Gives, link.Takes = c.gives(p.From[0]), c.leastTake(p)
		least := c.leastCapacity(p)
		switch {
		case p.HandOver || p.Capacity == Smallest:
			p.Capacity = least
		case p.Capacity != Unlimited && p.Capacity < least:
			c.fault(p.Name+".holds", "%d places can lock the line: %s needs at least %d", p.Capacity, c.why(p), least)
		case p.Capacity != Unlimited && link.AtStart > p.Capacity:
			c.fault("run.at start."+p.Name, "%d pieces do not fit into %d places", link.AtStart, p.Capacity)
		}
		link.Capacity = p.Capacity
		if p.Capacity == Unlimited {
			link.Capacity = plan.NoLimit
		}
		c.plan.Links = append(c.plan.Links, link)
	}
	c.watch()
}

// gives is what a feeder puts at once; a buffer passes on one by one.
func (c *compiler) gives(name string) int64 {
	if i, isStation := c.nodes[name]; isStation {
		return c.line.Stations[i].Gives
	}
	return 1
}

func (c *compiler) takes(name string) int64 {
	if i, isStation := c.nodes[name]; isStation {
		return c.line.Stations[i].Takes
	}
	return 1
}

func (c *compiler) leastTake(p *Place) int64 {
	least := c.takes(p.To[0])
	for _, name := range p.To {
		least = min(least, c.takes(name))
	}
	return least
}

func (c *compiler) most(p *Place) (gives, takes int64) {
	for _, name := range p.From {
		gives = max(gives, c.gives(name))
	}
	for _, name := range p.To {
		takes = max(takes, c.takes(name))
	}
	return gives, takes
}

// leastCapacity is the smallest number of places with which the line cannot lock:
// max(gives, takes) − 1, because the last piece passes straight through; where it
// cannot pass through (transit, or room that is reserved before the cycle)
// gives + takes − 1.
func (c *compiler) leastCapacity(p *Place) int64 {
	gives, takes := c.most(p)
	if p.Transit > 0 || c.reserves(p) {
		return gives + takes - 1
	}
	return max(gives, takes) - 1
}

func (c *compiler) reserves(p *Place) bool {
	return slices.ContainsFunc(p.From, func(name string) bool {
		i, isStation := c.nodes[name]
		return isStation && c.line.Stations[i].BlocksBefore
	})
}

func (c *compiler) why(p *Place) string {
	switch {
	case p.Transit > 0:
		return "what is put in at once beside a rest that is too small to take"
	case c.reserves(p):
		return "a feeder that reserves room before its cycle, beside a rest that is too small to take,"
	}
	return "a hand-over between these neighbours"
}

// levels resolves which levels stop and restart each station: those of every buffer
// up to the next station, belts before a buffer included in its count.
func (c *compiler) levels() {
	for k := range c.plan.Nodes {
		node := &c.plan.Nodes[k]
		if node.Station == plan.None || node.Out == plan.None {
			continue
		}
		for l, has := node.Out, true; has && l < len(c.line.Buffers); l, has = c.next(l) {
			c.setLevels(node, l)
		}
	}
}

// next is the link into which a link passes its pieces on.
func (c *compiler) next(l int) (int, bool) {
	next, has := c.into[c.places[l].Name]
	return next, has
}

func (c *compiler) setLevels(node *plan.Node, l int) {
	b := &c.line.Buffers[l]
	c.checkLevels(l, b)
	if b.StopUpstream > 0 {
		node.Stops = append(node.Stops, plan.StopLevel{Link: l, Level: b.StopUpstream})
	}
	if b.Restart.On {
		node.Restarts = append(node.Restarts, plan.RestartLevel{Links: c.before(l), Level: b.Restart.Level})
	}
}

// checkLevels refuses levels with which the line can lock.
func (c *compiler) checkLevels(l int, b *Buffer) {
	gives, takes := c.most(&Place{From: c.feeders[l], To: c.takers[l]})
	if b.StopUpstream > 0 && b.StopUpstream < takes {
		c.fault(b.Name+".levels.stop upstream", "the line can lock: at %d pieces the feeders stop, but %d are taken at once", b.StopUpstream, takes)
	}
	if !b.Restart.On {
		return
	}
	path := b.Name + ".levels.restart upstream"
	if b.Restart.Level < takes-1 {
		c.fault(path, "the line can lock: %d pieces may stay because %d are taken at once; it needs at least %d", takes-1, takes, takes-1)
	}
	if places := c.placesBefore(l); b.Holds != Unlimited && b.Restart.Level > places-gives {
		c.fault(path, "%d pieces and the %d that are put at once do not fit into %d places; it is at most %d", b.Restart.Level, gives, places, places-gives)
	}
	if b.StopUpstream > 0 && b.Restart.Level >= b.StopUpstream {
		c.fault(path, "it must be lower than stop upstream, which is %d pieces", b.StopUpstream)
	}
}

// placesBefore is the number of places of a buffer and of all belts before it.
func (c *compiler) placesBefore(l int) int64 {
	total := int64(0)
	for _, i := range c.before(l) {
		if c.places[i].Capacity == Unlimited {
			return plan.NoLimit
		}
		total += c.places[i].Capacity
	}
	return total
}

// before is a link and all belts and buffers that pass their pieces on into it.
func (c *compiler) before(l int) []int {
	all := []int{l}
	for _, feeder := range c.feeders[l] {
		if i, isBuffer := c.links[feeder]; isBuffer {
			all = append(all, c.before(i)...)
		}
	}
	slices.Sort(all)
	return all
}

// watch enters every node whose levels read a link into the watchers of the link.
func (c *compiler) watch() {
	for k := range c.plan.Nodes {
		for l := range c.plan.Links {
			if readsLevel(&c.plan.Nodes[k], l) && !slices.Contains(c.plan.Links[l].Feeders, k) {
				c.plan.Links[l].Watchers = append(c.plan.Links[l].Watchers, k)
			}
		}
	}
}

func readsLevel(node *plan.Node, l int) bool {
	return slices.ContainsFunc(node.Stops, func(s plan.StopLevel) bool { return s.Link == l }) ||
		slices.ContainsFunc(node.Restarts, func(r plan.RestartLevel) bool { return slices.Contains(r.Links, l) })
}
